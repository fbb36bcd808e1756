import { describe, expect, it } from 'vitest';
import { proveAssembly } from '../../../src/core/assembly/prove.ts';
import { USUAL_WORKSHOP } from '../../../src/core/assembly/workshop.ts';
import type { Pose, Vector } from '../../../src/core/geometry/shapes.ts';
import type { Feature, Joint, Part } from '../../../src/core/stock/part.ts';
import { spoken } from '../../../src/core/units/say.ts';

const NAMES = ['board.1', 'board.2', 'board.3', 'board.4'] as const;

/** A board 300 long, 100 wide and 18 thick whose right end is notched to a tongue 6 long; mm. */
const BLANK = { length: 300, width: 100, thickness: 18, grain: 'length' } as const;
const TONGUE = 6;

/** Where the tongue of another board stands on a board's back, and what the board's own tongue keeps of its width. */
type Cut = {
  readonly at: readonly [number, number];
  readonly across: readonly [number, number];
  readonly tongue: readonly [number, number];
};

/** A dado stopped on all sides, with 0.3 to spare across, and two notches that leave the tongue. */
function board(i: number, pose: Pose, { at, across, tongue }: Cut): Part {
  const id = NAMES[i] ?? '';
  const grown = ([low, high]: readonly [number, number]) => [low - 0.15, high + 0.15] as const;
  const [[x0, x1], [y0, y1]] = [grown(at), grown(across)];
  const end = { x0: BLANK.length - TONGUE, x1: BLANK.length };
  const features: readonly Feature[] = [
    { id: 'dado', kind: 'stopped-dado', side: 'back', patch: { x0, x1, y0, y1 }, depth: TONGUE, corner: 0 },
    { id: 'low', kind: 'notch', edge: 'right', patch: { ...end, y0: 0, y1: tongue[0] }, corner: 0 },
    { id: 'high', kind: 'notch', edge: 'right', patch: { ...end, y0: tongue[1], y1: BLANK.width }, corner: 0 },
  ];
  return {
    id,
    label: `B${i + 1}`,
    role: 'side',
    chapter: 'benchwork',
    bench: 'ring',
    stock: 'ply',
    blank: BLANK,
    features,
    places: [{ id, label: `B${i + 1}`, pose, marks: [] }],
    cutAfterMeasuring: false,
    phase: 'now',
  };
}

/** Three boards square to each other, each let into the next along another axis; each is the one before with x, y, z moved on by one. */
function threeWays(): readonly Part[] {
  const moved = ([x, y, z]: Vector, by: number): Vector => (by === 0 ? [x, y, z] : moved([z, x, y], by - 1));
  const cut: Cut = { at: [264, 288], across: [40, 58], tongue: [10, 34] };
  return [0, 1, 2].map((i) =>
    board(
      i,
      { origin: moved([-294, -40, 0], i), x: moved([1, 0, 0], i), y: moved([0, 1, 0], i), z: moved([0, 0, 1], i) },
      cut,
    ),
  );
}

/** Four boards on edge round a square of 360; each is the one before, turned by a quarter. */
function square(): readonly Part[] {
  const [round, inset] = [360 + 12, 60];
  const turned = ([x, y, z]: Vector, quarters: number, about: number): Vector =>
    quarters === 0 ? [x, y, z] : turned([2 * about - y, x, z], quarters - 1, about);
  const cut: Cut = { at: [inset, inset + 18], across: [15, 85], tongue: [15, 85] };
  return [0, 1, 2, 3].map((i) =>
    board(
      i,
      {
        origin: turned([0, inset + 18, 0], i, round / 2),
        x: turned([1, 0, 0], i, 0),
        y: [0, 0, 1],
        z: turned([0, -1, 0], i, 0),
      },
      cut,
    ),
  );
}

/** The boards proved, each end glued into the dado of the next. */
function proved(parts: readonly Part[]) {
  const joints = parts.flatMap(({ id }, i): readonly Joint[] => {
    const into = parts[(i + 1) % parts.length]?.id ?? '';
    return [{ id: `dado.${into}.${id}`, kind: 'dado', between: [into, id], clearance: 0.3, relief: 0, held: 'glue' }];
  });
  return proveAssembly({
    bench: 'ring',
    parts,
    joints,
    thicknesses: [],
    fasteners: [],
    groups: [],
    steps: new Map(),
    tilts: [],
    corner: 'front-left',
    workshop: USUAL_WORKSHOP,
  });
}

function halts(told: ReturnType<typeof proved>) {
  return told.findings.filter(({ level }) => level === 'halt');
}

describe('a ring of boards, each with its end in a stopped dado of the next', () => {
  it('does not close when it turns through all three directions: all of it is the knot, and any one joint frees it', () => {
    const before = performance.now();
    const told = proved(threeWays());
    expect(performance.now() - before).toBeLessThan(5000);
    expect(halts(told).map(({ rule }) => rule)).toEqual(['no-straight-path']);
    expect(told.chosen).toBeNull();
    expect(told.knots.map(({ parts }) => parts.toSorted())).toEqual([['board.1', 'board.2', 'board.3']]);
    expect(told.knots[0]?.freedBy.map((pair) => pair.toSorted().join(' ')).sort()).toEqual([
      'board.1 board.2',
      'board.1 board.3',
      'board.2 board.3',
    ]);
    expect(spoken(halts(told)[0]?.mend ?? [], String)).toMatch(
      /^leave one joint open at the end and the rest goes together: board\.1 to board\.2, or /,
    );
  });

  it('does close in a plane of four, since two boards go as one: by hand, the halves are drawn together', () => {
    const told = proved(square());
    expect(halts(told)).toEqual([]);
    const order = told.poses.find(({ pose }) => pose === told.chosen)?.order ?? [];
    expect(order.map(({ parts }) => parts.length)).toContain(2);
  });
});
