import { describe, expect, test } from 'vitest';
import type { Feature, Part } from '../../src/core/stock/part.ts';
import type { DrawingBook } from '../../src/drawing/book.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import { complaints, unfixed, unlabelled, unplaced } from './checker.ts';
import { bitternAsk, gridNotebook } from './fixtures.ts';

const papers = ['A4', 'A3', 'Letter', 'Tabloid'] as const;
const units = ['mm', 'in'] as const;
const options = papers.flatMap((paper) => units.map((unit) => ({ paper, unit })));

const table = gridNotebook(bitternAsk);

/** Everything that is wrong with any drawing of a notebook, on every paper in both units. */
function wrong(book: DrawingBook): readonly string[] {
  return listDrawings(book).flatMap(({ id, kind, of }) =>
    options.flatMap((option) => {
      const drawing = layOutDrawing(book, id, option);
      const part = kind === 'part' ? book.parts.find((one) => one.id === of) : undefined;
      return [
        ...complaints(drawing, option.paper),
        ...unlabelled(drawing, book),
        ...unplaced(drawing, book),
        ...(part === undefined ? [] : unfixed(drawing, part)),
      ];
    }),
  );
}

function wordsOf(book: DrawingBook, id: string): readonly string[] {
  const { sheets } = layOutDrawing(book, id, { unit: 'mm', paper: 'A4' });
  return sheets.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));
}

type Size = readonly [length: number, width: number, thickness: number];

/** One part alone in its notebook. */
function alone([length, width, thickness]: Size, features: readonly Feature[]): DrawingBook {
  const part: Part = {
    id: 'piece',
    label: 'P',
    role: 'strut',
    chapter: 'benchwork',
    bench: 'table',
    stock: 'birch-ply-18',
    blank: { length, width, thickness, grain: 'length' },
    features,
    places: [
      { id: 'piece', label: 'P', pose: { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 0, 1], z: [0, -1, 0] }, marks: [] },
    ],
    cutAfterMeasuring: false,
    phase: 'now',
  };
  return { ...table, parts: [part], benches: [], joints: [], seams: [], sheets: [] };
}

function slots(count: number, length: number, size: { readonly width: number; readonly depth: number }): Feature[] {
  const pitch = length / count;
  return Array.from({ length: count }, (_, i): Feature => {
    const x0 = Math.round((pitch * (i + 0.5) - size.width / 2) * 10) / 10;
    const patch = { x0, x1: x0 + size.width, y0: 0, y1: size.depth };
    return { id: `slot-${i + 1}`, kind: 'notch', edge: 'bottom', patch, corner: 0 };
  });
}

/** The table with other labels on its parts and pieces. */
function labelled(name: (label: string) => string): DrawingBook {
  return {
    ...table,
    parts: table.parts.map((part) => ({
      ...part,
      label: name(part.label),
      places: part.places.map((place) => ({ ...place, label: name(place.label) })),
    })),
  };
}

/** So many letters, the label's own last, so that labels stay apart. */
function long(letters: string, count: number): (label: string) => string {
  return (label) => {
    const filled = [...letters.repeat(count)].slice(0, count - [...label].length - 1).join('');
    return `${filled} ${label}`;
  };
}

describe('parts of every size', () => {
  test.each([
    ['5 mm square', [5, 5, 3]],
    ['5 mm long and 40 wide', [5, 40, 3]],
    ['5 m long and 5 mm wide', [5000, 5, 3]],
    ['5 m long', [5000, 170, 17.7]],
    ['5 m by 1.25 m', [5000, 1250, 40]],
  ] as const)('%s, without any feature: the blank can be cut from the print', (_, size) => {
    const book = alone(size, []);
    expect(wrong(book)).toEqual([]);
    const words = wordsOf(book, 'part.piece');
    for (const mm of size) expect(words).toContain(String(mm));
    expect(layOutDrawing(book, 'part.piece', { unit: 'mm', paper: 'A4' }).desc).toContain('It has no machining.');
  });

  test('5 mm with a 1 mm notch and a 1 mm hole', () => {
    const features: readonly Feature[] = [
      { id: 'slot', kind: 'notch', edge: 'bottom', patch: { x0: 0.8, x1: 1.8, y0: 0, y1: 2.5 }, corner: 0 },
      { id: 'hole', kind: 'hole', at: [3.6, 3.2], diameter: 1, side: 'face', depth: 'through' },
    ];
    expect(wrong(alone([5, 5, 3], features))).toEqual([]);
  });

  test('5 m with a 2 mm hole at each end', () => {
    const hole = (id: string, x: number): Feature => ({
      ...{ id, kind: 'hole', at: [x, 60], diameter: 2 },
      ...{ side: 'face', depth: 'through' },
    });
    expect(wrong(alone([5000, 120, 18], [hole('near', 10), hole('far', 4990)]))).toEqual([]);
  });
});

