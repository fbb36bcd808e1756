import type { Finding } from '../../finding.ts';
import { length, say } from '../../units/say.ts';
import type { Feeder } from '../feeders.ts';
import type { ReversingSection } from '../gaps.ts';
import type { LaidUnit } from '../laid-unit.ts';
import { PRACTICE, tell } from '../tell.ts';
import { UNIT_SIZE } from '../unit-room.ts';
import { type Wire, wiresOfPair } from '../wire.ts';

/** What units there are, and what has to hang on them. */
export type Unitary = {
  readonly units: readonly LaidUnit[];
  readonly sections: readonly ReversingSection[];
  readonly feeders: readonly Feeder[];
  readonly wires: readonly Wire[];
};

/** Units without room, and rails of a section that reverses whose wires go past its unit. */
export function unitFindings(all: Unitary): readonly Finding[] {
  return [...directFindings(all), ...approachFindings(all), ...all.units.filter(({ clear }) => !clear).map(noRoom)];
}

/** Wired past its reverser, a section that reverses is a short as soon as a train bridges its cuts. */
export function directFindings({ feeders, sections, units, wires }: Unitary): readonly Finding[] {
  return sections.flatMap((section) => {
    const own = units.filter(({ kind, of }) => kind !== 'bridge-switch' && of === section.segment).map(({ id }) => id);
    // a switch at a bridge within the section hangs on the section's own unit
    const below = units.filter(({ from }) => own.includes(from)).map(({ id }) => id);
    const fed = feeders.filter(({ segment }) => segment === section.segment);
    return fed.flatMap(({ at, id, line }) => {
      const past = wiresOfPair(wires, id).filter(({ net }) => ![...own, ...below].includes(net));
      if (past.length === 0) return [];
      return [
        tell({
          rule: 'reversing-fed-past-its-unit',
          level: 'halt',
          where: line,
          what: say`${line} at ${length(at)} lies in a section that reverses, and ${String(past.length)} of its wires come straight from the bus: a train that bridges a cut shorts it.`,
          mend: say`Join ${past.map(({ label }) => label).join(' and ')} to the pair that comes out of ${own[0] ?? 'its reverser'}.`,
          ...{ figure: past.length, limit: 0, source: 'parity of rail swaps round every closed route' },
        }),
      ];
    });
  });
}

/** Wired past the switch that a closed bridge presses, its approach stays live while the bridge is up. */
export function approachFindings({ feeders, units, wires }: Omit<Unitary, 'sections'>): readonly Finding[] {
  const approaches = feeders.filter(({ lead, through }) => through !== null && !lead);
  return approaches.flatMap(({ at, id, line, through }) => {
    const own = units.filter(({ kind, of }) => kind === 'bridge-switch' && of === through).map((unit) => unit.id);
    const past = wiresOfPair(wires, id).filter(({ net }) => !own.includes(net));
    if (past.length === 0) return [];
    return [
      tell({
        rule: 'approach-always-live',
        level: 'halt',
        where: line,
        what: say`${line} at ${length(at)} is an approach of ${through ?? ''}, and ${String(past.length)} of its wires come straight from the bus: trains run into the hole while it is up.`,
        mend: say`Join ${past.map(({ label }) => label).join(' and ')} to the pair that comes out of ${own[0] ?? 'its switch'}.`,
        ...{ figure: past.length, limit: 0, source: PRACTICE },
      }),
    ];
  });
}

function noRoom({ id, line }: LaidUnit): Finding {
  return tell({
    rule: 'unit-without-room',
    level: 'care',
    where: id,
    what: say`Under ${line} there is no clear place of ${length(UNIT_SIZE[0])} by ${length(UNIT_SIZE[1])} for ${id}.`,
    mend: say`Screw ${id} to the nearest side or strut, and keep its ${length(UNIT_SIZE[2])} off what moves.`,
    ...{ figure: 0, limit: UNIT_SIZE[0], unit: 'mm', source: PRACTICE },
  });
}
