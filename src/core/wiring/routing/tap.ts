import type { Point } from '../../geometry/shapes.ts';
import { type Bay, bayAt, nearestBay } from './bays.ts';
import { type Block, blocksBetween, PAST } from './blocks.ts';
import type { BusSpot, Limb } from './limbs.ts';
import { type Range, type Site, widened } from './site.ts';
import type { Drop } from './stops.ts';
import { type Straight, tailWay } from './tail-way.ts';

/** Where a drop's wires meet the bus, and their way from there under the deck to where they go up; frame, mm. */
export type Tap = BusSpot & {
  readonly drop: string;
  readonly at: Point;
  readonly way: readonly Point[];
  /** length of that way */
  readonly across: number;
  readonly bay: string;
};

/** Below the deck's underside at this depth thin wires are clipped, mm. */
export const CLIPPED = 5;

/** Half of the height in which a thin wire hangs from its clips, mm. */
const HANGS = 3;

/** Where thin wires run: what stands there, its bays, and the height of the deck's underside; mm. */
export type Below = { readonly site: Site; readonly bays: readonly Bay[]; readonly underside: number };

/** The bus as it lies, for joining to it. */
export type LaidLimbs = { readonly limbs: readonly Limb[]; readonly z: number };

/** What thin wires go round within a bay: clipped up, and on the way from a bus at `z` to where they are clipped. */
export function blocksIn({ site, underside }: Below, bay: Bay, z: number) {
  const clipped = underside - CLIPPED - HANGS;
  const near = (blocks: readonly Block[]) =>
    blocks.filter(({ x, y }) => x[0] < bay.x[1] && x[1] > bay.x[0] && y[0] < bay.y[1] && y[1] > bay.y[0]);
  return {
    blocks: near(blocksBetween(site, [clipped, underside])),
    over: near(blocksBetween(site, [Math.min(z, clipped), underside])),
  };
}

/**
 * Where a drop's wires meet the bus by the shortest way that goes round what stands under the deck, within the drop's own
 * bay so that they cross no strut; null where the bus does not pass it or nothing leads there.
 */
export function tapFor(below: Below, { limbs, z }: LaidLimbs, drop: Drop): Tap | null {
  const home = nearestBay(below.bays, drop.at);
  if (home === null) return null;
  const { bay } = home;
  const pieces = limbs.flatMap((limb, i) => straightsIn(limb, i, bay));
  const inside = ([px, py]: Point) => within(px, bay.x) && within(py, bay.y);
  const found = tailWay(drop.at, pieces, { ...blocksIn(below, bay, z), inside });
  const piece = pieces[found?.straight ?? -1];
  const [at] = found?.path ?? [];
  if (found === null || piece === undefined || at === undefined) return null;
  const along = piece.along + Math.hypot(at[0] - piece.from[0], at[1] - piece.from[1]);
  return { drop: drop.id, limb: piece.limb, along, at, way: found.path, across: found.length, bay: bay.id };
}

function within(value: number, [low, high]: Range): boolean {
  return value >= low && value <= high;
}

type Piece = Straight & { readonly limb: number; readonly along: number };

/** The straights of a limb inside a bay, off its walls, each with how far along the bus it begins. */
function straightsIn({ path, from: start }: Limb, limb: number, { x, y }: Bay): readonly Piece[] {
  const pieces: Piece[] = [];
  let along = start;
  for (const [i, to] of path.entries()) {
    const from = path[i - 1] ?? to;
    const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const part = path.length > 1 && i === 0 ? null : insideOf(from, to, [widened(x, -PAST), widened(y, -PAST)]);
    if (part !== null) {
      const at = (share: number): Point => [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
      pieces.push({ limb, along: along + part[0] * long, from: at(part[0]), to: at(part[1]) });
    }
    along += long;
  }
  return pieces;
}

/** The shares of a straight between which it lies in a box; null where it does not (Liang and Barsky, 1984). */
function insideOf(from: Point, to: Point, box: readonly [Range, Range]): readonly [number, number] | null {
  let [low, high] = [0, 1];
  for (const i of [0, 1] as const) {
    const step = to[i] - from[i];
    const [a, b] = box[i];
    if (step === 0) {
      if (from[i] < a || from[i] > b) return null;
      continue;
    }
    const [s, t] = [(a - from[i]) / step, (b - from[i]) / step];
    low = Math.max(low, Math.min(s, t));
    high = Math.min(high, Math.max(s, t));
  }
  return low <= high ? [low, high] : null;
}

/** The bays a path passes through, in order, each once. */
export function baysAlong(path: readonly Point[], bays: readonly Bay[]): readonly string[] {
  const met = path.flatMap((to, i) => {
    const from = path[i - 1] ?? to;
    const steps = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / 20));
    return Array.from(
      { length: steps + 1 },
      (_, k) =>
        bayAt(bays, [from[0] + ((to[0] - from[0]) * k) / steps, from[1] + ((to[1] - from[1]) * k) / steps])?.id ?? null,
    );
  });
  return [...new Set(met.filter((id) => id !== null))];
}
