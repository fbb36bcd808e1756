import type { Fault } from '../units/problem.ts';
import { fault, mm } from './fault.ts';
import { lappedGrid } from './grid.ts';
import type { BenchInput, BenchworkInput, Struts } from './input.ts';
import { slotWidth, tidy } from './machining.ts';
import { mostWebs } from './spans.ts';

/** More struts one way than anyone fits into a table; keeps hostile numbers from filling the memory. */
export const MOST_STRUTS = 60;

/** Struts that have no room, with the most or the places that have. */
export function spacingFaults(input: BenchworkInput, bench: BenchInput): readonly Fault[] {
  const { struts } = bench;
  if (struts === null) return [];
  const { length = 0, width = 0 } = input.dimensions;
  return [
    ...wayFaults(input, { struts: struts.across, outside: length, at: `${bench.at}.struts.across`, name: 'length' }),
    ...wayFaults(input, { struts: struts.along, outside: width, at: `${bench.at}.struts.along`, name: 'width' }),
  ];
}

type Way = {
  readonly struts: Struts;
  readonly outside: number;
  readonly at: string;
  readonly name: 'length' | 'width';
};

function wayFaults(input: BenchworkInput, way: Way): readonly Fault[] {
  const t = input.materials.frame?.thickness.mean ?? 0;
  const slot = slotWidth(input.materials.frame?.thickness.thickest ?? 0, input.dimensions.clearance ?? 0);
  const clear = tidy(way.outside - 2 * t);
  if (clear <= 2 * (slot - t)) {
    const what = `a ${way.name} of ${mm(way.outside)} leaves no room between two boards of ${mm(t)}`;
    return [fault('no-room', `benchwork.dimensions.${way.name}`, { what, mend: `make it more than ${mm(2 * slot)}` })];
  }
  return way.struts.kind === 'even'
    ? evenFaults(way, way.struts.count, { clear, t, slot })
    : placeFaults(way, way.struts.at, { t, slot });
}

type Fit = { readonly t: number; readonly slot: number };

function evenFaults(way: Way, count: number, { clear, t, slot }: Fit & { readonly clear: number }): readonly Fault[] {
  const bay = (clear - count * t) / (count + 1);
  if (bay > 1.5 * (slot - t)) return [];
  const words = {
    what: `${count} struts of ${mm(t)} leave bays of ${mm(bay)} in a ${way.name} of ${mm(way.outside)}`,
    mend: `use at most ${Math.min(MOST_STRUTS, mostWebs(clear, t, t))}, which leaves bays no narrower than the strut is thick`,
  };
  return [fault('struts-too-many', way.at, words)];
}

/** Places must stand in order, with the slots apart from each other and from the rabbets at the ends. */
function placeFaults(way: Way, at: readonly number[], { slot }: Fit): readonly Fault[] {
  const most = tidy(way.outside - 1.5 * slot);
  return at.flatMap((centre, i) => {
    const before = at[i - 1];
    const least = tidy(before === undefined ? 1.5 * slot : before + slot);
    if (centre >= least && centre <= most) return [];
    const meets = before !== undefined && centre < least ? 'runs into the one before it' : 'runs into the frame';
    const what = `a strut with its middle at ${mm(centre)} ${meets}`;
    const mend = least <= most ? `keep it between ${mm(least)} and ${mm(most)}, in rising order` : 'leave it out';
    return [fault('strut-place', `${way.at}.at.${i}`, { what, mend })];
  });
}

/** Strips must not run into each other or into the frame. */
export function flangeFaults(input: BenchworkInput, bench: BenchInput): readonly Fault[] {
  const grid = lappedGrid(input, bench);
  const width = bench.flangeStrips;
  if (grid === null || width === null) return [];
  const most = Math.min(widest(grid.across, grid.length, grid.t), widest(grid.along, grid.width, grid.t));
  const at = `${bench.at}.flange-strips.width`;
  if (!(width > 0))
    return [
      fault('flange-strip-width', at, {
        what: `a strip of ${mm(width)} is none`,
        mend: `use ${mm(grid.t)} to ${mm(most)}`,
      }),
    ];
  if (width > most)
    return [
      fault('flange-strip-width', at, {
        what: `strips of ${mm(width)} run into each other`,
        mend: `use at most ${mm(most)}`,
      }),
    ];
  const room = grid.sideTop - grid.strut - grid.t;
  if (room >= 0) return [];
  const what = `strips under the struts would lie ${mm(-room)} below the floor`;
  return [fault('below-the-floor', 'benchwork.dimensions.height', { what, mend: `raise the height by ${mm(-room)}` })];
}

function widest(centres: readonly number[], outside: number, t: number): number {
  const first = centres[0];
  const last = centres[centres.length - 1];
  if (first === undefined || last === undefined) return outside - 2 * t;
  const gaps = centres.slice(1).map((c, i) => c - (centres[i] ?? c));
  return tidy(Math.min(...gaps, 2 * (first - t), 2 * (outside - t - last)));
}
