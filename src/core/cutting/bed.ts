import type { Ground } from './forest.ts';
import { CROSSCUTS, RIPS } from './forest.ts';
import type { Area, CutJob, CutStock } from './job.ts';
import { type Pass, pass } from './pass.ts';
import { clearSpots } from './spot.ts';
import { exact, fromTicks, isSize, LONGEST, ticksDown, ticksUp } from './tick.ts';

/**
 * A rectangle of a sheet that can be used, and the ground it is to the search. With the grain along the sheet's width
 * the ground lies across, so that a ground's grain is always along its w.
 */
export type Bed = { readonly stock: number; readonly area: Area; readonly across: boolean; readonly ground: Ground };

/** Where the beds of one kind of sheet lie and the cuts that free them, in order. */
export type Laydown = { readonly beds: readonly Bed[]; readonly whole: Ground; readonly cuts: readonly Pass[] };

const NOTHING: Laydown = { beds: [], whole: { w: 0, h: 0, kind: RIPS }, cuts: [] };

/** Width of the cut: the saw's kerf, or the router's bit, in ticks. */
export function kerfTicks(job: CutJob): number {
  return ticksUp(job.style.kind === 'router' ? Math.max(job.kerf, job.style.bit) : job.kerf);
}

/** Most rounds of cuts of the job's style; 'any' is as many as can be counted. */
export function levelsOf(job: CutJob): number {
  return job.style.kind === 'saw' && job.style.stages !== 'any' ? job.style.stages : 1e6;
}

/** True when only lengths are cut: wire, or boards whose parts are all as wide as they are. */
export function isLinear(job: CutJob): boolean {
  const widths = new Set([...job.stock, ...job.parts].map((thing) => exact(thing.width)));
  return widths.size === 1;
}

/** Beds of one sheet of each stock. */
export function laydowns(job: CutJob): readonly Laydown[] {
  const linear = isLinear(job);
  return job.stock.map((stock, index) => laydown(job, { stock, index, linear }));
}

type Sheet = { readonly stock: CutStock; readonly index: number; readonly linear: boolean };

function laydown(job: CutJob, sheet: Sheet): Laydown {
  const { stock, index, linear } = sheet;
  if (!isSize(stock.length) || !(isSize(stock.width) || (linear && stock.width === 0))) return NOTHING;
  const whole = { x: 0, y: 0, length: Math.min(stock.length, LONGEST), width: Math.min(stock.width, LONGEST) };
  const by = stock.offcut || !isSize(job.trim) ? 0 : job.trim;
  const trimmed = trim(whole, { by, kerf: fromTicks(kerfTicks(job)), linear });
  if (trimmed.area.length <= 0 || (trimmed.area.width <= 0 && !linear)) return NOTHING;
  const cleared = clearSpots(trimmed.area, {
    ...{ spots: stock.noGo.filter(isSpot), kerf: fromTicks(kerfTicks(job)) },
    worth: (areas) => partsThatFit(job, { stock, areas }),
  });
  const across = stock.grain === 'width' && !linear;
  const bed = (area: Area): Bed => ({ stock: index, area, across, ground: groundOf(job, { area, across }) });
  return { beds: cleared.areas.map(bed), whole: bed(trimmed.area).ground, cuts: [...trimmed.cuts, ...cleared.cuts] };
}

/** How many kinds of parts at least one of the areas can hold. */
function partsThatFit(
  job: CutJob,
  { stock, areas }: { readonly stock: CutStock; readonly areas: readonly Area[] },
): number {
  return job.parts.filter((part) => {
    const free = part.grain === 'any' || stock.grain === 'any';
    const along = (a: Area) => part.length <= a.length && part.width <= a.width;
    const across = (a: Area) => part.length <= a.width && part.width <= a.length;
    return areas.some(
      (a) => ((free || part.grain === stock.grain) && along(a)) || ((free || part.grain !== stock.grain) && across(a)),
    );
  }).length;
}

function isSpot(spot: Area): boolean {
  return [spot.x, spot.y].every(Number.isFinite) && isSize(spot.length) && isSize(spot.width);
}

function groundOf(job: CutJob, bed: { readonly area: Area; readonly across: boolean }): Ground {
  const kerf = kerfTicks(job);
  const length = ticksDown(bed.area.length) + kerf;
  const width = bed.area.width === 0 ? kerf + 1 : ticksDown(bed.area.width) + kerf;
  return bed.across ? { w: width, h: length, kind: CROSSCUTS } : { w: length, h: width, kind: RIPS };
}

type Trim = { readonly by: number; readonly kerf: number; readonly linear: boolean };
type Freed = { readonly area: Area; readonly cuts: readonly Pass[] };

/** Factory edges off, long ones first; boards and wire only at their ends. */
function trim(whole: Area, { by, kerf, linear }: Trim): Freed {
  if (by === 0) return { area: whole, cuts: [] };
  const cuts: Pass[] = [];
  let area = whole;
  for (const along of linear ? (['width'] as const) : (['length', 'width'] as const)) {
    const size = along === 'length' ? whole.width : whole.length;
    for (const [at, side] of [
      [exact(by - kerf), 'near'],
      [exact(size - by), 'far'],
    ] as const) {
      if (size <= 2 * by) return { area: { ...area, length: 0, width: 0 }, cuts: [] };
      const cut = pass(area, { kind: 'trim', along, at, kerf });
      const left = side === 'near' ? cut.yields.at(-1) : cut.yields[0];
      if (left === undefined) return { area: { ...area, length: 0, width: 0 }, cuts: [] };
      cuts.push(cut);
      area = left;
    }
  }
  return { area, cuts };
}
