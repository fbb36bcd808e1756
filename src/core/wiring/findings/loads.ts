import type { Finding } from '../../finding.ts';
import { length, say } from '../../units/say.ts';
import type { Computed } from '../computed.ts';
import { fuseFor, type LoadFuse } from '../fuses.ts';
import type { WiringInput } from '../input.ts';
import type { DistrictFigures, LoadFigures } from '../layout-circuit.ts';
import { diodeVolts, mostInRow } from '../led.ts';
import { ledLoads } from '../led-load.ts';
import { TAIL_LIMIT } from '../protection.ts';
import { amps, listed, PRACTICE, tell, volts } from '../tell.ts';
import { sizeMend } from '../wire-size.ts';

/** Loads of all kinds: what a pulse and switching on do to a breaker, the volts they have, diodes and fuses. */
export function loadFindings(input: WiringInput, computed: Computed, fuses: readonly LoadFuse[]): readonly Finding[] {
  return [
    ...computed.districts.flatMap((district) => [
      ...pulseFindings(district),
      ...startFindings(input, district),
      ...voltFindings(input, computed, district),
    ]),
    ...diodeFindings(input),
    ...fuses.flatMap((fuse) => fuseFindings(input, fuse)),
  ];
}

/** A pulse comes on top of what is drawn all the time. */
function pulseFindings({ id, loads, steady, tripsAt }: DistrictFigures): readonly Finding[] {
  return loads
    .filter((load) => load.kind === 'pulse' && steady + load.amps > tripsAt)
    .map((load) =>
      tell({
        rule: 'pulse-overload',
        level: 'care',
        where: load.load,
        what: say`Thrown, ${load.load} draws ${amps(load.amps)} for a moment beside ${amps(steady)} of steady loads; ${id} switches off at ${amps(tripsAt)}.`,
        mend: say`Throw it from a bought capacitor discharge unit, or from a listed supply of its own that gives ${amps(load.amps)}.`,
        ...{ figure: steady + load.amps, limit: tripsAt, unit: 'A', source: 'sum of the loads as written' },
      }),
    );
}

/** What is switched on together charges together. */
function startFindings({ loads: all }: WiringInput, { id, loads, startUp, steady, tripsAt }: DistrictFigures) {
  if (startUp <= tripsAt || startUp <= steady) return [];
  const rushing = all.filter(
    ({ amps: own, id: load, inrush }) => (inrush ?? 0) > own && loads.some((one) => one.load === load),
  );
  return [
    tell({
      rule: 'inrush-trips',
      level: 'care',
      where: id,
      what: say`Switched on, the steady loads of ${id} draw ${amps(startUp)} for a moment and ${amps(steady)} after it; ${id} switches off at ${amps(tripsAt)} and may never come on.`,
      mend: say`Switch ${listed(rushing.map(({ id: load }) => load))} on after the rest, or give ${amps(startUp - tripsAt)} of it a listed supply of its own.`,
      ...{ figure: startUp, limit: tripsAt, unit: 'A', source: 'sum of the inrush as written' },
    }),
  ];
}

function voltFindings(input: WiringInput, computed: Computed, { loads }: DistrictFigures): readonly Finding[] {
  const least = input.supply.volts * (1 - input.mayLose);
  const enough = ({ volts: own }: LoadFigures) => own === null || own >= least - 1e-9;
  return loads
    .filter((load) => !enough(load))
    .map(({ amps: own, kind, load, volts: has }) =>
      tell({
        rule: 'load-volts-low',
        level: 'care',
        where: load,
        what:
          kind === 'pulse'
            ? say`Thrown, ${load} draws ${amps(own)} and gets ${volts(has ?? 0)} of ${volts(input.supply.volts)}.`
            : say`With all steady loads on, ${load} gets ${volts(has ?? 0)} of ${volts(input.supply.volts)}.`,
        mend: sizeMend(input, computed),
        ...{
          figure: has,
          limit: least,
          unit: 'V',
          source: `${PRACTICE}: at most ${Math.round(input.mayLose * 100)} % lost`,
        },
      }),
    );
}

