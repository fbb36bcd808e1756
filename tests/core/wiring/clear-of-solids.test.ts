import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standing, toWorld, within } from '../../../src/core/geometry/pose.ts';
import type { Vector } from '../../../src/core/geometry/shapes.ts';
import { compute, type Notebook } from '../../../src/core/notebook.ts';
import { type Change, changedPlan } from './changed-demo.ts';

/** The demo notebook with pieces of its text changed. */
function demo(...changes: readonly Change[]): Notebook {
  const answer = compute(changedPlan(...changes));
  if (!answer.ok) throw new Error('the changed notebook does not compute');
  return answer.value;
}

type Box = { readonly id: string; readonly role: string; readonly min: Vector; readonly max: Vector };

/** Every placed blank, and the slot of each slide, as boxes; the demo's bench stands square. */
function boxesOf({ benches, parts }: Notebook): readonly Box[] {
  const blanks = parts.flatMap((part) => {
    const bench = benches.find(({ id }) => id === part.bench);
    const at = standing([bench?.place.x ?? 0, bench?.place.y ?? 0], bench?.place.turn ?? 0);
    return part.places.map(({ id, pose }): Box => {
      const { length, thickness, width } = part.blank;
      const [a, b] = [toWorld(within(at, pose), [0, 0, 0]), toWorld(within(at, pose), [length, width, thickness])];
      const edge = (pick: (x: number, y: number) => number): Vector => [
        pick(a[0], b[0]),
        pick(a[1], b[1]),
        pick(a[2], b[2]),
      ];
      return { id, role: part.role, min: edge(Math.min), max: edge(Math.max) };
    });
  });
  const slides = blanks
    .filter(({ role }) => role === 'drawer-spacer')
    .flatMap((spacer) =>
      blanks
        .filter(
          ({ role, min, max }) =>
            role === 'drawer-side' && Math.min(Math.abs(min[0] - spacer.max[0]), Math.abs(spacer.min[0] - max[0])) < 40,
        )
        .map(
          (side): Box => ({
            ...{ id: `slide of ${side.id}`, role: 'slide' },
            min: [Math.min(spacer.max[0], side.max[0]), spacer.min[1], spacer.min[2]],
            max: [Math.max(spacer.min[0], side.min[0]), spacer.max[1], spacer.max[2]],
          }),
        ),
    );
  return [...blanks, ...slides];
}

/** The places of a straight every millimetre or so. */
function sampled(from: Vector, to: Vector): readonly Vector[] {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  const steps = Math.max(1, Math.ceil(long));
  return Array.from({ length: steps + 1 }, (_, i): Vector => {
    const share = i / steps;
    return [
      from[0] + (to[0] - from[0]) * share,
      from[1] + (to[1] - from[1]) * share,
      from[2] + (to[2] - from[2]) * share,
    ];
  });
}

function inside({ min, max }: Box, [x, y, z]: Vector): boolean {
  const off = 0.01;
  return (
    x > min[0] + off && x < max[0] - off && y > min[1] + off && y < max[1] - off && z > min[2] + off && z < max[2] - off
  );
}

/** What wires run through that is no hole asked for them; decks are drilled from above where wires come up. */
function runInto(book: Notebook): readonly string[] {
  const boxes = boxesOf(book).filter(({ role }) => role !== 'deck' && role !== 'layer' && role !== 'profile-board');
  const spaces = book.envelopes
    .filter(({ kind }) => kind === 'drawer' || kind === 'motor' || kind === 'leg')
    .map(({ id, min, max }): Box => ({ id, role: 'space', min, max }));
  const holes = book.wiring?.holes ?? [];
  const hit = (book.wiring?.wires ?? []).flatMap(({ id, path }) =>
    path.slice(1).flatMap((to, i) =>
      sampled(path[i] ?? to, to).flatMap((at) =>
        [...boxes, ...spaces].flatMap((box) => {
          if (!inside(box, at)) return [];
          const through = holes.some((hole) => hole.part === box.id && near(hole.at, at, hole.diameter));
          return through ? [] : [`${id} in ${box.id}`];
        }),
      ),
    ),
  );
  return [...new Set(hit)];
}

/** Within a hole: nearer to its axis than its radius, and within the board. */
function near(hole: Vector, at: Vector, diameter: number): boolean {
  const off = [Math.abs(at[0] - hole[0]), Math.abs(at[1] - hole[1]), Math.abs(at[2] - hole[2])].toSorted(
    (a, b) => a - b,
  );
  return (off[0] ?? 0) < diameter / 2 && (off[1] ?? 0) < diameter / 2 && (off[2] ?? 0) < 15;
}

