import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frame } from '../../src/core/benchwork/frame.ts';
import { compute } from '../../src/core/notebook.ts';
import type { DrawingBook } from '../../src/drawing/book.ts';
import { drawingSet } from '../../src/drawing/layout.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { randomFitted } from '../laws/random-fittings.ts';
import { complaints, printedWithin, readFigure } from './checker.ts';

type Screwed = DrawingBook & { readonly fasteners: NonNullable<DrawingBook['fasteners']> };

const shipped = new URL('../../content', import.meta.url).pathname;
const folders = [shipped, new URL('../cases/fittings/content', import.meta.url).pathname];
const content = await Promise.all(folders.map((folder) => loadWithShipped(folder, shipped)));
const notebooks = content.flatMap((files) =>
  readContent(files).plans.flatMap((plan): readonly Screwed[] => {
    const result = compute(plan);
    return result.ok ? [result.value] : [];
  }),
);

/** Random tables with drawers, legs and shelves, as books of drawings. */
const tables = fc.sample(randomFitted, { numRuns: 30, seed: 20261125 }).flatMap((input): readonly Screwed[] => {
  const made = frame(input);
  if (!made.ok) return [];
  return [
    { slug: 'random', title: 'Random', makers: [], sheets: [], stock: input.goods?.hardware ?? [], ...made.value },
  ];
});

type Vector = readonly [number, number, number];

/** Where a point of the bench lies on a placed piece, from its left end and its bottom edge. */
function onPiece(point: Vector, { origin, x, y }: { readonly origin: Vector; readonly x: Vector; readonly y: Vector }) {
  const along = (axis: Vector) => axis.reduce((sum, one, i) => sum + one * ((point[i] ?? 0) - (origin[i] ?? 0)), 0);
  return [along(x), along(y)] as const;
}

/** Counted screws and bolts that no part drawing places, by figures read off the sheets as a builder would; `drawn` is what is drawn. */
function unplaced(book: Screwed, unit: 'mm' | 'in', drawn: DrawingBook = book): readonly string[] {
  const { layOut } = drawingSet(drawn);
  const figures = new Map<string, readonly string[]>();
  const figuresOf = (id: string) => {
    const known =
      figures.get(id) ??
      layOut(`part.${id}`, { unit, paper: 'A4' }).sheets.flatMap(({ dimensions }) =>
        dimensions.flatMap(({ measure, of, text }) => of.map((one) => `${measure} ${one} ${text}`)),
      );
    figures.set(id, known);
    return known;
  };
  return book.fasteners.flatMap(({ id, head, through: [first] }): readonly string[] => {
    const part = book.parts.find(({ places }) => places.some((place) => place.id === first));
    const place = part?.places.find((one) => one.id === first);
    if (part === undefined || place === undefined) return [`${id} goes into nothing`];
    const at = onPiece(head, place.pose);
    const hole = part.features.find(
      (one) => one.kind === 'hole' && Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) < 0.05,
    );
    const told = (['x', 'y'] as const).every((measure, i) =>
      figuresOf(part.id).some((figure) => {
        const [axis, of, ...text] = figure.split(' ');
        const off = Math.abs(readFigure(text.join(' '), unit) - (at[i] ?? 0));
        return axis === measure && (of === id || of === hole?.id) && off <= printedWithin(unit);
      }),
    );
    return told ? [] : [id];
  });
}

const without = (book: Screwed, gone: string): DrawingBook => ({
  ...book,
  fasteners: book.fasteners.filter(({ holds }) => !holds.startsWith(gone)),
});

describe('every screw and bolt that is counted has its place on a part drawing', () => {
  for (const unit of ['mm', 'in'] as const) {
    test(`in the demo notebooks and the cases, in ${unit}`, () => {
      expect(notebooks.length).toBeGreaterThan(3);
      for (const book of notebooks) expect([book.slug, unplaced(book, unit)]).toEqual([book.slug, []]);
    });
  }

  test('on random tables', () => {
    const screws = tables.flatMap(({ fasteners }) => fasteners);
    console.log(`${tables.length} tables with ${screws.length} screws and bolts`);
    for (const kind of ['slide.', 'bracket.', 'caster.', 'bearing.'])
      expect(screws.filter(({ holds }) => holds.startsWith(kind)).length).toBeGreaterThan(10);
    for (const book of tables) expect(unplaced(book, 'mm')).toEqual([]);
  });

  const [table] = notebooks.filter(({ slug }) => slug === 'bittern-basin');
  for (const gone of ['slide.', 'bracket.', 'bearing.strut.across-1.'])
    test(`planted fault: ${gone} is left out of the drawings`, () => {
      if (table === undefined) throw new Error('no demo');
      const expected = table.fasteners.filter(({ holds }) => holds.startsWith(gone)).map(({ id }) => id);
      expect(expected.length).toBeGreaterThan(0);
      expect(unplaced(table, 'mm', without(table, gone))).toEqual(expected);
    });

  test('planted fault: the inserts of casters are bored elsewhere', () => {
    if (table === undefined) throw new Error('no demo');
    const parts = table.parts.map((part) => ({
      ...part,
      features: part.features.filter(({ kind }) => kind !== 'hole' || part.role !== 'leg-pad'),
    }));
    const missed = unplaced({ ...table, parts }, 'mm', { ...table, parts, fasteners: [] });
    expect(missed.filter((id) => id.startsWith('bolt.caster.'))).toHaveLength(16);
  });

  test('and none where other chapters cut their piece away', () => {
    if (table === undefined) throw new Error('no demo');
    const deck = table.parts.find(({ id }) => id === 'deck.1');
    const basin = deck?.features.flatMap((one) => (one.kind === 'cut-out' ? [one.outline] : [])) ?? [];
    const wide = basin.map((outline) => [0, 1].map((i) => outline.map((point) => point[i] ?? 0)));
    const inside = table.fasteners.filter(({ head, through }) =>
      through[0] === 'deck.1'
        ? wide.some((axes) =>
            axes.every((values, i) => Math.min(...values) < (head[i] ?? 0) && (head[i] ?? 0) < Math.max(...values)),
          )
        : false,
    );
    expect(basin.length).toBeGreaterThan(0);
    expect(inside).toEqual([]);
    const counted = table.hardware?.filter(({ where }) => where === 'deck.1') ?? [];
    const placed = table.fasteners.filter(({ through }) => through[0] === 'deck.1');
    expect(counted.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(placed.length);
  });
});

test('part drawings of random tables with their screws are readable on A4', () => {
  for (const book of tables.slice(0, 8)) {
    const { entries, layOut } = drawingSet(book);
    for (const { id, kind } of entries) {
      if (kind !== 'part') continue;
      for (const unit of ['mm', 'in'] as const)
        expect([id, complaints(layOut(id, { unit, paper: 'A4' }), 'A4')]).toEqual([id, []]);
    }
  }
});
