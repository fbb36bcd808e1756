import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlacingOrder } from '../../src/core/assembly/placing-order.ts';
import type { Vector } from '../../src/core/geometry/shapes.ts';
import { allLinked, cubes, namesOf, solved, UPRIGHT } from '../core/assembly/puzzle.ts';

const RUNS = 400;
const SIZE = [4, 3, 3] as const;
const CELLS = Array.from({ length: 36 }, (_, i): Vector => [i % 4, Math.floor(i / 4) % 3, Math.floor(i / 12)]);
const WAYS: readonly Vector[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];

/** A block of 36 unit cubes shared out among four pieces, which are then put in one by one. */
type Puzzle = { readonly pieces: readonly (readonly Vector[])[]; readonly order: readonly number[] };

const puzzles: fc.Arbitrary<Puzzle> = fc
  .record({
    seeds: fc.shuffledSubarray(CELLS, { minLength: 4, maxLength: 4 }),
    grow: fc.array(fc.nat({ max: 1e6 }), { minLength: 60, maxLength: 60 }),
    order: fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4, maxLength: 4 }),
  })
  .map(({ seeds, grow, order }) => ({ pieces: grown(seeds, grow), order }));

/** Pieces that grow in turn by a free neighbour of theirs, so that each is of one piece. */
function grown(seeds: readonly Vector[], grow: readonly number[]): readonly (readonly Vector[])[] {
  const pieces = seeds.map((seed) => [seed]);
  const taken = new Set(seeds.map(String));
  grow.forEach((pick, turn) => {
    const piece = pieces[turn % pieces.length] ?? [];
    const free = piece.flatMap((cell) => WAYS.map((way) => moved(cell, way, 1)).filter((one) => isIn(one, taken)));
    const next = free[pick % Math.max(1, free.length)];
    if (next === undefined) return;
    piece.push(next);
    taken.add(String(next));
  });
  return pieces;
}

function isIn(cell: Vector, taken: ReadonlySet<string>): boolean {
  return cell.every((c, i) => c >= 0 && c < (SIZE[i] ?? 0)) && !taken.has(String(cell));
}

function moved([x, y, z]: Vector, [dx, dy, dz]: Vector, by: number): Vector {
  return [x + by * dx, y + by * dy, z + by * dz];
}

/** Whether a piece, shifted cube by cube, comes clear of what stands: straight, or over any corners at all. */
function ways(piece: readonly Vector[], standing: ReadonlySet<string>): 'straight' | 'round corners' | 'none' {
  const hits = (by: Vector) => piece.some((cell) => standing.has(String(moved(cell, by, 1))));
  const straight = WAYS.some((way) => [1, 2, 3, 4, 5].every((n) => !hits(moved([0, 0, 0], way, n))));
  if (straight) return 'straight';
  const seen = new Set(['0,0,0']);
  const edge: Vector[] = [[0, 0, 0]];
  for (let at = edge.pop(); at !== undefined; at = edge.pop()) {
    if (at.some((c) => Math.abs(c) > 5)) return 'round corners';
    for (const next of WAYS.map((way) => moved(at, way, 1))) {
      if (seen.has(String(next)) || hits(next)) continue;
      seen.add(String(next));
      edge.push(next);
    }
  }
  return 'none';
}

type Verdict = {
  readonly stopped: readonly number[];
  readonly free: readonly number[];
  readonly shut: readonly number[];
};

/** What the check says of each step of one piece, and what shifted cubes say. */
function judged({ pieces, order }: Puzzle, check = checkPlacingOrder): Verdict {
  const bodies = pieces.map((piece, i) => cubes(`p${i}`, piece));
  const steps = order.map((i) => ({ step: `s${i}`, title: `Put in ${i}`, parts: [`p${i}`] }));
  const found = check({ bodies, links: allLinked(bodies), steps, proved: [], tilts: [] });
  const told = order.map((i, k) => ({
    i,
    way: ways(pieces[i] ?? [], new Set(order.slice(0, k).flatMap((j) => (pieces[j] ?? []).map(String)))),
  }));
  return {
    stopped: found.map(({ where }) => Number(where.slice(1))),
    free: told.filter(({ way }) => way === 'straight').map(({ i }) => i),
    shut: told.filter(({ way }) => way === 'none').map(({ i }) => i),
  };
}

/** Steps that are stopped though the way is straight, and steps that are let through though there is no way at all. */
function wrong({ stopped, free, shut }: Verdict): number {
  return stopped.filter((i) => free.includes(i)).length + shut.filter((i) => !stopped.includes(i)).length;
}

/** The pieces in the order found, when the steps put them in one by one; null where the steps' own order is not free. */
function kept({ pieces, order }: Puzzle, steps: ReadonlyMap<string, number> | undefined): boolean | null {
  const bodies = pieces.map((piece, i) => cubes(`p${i}`, piece));
  const links = allLinked(bodies);
  const puttingIn = order.map((i) => ({ step: `s${i}`, title: `Put in ${i}`, parts: [`p${i}`] }));
  if (checkPlacingOrder({ bodies, links, steps: puttingIn, proved: [], tilts: [] }).length > 0) return null;
  const found = namesOf(solved(bodies, { ...UPRIGHT, ...(steps === undefined ? {} : { steps }) }, links).moves);
  return found.join(' ') === order.map((i) => `p${i}`).join(' ');
}

function stepsOf({ order }: Puzzle): ReadonlyMap<string, number> {
  return new Map(order.map((i, k) => [`p${i}`, k]));
}

const samples = fc.sample(puzzles, { numRuns: RUNS, seed: 20261126 });

describe('the order in which steps put pieces in', () => {
  it('is stopped where shifted cubes find no way at all, and never where they find a straight one', () => {
    const verdicts = samples.map((puzzle) => judged(puzzle));
    const shut = verdicts.filter((one) => one.shut.length > 0).length;
    console.log(`puzzles with a piece shut out: ${shut} of ${RUNS}`);
    expect(shut).toBeGreaterThan(20);
    expect(verdicts.reduce((sum, one) => sum + wrong(one), 0)).toBe(0);
  });

  it('is the order that is found, wherever it is free', () => {
    const told = samples.map((puzzle) => kept(puzzle, stepsOf(puzzle)));
    console.log(`puzzles whose steps' own order is free: ${told.filter((one) => one !== null).length} of ${RUNS}`);
    expect(told.filter((one) => one === true).length).toBeGreaterThan(RUNS * 0.7);
    expect(told).not.toContain(false);
  });

  it('is another where the steps are not asked: the fault that shows the law can fail', () => {
    expect(samples.map((puzzle) => kept(puzzle, undefined))).toContain(false);
  });

  it('is judged wrongly by a check that lets everything through, and by one that takes the steps backwards', () => {
    const through = samples.map((puzzle) => wrong(judged(puzzle, () => [])));
    const backwards = samples.map((puzzle) =>
      wrong(judged(puzzle, (built) => checkPlacingOrder({ ...built, steps: [...built.steps].reverse() }))),
    );
    expect(Math.max(...through)).toBeGreaterThan(0);
    expect(Math.max(...backwards)).toBeGreaterThan(0);
  });
});
