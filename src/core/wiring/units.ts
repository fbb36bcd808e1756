import type { Point } from '../geometry/shapes.ts';
import type { Feeder } from './feeders.ts';
import { onLine, type ReversingSection } from './gaps.ts';
import type { WiringInput } from './input.ts';

/**
 * What stands between a district's bus and rails that cannot hang on it: a bought module that turns its rails' polarity as
 * a train comes in, a switch that a hand turns for direct current, or a switch that the closed bridge presses.
 */
export type UnitKind = 'reverser' | 'reversing-switch' | 'bridge-switch';

/** What each is called where it is bought. */
export const UNIT_NAMES: Readonly<Record<UnitKind, string>> = {
  reverser: 'automatic reverser',
  'reversing-switch': 'double-pole changeover switch',
  'bridge-switch': 'double-pole switch pressed by the closed bridge',
};

/** What is written on a unit, by its place among all: `U1`; its own name where it is none of them. */
export function unitTag(units: readonly { readonly id: string }[], id: string): string {
  const place = units.findIndex((one) => one.id === id);
  return place < 0 ? id : `U${place + 1}`;
}

/** A unit that the layout needs. */
export type UnitWanted = {
  readonly id: string;
  readonly kind: UnitKind;
  /** the reversing section's segment, or the lift bridge */
  readonly of: string;
  readonly line: string;
  readonly district: string;
  /** the pair that feeds it: a district's, or another unit's */
  readonly from: string;
  /** where it has to stand, notebook coordinates, mm; null: where its section is fed */
  readonly at: Point | null;
};

/** Units with the pair that each feeder hangs on: its district's or a unit's. */
export type Units = { readonly units: readonly UnitWanted[]; readonly feeders: readonly Feeder[] };

/** A bridge's switch stands this far beyond the end of its span that comes down on it, mm; common practice, no source. */
const BEYOND = 30;

/** Every unit, and the feeders with the pair that each has to hang on. */
export function unitsFor(input: WiringInput, sections: readonly ReversingSection[], feeders: readonly Feeder[]): Units {
  const reversers = named(sections.flatMap((section) => reverserFor(input, section, feeders)));
  const turned = feeders.map((one) => {
    const mine = reversers.find(({ of }) => of === one.segment);
    return mine === undefined ? one : { ...one, net: mine.id };
  });
  const switches = named(
    input.lifts.flatMap((lift) => {
      const approaches = turned.filter((one) => one.through === lift.id && !one.lead);
      return [...new Set(approaches.map(({ net }) => net))].map((from): UnitWanted => {
        const district = approaches.find(({ net }) => net === from)?.district ?? '';
        const at = placeBeyond(input, lift.line, lift.to);
        return { id: `switch-${lift.id}`, kind: 'bridge-switch', of: lift.id, line: lift.line, district, from, at };
      });
    }),
  );
  const all = turned.map((one) => {
    const mine = one.lead ? undefined : switches.find(({ from, of }) => of === one.through && from === one.net);
    return mine === undefined ? one : { ...one, net: mine.id };
  });
  return { units: [...reversers, ...switches], feeders: all };
}

function reverserFor(
  { supply }: WiringInput,
  { line, segment }: ReversingSection,
  feeders: readonly Feeder[],
): readonly UnitWanted[] {
  const first = feeders.find((one) => one.segment === segment);
  if (first === undefined) return [];
  const kind = supply.control === 'digital' ? 'reverser' : 'reversing-switch';
  const { district } = first;
  return [{ id: `reverser-${line}`, kind, of: segment, line, district, from: district, at: null }];
}

/** Units of one name are numbered from the second on. */
function named(units: readonly UnitWanted[]): readonly UnitWanted[] {
  return units.map((unit, i) => {
    const before = units.slice(0, i).filter(({ id }) => id === unit.id).length;
    return before === 0 ? unit : { ...unit, id: `${unit.id}-${before + 1}` };
  });
}

function placeBeyond({ rails }: WiringInput, line: string, to: number): Point | null {
  const own = rails.lines.find(({ id }) => id === line);
  const at = onLine(rails, line, to + BEYOND)?.at;
  return own === undefined || at === undefined ? null : own.place(at);
}