/** Holes of the bus that come nearer than 3 mm to a screw or a bolt in the same board; the demo's bench stands at the origin. */
function drilledInto({ fasteners, wiring }: Pick<Notebook, 'fasteners' | 'wiring'>): readonly string[] {
  return (wiring?.holes ?? []).flatMap((hole) =>
    fasteners
      .filter(({ through }) => through.includes(hole.part))
      .filter(({ diameter, direction, head, length }) =>
        sampled(head, [
          head[0] + direction[0] * length,
          head[1] + direction[1] * length,
          head[2] + direction[2] * length,
        ]).some((at) => {
          const [, ...off] = [at[0] - hole.at[0], at[1] - hole.at[1], at[2] - hole.at[2]]
            .map(Math.abs)
            .toSorted((a, b) => a - b);
          // the least of the three is across the board, where both are
          return Math.hypot(...off) < hole.diameter / 2 + diameter / 2 + 3 - 0.01;
        }),
      )
      .map(({ id }) => `${hole.id} ${id}`),
  );
}

describe('wires under the deck, every millimetre against every board, slide, drawer, motor and leg', () => {
  const book = demo();

  it('go through holes asked for them and through nothing else', () => {
    expect(boxesOf(book).filter(({ role }) => role === 'slide').length).toBe(4);
    expect(runInto(book)).toEqual([]);
  });

  it('keep their holes off every screw and bolt', () => {
    expect(book.fasteners.length).toBeGreaterThan(50);
    expect(drilledInto(book)).toEqual([]);
  });

  it('planted fault: a screw driven at a hole is seen', () => {
    const [hole] = book.wiring?.holes ?? [];
    const [screw] = book.fasteners;
    if (hole === undefined || screw === undefined) throw new Error('no hole or no screw');
    const head: Vector = [hole.at[0], hole.at[1] + 4, 690];
    const planted = { ...screw, head, direction: [0, 0, -1] as const, through: ['deck.1', hole.part] };
    expect(drilledInto({ ...book, fasteners: [planted] })).toEqual([`${hole.id} ${screw.id}`]);
  });

  it('planted fault: a wire through a spacer and a drawer is seen', () => {
    const [first] = book.wiring?.wires ?? [];
    if (first === undefined || book.wiring === null) throw new Error('no wire');
    const path = [
      [422, 200, 600],
      [600, 200, 600],
    ] as const;
    const planted = { ...book, wiring: { ...book.wiring, wires: [{ ...first, path }] } };
    expect(runInto(planted)).toEqual(expect.arrayContaining([`${first.id} in spacer.front-2-left`]));
    expect(runInto(planted)).toEqual(expect.arrayContaining([`${first.id} in slide of drawer.front-2.side-left`]));
  });

  const bare = { file: 'benchwork', from: 'shelves: { side: back, bays: [2, 3], material: deck }', to: '' };
  const inches = { file: 'notebook', from: 'show: mm', to: 'show: in' };
  const tables: readonly (readonly [string, readonly Change[]])[] = [
    ['without shelves', [bare]],
    ['in inches', [inches]],
    ['with lights over a strut', [{ file: 'wiring', from: '[930 mm, 300 mm]', to: '[405 mm, 300 mm]' }]],
    ['with lights over water', [{ file: 'wiring', from: '[930 mm, 300 mm]', to: '[700 mm, 200 mm]' }]],
  ];

  for (const [name, changes] of tables) {
    it(`so does a table ${name}`, () => {
      const other = demo(...changes);
      expect(other.findings.filter(({ rule }) => rule === 'bus-clash')).toEqual([]);
      expect(runInto(other)).toEqual([]);
    });
  }

  const random = fc.sample(
    fc.record({
      bays: fc.constantFrom('[2]', '[3]', '[2, 3]'),
      slides: fc.constantFrom(250, 300, 350, 450),
      every: fc.integer({ min: 3, max: 12 }),
      from: fc.tuple(fc.integer({ min: 2, max: 30 }), fc.integer({ min: 2, max: 20 })),
      light: fc.tuple(fc.integer({ min: 2, max: 30 }), fc.integer({ min: 2, max: 20 })),
    }),
    { numRuns: 10, seed: 20261125 },
  );

  it('so do ten random tables with drawers, and at least seven of them are wired in full', () => {
    const all = random.map(({ bays, every, from, light, slides }) =>
      demo(
        bare,
        {
          file: 'benchwork',
          from: 'bays: [2, 3], slides: { length: 450 mm }',
          to: `bays: ${bays}, slides: { length: ${slides} mm }`,
        },
        { file: 'wiring', from: 'every: 900 mm', to: `every: ${every * 100} mm` },
        { file: 'wiring', from: 'from: [120 mm, 80 mm]', to: `from: [${from[0] * 50} mm, ${from[1] * 50} mm]` },
        { file: 'wiring', from: '[930 mm, 300 mm]', to: `[${light[0] * 50} mm, ${light[1] * 50} mm]` },
      ),
    );
    const whole = all.filter(({ findings }) => !findings.some(({ rule }) => rule === 'feeder-unreached'));
    console.log(`random tables with drawers: ${whole.length} of ${all.length} wired in full`);
    expect(whole.length).toBeGreaterThanOrEqual(7);
    expect(all.flatMap(({ findings }) => findings.filter(({ rule }) => rule === 'bus-clash'))).toEqual([]);
    expect(all.flatMap(runInto)).toEqual([]);
    expect(all.flatMap(drilledInto)).toEqual([]);
  });
});
