import type { Path } from './land.ts';
import { type Stretch, stretchesOf } from './path-pieces.ts';

/** What the paths near a point allow its ground: at least `low`, at most `high`; mm. */
export type Allowed = { readonly low: number; readonly high: number };

/** Sides of the index's buckets, mm: coarse ones hold what can reach them, fine ones what can be nearest in them. */
const COARSE = 64;
const FINE = 16;

/** Columns of buckets fit into one number with their rows. */
const ROWS = 1 << 20;

/** Stretches by the bucket they can reach; buckets are filled when they are first asked for. */
export type FormationIndex = {
  readonly all: readonly Reaching[];
  readonly coarse: Map<number, readonly Stretch[]>;
  readonly fine: Map<number, readonly Stretch[]>;
};

/** A stretch and how far from it the ground can be held; mm. */
type Reaching = { readonly stretch: Stretch; readonly reach: number };

/**
 * An index of the levelled paths for ground that lies within `relief` of any of them in height: the farthest a slope
 * can run out is relief / slope.
 */
export function formationIndex(paths: readonly Path[], relief: number): FormationIndex {
  const all = stretchesOf(paths).map((stretch): Reaching => {
    const { z, dz, half, slope } = stretch;
    return { stretch, reach: half + (relief + Math.max(Math.abs(z), Math.abs(z + dz))) / slope };
  });
  return { all, coarse: new Map(), fine: new Map() };
}

function keyOf(x: number, y: number, side: number): number {
  return Math.floor(x / side) * ROWS + Math.floor(y / side);
}

/** The stretches that can reach the coarse bucket of a point. */
function reachingHere({ all, coarse }: FormationIndex, x: number, y: number): readonly Stretch[] {
  const key = keyOf(x, y, COARSE);
  const known = coarse.get(key);
  if (known !== undefined) return known;
  const [x0, y0] = [Math.floor(x / COARSE) * COARSE, Math.floor(y / COARSE) * COARSE];
  const near = (start: number, run: number, [low, reach]: readonly [number, number]) =>
    Math.min(start, start + run) - reach <= low + COARSE && Math.max(start, start + run) + reach >= low;
  const found = all
    .filter(
      ({ stretch, reach }) => near(stretch.x, stretch.dx, [x0, reach]) && near(stretch.y, stretch.dy, [y0, reach]),
    )
    .map(({ stretch }) => stretch);
  coarse.set(key, found);
  return found;
}

/** The stretches that can be the nearest of their piece somewhere in the fine bucket of a point. */
function nearHere(index: FormationIndex, x: number, y: number): readonly Stretch[] {
  const { fine } = index;
  const key = keyOf(x, y, FINE);
  const known = fine.get(key);
  if (known !== undefined) return known;
  const [mx, my] = [(Math.floor(x / FINE) + 0.5) * FINE, (Math.floor(y / FINE) + 0.5) * FINE];
  const far = reachingHere(index, x, y).map((stretch) => ({
    stretch,
    off: Math.sqrt(offSquare(stretch, mx, my)),
  }));
  const least = new Map<number, number>();
  for (const { stretch, off } of far) least.set(stretch.piece, Math.min(off, least.get(stretch.piece) ?? off));
  // a point lies within FINE / sqrt 2 of the middle, so distances differ by at most that much either way
  const kept = far.filter(({ stretch, off }) => off <= (least.get(stretch.piece) ?? off) + FINE * Math.SQRT2 + 1e-9);
  const found = kept.map(({ stretch }) => stretch);
  fine.set(key, found);
  return found;
}

function shareOf({ x, y, dx, dy, perSquare }: Stretch, px: number, py: number): number {
  return ((px - x) * dx + (py - y) * dy) * perSquare;
}

/** Square of the distance from a point to a stretch, mm2. */
function offSquare(stretch: Stretch, px: number, py: number): number {
  const share = Math.min(1, Math.max(0, shareOf(stretch, px, py)));
  const [ox, oy] = [px - stretch.x - share * stretch.dx, py - stretch.y - share * stretch.dy];
  return ox * ox + oy * oy;
}

/**
 * Between what heights the paths hold the ground at a point: level over their width, then falling away as a bank or
 * rising as a cutting, from the nearest place of each piece, and from none beyond a square end. Where paths disagree
 * the lower one wins, so that none is buried.
 */
export function allowedAt(index: FormationIndex, x: number, y: number): Allowed {
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const list = nearHere(index, x, y);
  for (let i = 0; i < list.length; ) {
    const { stretch, off, next } = nearestOfPiece(list, i, { x, y });
    i = next;
    if (stretch === null) continue;
    const raw = shareOf(stretch, x, y);
    if ((raw < 0 && stretch.squareStart) || (raw > 1 && stretch.squareEnd)) continue;
    const z = stretch.z + stretch.dz * Math.min(1, Math.max(0, raw));
    const out = stretch.slope * Math.max(0, Math.sqrt(off) - stretch.half);
    low = Math.max(low, z - out);
    high = Math.min(high, z + out);
  }
  return { low, high };
}

/** The nearest stretch of the piece that starts at `from` in a list, and where the next piece starts. */
function nearestOfPiece(list: readonly Stretch[], from: number, { x, y }: { readonly x: number; readonly y: number }) {
  const piece = list[from]?.piece;
  let [stretch, off]: [Stretch | null, number] = [null, Number.POSITIVE_INFINITY];
  let next = from;
  for (; next < list.length; next += 1) {
    const one = list[next];
    if (one === undefined || one.piece !== piece) break;
    const here = offSquare(one, x, y);
    if (here < off) [stretch, off] = [one, here];
  }
  return { stretch, off, next };
}
