import { describe, expect, it } from 'vitest';
import { knotOf } from '../../../src/core/assembly/knot.ts';
import { scene } from '../../../src/core/assembly/scene.ts';
import { allLinked, type Block, cubes, linked, namesOf, pieceOf, solved, UPRIGHT } from './puzzle.ts';

/** A bar held in a bracket, locked by a key through both: only key, then bar, come out. Made for the test. */
function lockedBar() {
  const bracket = pieceOf('bracket', [
    ...([
      [
        [0, 0, 0],
        [4, 4, 1],
      ],
      [
        [0, 0, 1],
        [1, 4, 2],
      ],
      [
        [3, 0, 1],
        [4, 4, 2],
      ],
      [
        [0, 0, 2],
        [4, 1, 3],
      ],
      [
        [0, 2, 2],
        [4, 4, 3],
      ],
      [
        [0, 1, 2],
        [1, 2, 3],
      ],
      [
        [2, 1, 2],
        [4, 2, 3],
      ],
      [
        [1, 3, 1],
        [3, 4, 2],
      ],
    ] satisfies readonly Block[]),
  ]);
  const bar = pieceOf('bar', [
    [
      [1, 0, 1],
      [3, 1, 2],
    ],
    [
      [2, 1, 1],
      [3, 2, 2],
    ],
    [
      [1, 2, 1],
      [3, 3, 2],
    ],
  ]);
  const key = pieceOf('key', [
    [
      [1, 1, 1],
      [2, 2, 4],
    ],
  ]);
  return [bracket, bar, key];
}

/** Three pieces, each pinned into the next along another axis. Made for the test. */
function pinnedRing() {
  const socket = ([x, y, z]: readonly [number, number, number], open: 0 | 1 | 2): readonly Block[] => {
    const walls: Block[] = [];
    for (const axis of [0, 1, 2] as const) {
      for (const way of [-1, 1]) {
        if (axis === open && way === -1) continue;
        const low: [number, number, number] = [x, y, z];
        low[axis] += way;
        walls.push([low, [low[0] + 1, low[1] + 1, low[2] + 1]]);
      }
    }
    return walls;
  };
  const pin = ([x, y, z]: readonly [number, number, number]): Block => [
    [x, y, z],
    [x + 1, y + 1, z + 1],
  ];
  const [ab, bc, ca] = [
    [10, 0, 0],
    [20, 20, 3],
    [0, 13, 20],
  ] as const;
  return [
    pieceOf('a', [pin(ab), ...socket(ca, 2)]),
    pieceOf('b', [pin(bc), ...socket(ab, 0)]),
    pieceOf('c', [pin(ca), ...socket(bc, 1)]),
  ];
}

/** A box of five pieces, its front tongued into both sides, on a shelf in a case. */
function drawerInCase() {
  const bodies = [
    pieceOf('case', [
      [
        [0, 0, 0],
        [12, 10, 1],
      ],
      [
        [0, 0, 6],
        [12, 10, 7],
      ],
      [
        [0, 0, 1],
        [1, 10, 6],
      ],
      [
        [11, 0, 1],
        [12, 10, 6],
      ],
      [
        [1, 9, 1],
        [11, 10, 6],
      ],
    ]),
    pieceOf('left', [
      [
        [1, 0, 2],
        [2, 8, 5],
      ],
      [
        [2, 2, 2],
        [3, 3, 3],
      ],
    ]),
    pieceOf('right', [
      [
        [10, 0, 2],
        [11, 8, 5],
      ],
      [
        [9, 2, 2],
        [10, 3, 3],
      ],
    ]),
    pieceOf('floor', [
      [
        [1, 0, 1],
        [11, 8, 2],
      ],
      [
        [3, 2, 2],
        [9, 3, 3],
      ],
      [
        [2, 1, 2],
        [3, 2, 3],
      ],
      [
        [9, 1, 2],
        [10, 2, 3],
      ],
      [
        [2, 3, 2],
        [3, 4, 3],
      ],
      [
        [9, 3, 2],
        [10, 4, 3],
      ],
    ]),
  ];
  const links = linked(['left', 'floor'], ['right', 'floor'], ['case', 'floor']);
  return { bodies, links };
}

describe('an order of assembly', () => {
  it('is found for a bar that only a key locks', () => {
    const { moves, locked } = solved(lockedBar());
    expect(locked).toEqual([]);
    expect(namesOf(moves)).toEqual(['bracket', 'bar', 'key']);
    expect(moves.map(({ direction }) => direction)).toEqual([
      [0, 0, -1],
      [0, 1, 0],
      [0, 0, -1],
    ]);
  });

  it('is denied to three pieces pinned into each other, and each joint alone frees them', () => {
    const bodies = pinnedRing();
    const at = scene(bodies, allLinked(bodies));
    const { locked } = solved(bodies);
    expect(locked).toHaveLength(1);
    const knot = knotOf(at, locked[0] ?? [], UPRIGHT);
    expect(knot.bodies).toEqual(['a', 'b', 'c']);
    expect(knot.freedBy).toEqual([
      ['a', 'b'],
      ['a', 'c'],
      ['b', 'c'],
    ]);
  });

  it('takes a drawer out as one and then apart', () => {
    const { bodies, links } = drawerInCase();
    const { moves, locked } = solved(bodies, UPRIGHT, links);
    expect(locked).toEqual([]);
    expect(namesOf(moves)).toContain('left+right+floor');
    expect(moves.find(({ bodies: all }) => all.length === 3)?.direction).toEqual([0, 1, 0]);
  });

  it('goes round one corner where no straight way is left', () => {
    const hook = cubes('hook', [[1, 1, 1]]);
    const cage = cubes('cage', [
      [1, 1, 0],
      [2, 1, 0],
      [1, 1, 2],
      [1, 0, 1],
      [1, 2, 1],
      [0, 1, 1],
      [2, 0, 1],
      [2, 2, 1],
      [3, 1, 1],
    ]);
    const { moves, locked } = solved([cage, hook]);
    expect(locked).toEqual([]);
    const last = moves.at(-1);
    expect(last?.path).toBe('two-leg');
    expect(last?.legs).toEqual([
      { direction: [0, 0, -1], distance: null },
      { direction: [-1, 0, 0], distance: 1 },
    ]);
  });

  it('believes a declared tilt only where nothing straight is found', () => {
    const bodies = pinnedRing();
    const { moves, locked } = solved(bodies, { up: [0, 0, 1], tilts: new Set(['b']) });
    expect(locked).toEqual([]);
    expect(moves.filter(({ path }) => path === 'tilt').map((move) => move.bodies)).toEqual([['b']]);
    const free = solved(lockedBar(), { up: [0, 0, 1], tilts: new Set(['bar', 'key']) });
    expect(free.moves.some(({ path }) => path === 'tilt')).toBe(false);
  });
});
