import type { BenchInput, BenchworkInput, BenchworkModel, Flush, Struts } from '../../src/core/benchwork/input.ts';
import { toWorld } from '../../src/core/geometry/pose.ts';
import type { Vector } from '../../src/core/geometry/shapes.ts';
import { bodies } from './placed-parts.ts';

const OTHER: Readonly<Record<Flush, Flush>> = {
  'front-left': 'front-right',
  'front-right': 'front-left',
  'back-left': 'back-right',
  'back-right': 'back-left',
};

/** The same table seen in a mirror that stands across its length. */
export function mirrored(input: BenchworkInput): BenchworkInput {
  const length = input.dimensions.length ?? 0;
  return { ...input, benches: input.benches.map((bench) => mirroredBench(bench, length)) };
}

function mirroredBench(bench: BenchInput, length: number): BenchInput {
  const { struts, deck } = bench;
  if (struts === null) return bench;
  const count = struts.across.kind === 'even' ? struts.across.count : struts.across.at.length;
  const across: Struts =
    struts.across.kind === 'even'
      ? struts.across
      : { kind: 'at', at: struts.across.at.map((x) => length - x).reverse() };
  const number = (on: string) => count + 1 - Number(on.slice('strut.across-'.length));
  const seams = deck?.seams.map((seam) => ({ ...seam, on: `strut.across-${number(seam.on)}` })) ?? [];
  return {
    ...bench,
    struts: { ...struts, across },
    deck: deck === null ? null : { ...deck, flush: OTHER[deck.flush], seams },
  };
}

/** Every corner of every placed part; mirrored when a length is given. */
export function cornersOf(model: BenchworkModel, mirror: number | null): readonly Vector[] {
  return bodies(model).flatMap(({ solid, place }) =>
    solid.prisms.flatMap(({ polygon, from, to }) =>
      [polygon.outline, ...polygon.holes].flat().flatMap(([x, y]) =>
        [from, to].map((z): Vector => {
          const [wx, wy, wz] = toWorld(place.pose, [x, y, z]);
          return [mirror === null ? wx : mirror - wx, wy, wz];
        }),
      ),
    ),
  );
}

/** Clipped round corners are good to 0.0001 mm; twice that may part two of them. */
const SAME = 3e-4;
const CELL = 0.01;

/** Whether each set of points has, for each of its own, one of the other's at the same place. */
export function sameCorners(a: readonly Vector[], b: readonly Vector[]): boolean {
  return a.length === b.length && covers(a, b) && covers(b, a);
}

function covers(these: readonly Vector[], those: readonly Vector[]): boolean {
  const cells = new Map<string, Vector[]>();
  for (const point of these) {
    const key = point.map((mm) => Math.floor(mm / CELL)).join(' ');
    const held = cells.get(key);
    if (held === undefined) cells.set(key, [point]);
    else held.push(point);
  }
  return those.every((point) => cellsAround(point).some((key) => cells.get(key)?.some((other) => near(point, other))));
}

/** The cells a point or one within SAME of it may lie in. */
function cellsAround([x, y, z]: Vector): readonly string[] {
  const both = (mm: number) => [...new Set([Math.floor((mm - SAME) / CELL), Math.floor((mm + SAME) / CELL)])];
  return both(x).flatMap((cx) => both(y).flatMap((cy) => both(z).map((cz) => `${cx} ${cy} ${cz}`)));
}

function near(a: Vector, b: Vector): boolean {
  return ([0, 1, 2] as const).every((axis) => Math.abs(a[axis] - b[axis]) <= SAME);
}
