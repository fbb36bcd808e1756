import type { Path } from './land.ts';
import { type Stretch, stretchesOf } from './path-pieces.ts';

/** What the paths near a point allow its ground: at least `low`, at most `high`; mm. */
export type Allowed = { readonly low: number; readonly high: number };

/** Sides of the index's buckets, mm: coarse ones hold what can reach them, fine ones what can be nearest in them. */
const COARSE = 64;
const FINE = 16;

/** Columns of buckets fit into one number with their rows. */
const ROWS = 1 << 20;

/** Stretches by the bucket they can reach; fine buckets are filled when they are first asked for. */
export type FormationIndex = {
  readonly coarse: ReadonlyMap<number, readonly Stretch[]>;
  readonly fine: Map<number, readonly Stretch[]>;
};

/**
 * An index of the levelled paths for ground that lies within `relief` of any of them in height: the farthest a slope
 * can run out is relief / slope.
 */
export function formationIndex(paths: readonly Path[], relief: number): FormationIndex {
  const coarse = new Map<number, Stretch[]>();
  for (const stretch of stretchesOf(paths)) enter(coarse, stretch, relief);
  return { coarse, fine: new Map() };
}

function keyOf(x: number, y: number, side: number): number {
  return Math.floor(x / side) * ROWS + Math.floor(y / side);
}

function enter(index: Map<number, Stretch[]>, stretch: Stretch, relief: number): void {
  const { x, y, dx, dy, z, dz, half, slope } = stretch;
  const reach = half + (relief + Math.max(Math.abs(z), Math.abs(z + dz))) / slope;
  const cell = (value: number) => Math.floor(value / COARSE);
  for (let i = cell(Math.min(x, x + dx) - reach); i <= cell(Math.max(x, x + dx) + reach); i += 1) {
    for (let j = cell(Math.min(y, y + dy) - reach); j <= cell(Math.max(y, y + dy) + reach); j += 1) {
      const list = index.get(i * ROWS + j);
      if (list === undefined) index.set(i * ROWS + j, [stretch]);
      else list.push(stretch);
    }
  }
}

/** The stretches that can be the nearest of their piece somewhere in the fine bucket of a point. */
function nearHere({ coarse, fine }: FormationIndex, x: number, y: number): readonly Stretch[] {
  const key = keyOf(x, y, FINE);
  const known = fine.get(key);
  if (known !== undefined) return known;
  const [mx, my] = [(Math.floor(x / FINE) + 0.5) * FINE, (Math.floor(y / FINE) + 0.5) * FINE];
  const far = (coarse.get(keyOf(x, y, COARSE)) ?? []).map((stretch) => ({
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