describe('sixty notches', () => {
  test.each([
    ['in 5 m', 5000],
    ['in 1.6 m', 1600],
    ['in 600 mm', 600],
  ])('%s: every one is in its place, over as many views and sheets as it takes', (_, length) => {
    const features = slots(60, length, { width: 4.2, depth: 60 });
    const book = alone([length, 120, 12], features);
    expect(wrong(book)).toEqual([]);
    const { sheets } = layOutDrawing(book, 'part.piece', { unit: 'mm', paper: 'A4' });
    const positions = sheets.flatMap(({ dimensions }) =>
      dimensions.filter(({ measure }) => measure === 'x0').flatMap(({ of }) => of),
    );
    expect(new Set(positions).size).toBe(60);
    expect(positions.length).toBe(60);
  });
});

describe('labels', () => {
  test('of 40 letters stand clear on every drawing of a table, none lost and none cut short', () => {
    const book = labelled(long('abcdefghij', 40));
    expect(book.parts.flatMap(({ places }) => places.map(({ label }) => [...label].length))).toContain(40);
    expect(wrong(book)).toEqual([]);
  });

  test('that a number stands for are missed when the list does not tell them', () => {
    const book = labelled(long('abcdefghij', 40));
    const plan = layOutDrawing(book, 'benchwork.plan', { unit: 'mm', paper: 'A4' });
    expect(unlabelled(plan, book)).toEqual([]);
    const untold = plan.sheets.map((sheet) => ({
      ...sheet,
      marks: sheet.marks.filter((mark) => mark.kind !== 'text' || !mark.text.endsWith(' X2')),
    }));
    expect(unlabelled({ ...plan, sheets: untold }, book).join()).toContain('strut.across-2 stands without its label');
  });

  test('in Chinese characters of 40 letters stand clear as well', () => {
    expect(wrong(labelled(long('橋下箱長名前側板', 40)))).toEqual([]);
  });

  test('in Hebrew and in Arabic stand clear', () => {
    expect(wrong(labelled((label) => `צד ${label}`))).toEqual([]);
    expect(wrong(labelled((label) => `جانب ${label}`))).toEqual([]);
  });
});

describe('titles', () => {
  test.each([
    'חוברת של שולחן נוסע עם מגירות ועם מסילות ארוכות מאוד',
    'دفتر طاولة متحركة ذات أدراج وسكك حديدية طويلة جدا',
    '湿原の駅と長い題名と引き出しと線路と風景の手帳',
    'A notebook whose title goes on and on and does not end where it should, as some do',
    '',
  ])('"%s" is read whole in the words and stays in its cell of the title block', (title) => {
    const book = { ...table, title, makers: [title, title] };
    expect(wrong(book)).toEqual([]);
  });
});

describe('nothing to draw', () => {
  test('a notebook without parts has no drawings', () => {
    expect(listDrawings({ ...table, parts: [], benches: [], joints: [], seams: [], sheets: [] })).toEqual([]);
  });

  test('a bench without parts is an empty sheet with its title, not a failure', () => {
    const book = { ...table, parts: [], joints: [], seams: [], sheets: [] };
    expect(wrong(book)).toEqual([]);
    for (const { id } of listDrawings(book)) expect(wordsOf(book, id).join(' ')).toContain('Bittern Basin');
  });
});