function diodeFindings(input: WiringInput): readonly Finding[] {
  const given = diodeVolts(input.supply);
  return ledLoads(input).flatMap(({ inRow, load, resistor, rows }): readonly Finding[] => {
    const forward = input.loads.find(({ id }) => id === load)?.leds?.forward ?? 0;
    if (resistor !== null) return [];
    const most = mostInRow(given, forward);
    return [
      tell({
        rule: 'leds-too-many',
        level: 'halt',
        where: load,
        what: say`${String(inRow)} diodes of ${volts(forward)} in a row need more than the ${volts(given)} that ${load} has.`,
        mend:
          most === 0
            ? say`Take diodes of at most ${volts(0.9 * given)}, or a listed supply of more volts.`
            : say`Put ${String(most)} in a row at most: ${String(Math.ceil((inRow * rows) / most))} rows for as many diodes.`,
        ...{ figure: inRow * forward, limit: given, unit: 'V', source: "Kirchhoff's voltage law" },
      }),
    ];
  });
}

const FUSE_SOURCE = 'a fuse carries 1.25 times its load and protects its wire: NEC 240 practice';

function fuseFindings(input: WiringInput, fuse: LoadFuse): readonly Finding[] {
  const { least, load, most, tripsAt, written } = fuse;
  const own = input.loads.find(({ id }) => id === load)?.amps ?? 0;
  const best = fuseFor(own, most);
  if (fuse.amps === null || (written && best === null)) return [noFuse(input, fuse)];
  const right = best === null ? [] : say`Write 'fuse: ${String(best)} A'.`;
  const figures = { figure: fuse.amps, unit: 'A', source: FUSE_SOURCE } as const;
  if (fuse.amps > most + 1e-9) {
    const what = say`A fuse of ${amps(fuse.amps)} lets more through than the ${amps(most)} that the wires of ${load} may carry.`;
    return [tell({ rule: 'fuse-large', level: 'care', where: load, what, mend: right, ...figures, limit: most })];
  }
  if (fuse.amps < least - 1e-9) {
    const what = say`A fuse of ${amps(fuse.amps)} melts in time under ${load}, which draws ${amps(own)}.`;
    return [tell({ rule: 'fuse-small', level: 'care', where: load, what, mend: right, ...figures, limit: least })];
  }
  if (written) return [];
  const what = say`The wires of ${load} may carry ${amps(most)}; its district lets ${amps(tripsAt)} through before it trips.`;
  const mend = say`Put a slow fuse of ${amps(fuse.amps)} where they leave the bus; it is on the list of small parts.`;
  return [tell({ rule: 'fuse-proposed', level: 'note', where: load, what, mend, ...figures, limit: most })];
}

function noFuse({ bus, feeders, wires }: WiringInput, { least, load, most, tripsAt }: LoadFuse): Finding {
  const own = (feeders?.stock ?? bus?.stock)?.area ?? 0;
  const enough = wires
    .toSorted((a, b) => a.area - b.area)
    .find(({ amps: may, area }) => area > own && may.cautious >= least);
  return tell({
    rule: 'fuse-none',
    level: 'care',
    where: load,
    what: say`No fuse both carries ${load}, ${amps(least)} with a quarter to spare, and protects its wires, which may carry ${amps(most)}; the district lets ${amps(tripsAt)} through.`,
    mend:
      enough === undefined
        ? say`Bring the bus within ${length(TAIL_LIMIT)} of it, or part it into smaller loads.`
        : say`Take ${enough.id} for the thin wires, or bring the bus within ${length(TAIL_LIMIT)} of it.`,
    ...{ figure: least, limit: most, unit: 'A', source: FUSE_SOURCE },
  });
}
