import { describe, expect, test } from 'vitest';
import { placedBox } from '../../src/core/geometry/solid.ts';
import { compute, type Notebook } from '../../src/core/notebook.ts';
import type { Part } from '../../src/core/stock/part.ts';
import { partSolid } from '../../src/core/stock/solid.ts';
import { baysOf } from '../../src/drawing/bays/bay.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import { papers } from '../../src/drawing/paper.ts';
import { textBox } from '../../src/drawing/text.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { complaints, printedWithin, readFigure } from './checker.ts';

const shipped = new URL('../../content', import.meta.url).pathname;

async function booksIn(folder: string): Promise<readonly Notebook[]> {
  return readContent(await loadWithShipped(folder, shipped)).plans.flatMap((plan) => {
    const result = compute(plan);
    return result.ok ? [result.value] : [];
  });
}

const demos = await booksIn(shipped);
const inches = await booksIn(new URL('../cases/fittings/content', import.meta.url).pathname);
const named = (books: readonly Notebook[], slug: string): Notebook => {
  const found = books.find((one) => one.slug === slug);
  if (found === undefined) throw new Error(`no notebook ${slug}`);
  return found;
};
const table = named(demos, 'bittern-basin');

const bayIds = (book: Notebook) => listDrawings(book).flatMap(({ id }) => (id.startsWith('bay.') ? [id] : []));

/** Heights of a book's pieces above the underside of its sides. */
function heights(book: Notebook, roles: readonly string[]): readonly number[] {
  const datum = book.benches[0]?.sideUnderside ?? 0;
  return book.parts
    .filter(({ role }) => roles.includes(role))
    .flatMap((part) => part.places.map(({ pose }) => placedBox(partSolid(part), pose)))
    .flatMap(({ min, max }) => [min[2] - datum, max[2] - datum]);
}

/** Heights that no figure of the drawing, measured from the underside of the sides, tells. */
function untold(book: Notebook, id: string, roles: readonly string[]): readonly number[] {
  const datum = book.benches[0]?.sideUnderside ?? 0;
  const { sheets, unit } = layOutDrawing(book, id, { unit: 'mm', paper: 'A4' });
  const told = sheets
    .flatMap(({ dimensions }) => dimensions)
    .filter(({ chain, between }) => chain === null && between?.[0] === datum)
    .map(({ text }) => readFigure(text, unit));
  return heights(book, roles).filter((at) => !told.some((one) => Math.abs(one - at) <= printedWithin('mm')));
}

describe('bays with drawers and shelves', () => {
  test('those alike share a drawing', () => {
    expect(baysOf(table).map(({ id, bays }) => [id, bays])).toEqual([
      ['drawer.front-2', ['bay.2-1', 'bay.3-1']],
      ['shelf.back-2', ['bay.3-2', 'bay.2-2']],
    ]);
    expect(listDrawings(table).find(({ id }) => id === 'bay.shelf.back-2')?.title).toBe(
      'Shelves in bays 2-2 and 3-2, from the back',
    );
  });

  test('every sheet is sound in both units and on every paper', () => {
    for (const book of [
      table,
      named(inches, 'inch-angles'),
      named(inches, 'inch-trestles'),
      named(inches, 'two-tables'),
    ]) {
      expect(bayIds(book).length).toBeGreaterThan(0);
      for (const id of bayIds(book)) {
        for (const unit of ['mm', 'in'] as const) {
          for (const paper of Object.keys(papers) as (keyof typeof papers)[]) {
            expect(complaints(layOutDrawing(book, id, { unit, paper }), paper)).toEqual([]);
          }
        }
      }
    }
  });

  test('edges of spacers, box, face and cleats are measured from the underside of the sides', () => {
    expect(untold(table, 'bay.drawer.front-2', ['drawer-spacer', 'drawer-side', 'drawer-face'])).toEqual([]);
    expect(untold(table, 'bay.shelf.back-2', ['shelf-cleat', 'shelf'])).toEqual([]);
    expect(heights(table, ['drawer-spacer'])).toHaveLength(8);
  });

  test('a spacer that stands elsewhere is told elsewhere', () => {
    const raised = (part: Part): Part => ({
      ...part,
      places: part.places.map((place) => {
        const [x, y, z] = place.pose.origin;
        return { ...place, pose: { ...place.pose, origin: [x, y, z + 7] } };
      }),
    });
    const moved = { ...table, parts: table.parts.map((part) => (part.role === 'drawer-spacer' ? raised(part) : part)) };
    expect(untold(moved, 'bay.drawer.front-2', ['drawer-spacer'])).toEqual([]);
    const words = layOutDrawing(moved, 'bay.drawer.front-2', { unit: 'mm', paper: 'A4' }).marks.flatMap((mark) =>
      mark.kind === 'text' ? [mark.text] : [],
    );
    expect(words).toContain('59');
    // the old drawing against the moved pieces: the check can fail
    expect(
      heights(moved, ['drawer-spacer']).filter((at) => !heights(table, ['drawer-spacer']).includes(at)).length,
    ).toBeGreaterThan(0);
  });

  test('the plane passes beside the screws: a spacer is cut whole', () => {
    const { sheets } = layOutDrawing(table, 'bay.drawer.front-2', { unit: 'mm', paper: 'A4' });
    const cut = sheets.flatMap(({ marks }) =>
      marks.filter((mark) => mark.kind === 'polygon' && mark.pen === 'cut-edge'),
    );
    // two walls, two spacers, two sides, the bottom and the deck across; board, face, pull, box and what is behind along
    const tall = cut
      .flatMap((mark) => (mark.kind === 'polygon' ? mark.rings : []))
      .map((ring) => {
        const ys = ring.map(([, y]) => y);
        return Math.max(...ys) - Math.min(...ys);
      });
    // a spacer of 60 at 1:5, in one piece on each side
    expect(tall.filter((one) => Math.abs(one - 12) < 0.01)).toHaveLength(2);
  });

  test('across the bay the gaps add up to the bay, a slide of 12.7 on each side of the box', () => {
    const { sheets } = layOutDrawing(table, 'bay.drawer.front-2', { unit: 'mm', paper: 'A4' });
    const links = sheets.flatMap(({ dimensions }) => dimensions).filter(({ chain }) => chain === 'gaps');
    const figures = links.map(({ text }) => Number(text));
    // walls and spacers of 17.7, slides 12.7, box sides 12: the bay of 377.875 between struts of 17.7
    expect(figures.filter((one) => Math.abs(one - 12.7) < 0.11)).toHaveLength(2);
    expect(figures.reduce((sum, one) => sum + one, 0)).toBeCloseTo(377.875 + 2 * 17.7, 0);
  });

  test('a deck that goes on ends at a break line, one that is cut away is said to be', () => {
    const breaks = (book: Notebook, id: string) =>
      layOutDrawing(book, id, { unit: 'mm', paper: 'A4' }).sheets.flatMap(({ marks }) =>
        marks.filter(({ role }) => role === 'break'),
      ).length;
    const words = (book: Notebook, id: string) =>
      layOutDrawing(book, id, { unit: 'mm', paper: 'A4' }).sheets.flatMap(({ marks }) =>
        marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
      );
    // across: the deck goes on beyond both walls; along: it ends over the board before and goes on behind
    expect(breaks(table, 'bay.shelf.back-2')).toBe(3);
    // the basin's cut-out ends the deck before the right wall
    expect(breaks(table, 'bay.drawer.front-2')).toBe(2);
    expect(words(table, 'bay.drawer.front-2')).toContain('The deck over it is cut away for basin.');
    expect(words(table, 'bay.shelf.back-2').filter((one) => one.includes('cut away'))).toEqual([]);
    // planted fault: with no basin in it the deck goes on on all sides
    const whole = table.parts.map((part) => ({
      ...part,
      features: part.features.filter(({ kind }) => kind !== 'cut-out'),
    }));
    expect(breaks({ ...table, parts: whole }, 'bay.drawer.front-2')).toBe(3);
  });

  test('face and pull are named by leaders, and the board by a label beside itself', () => {
    const { sheets } = layOutDrawing(table, 'bay.drawer.front-2', { unit: 'mm', paper: 'A4' });
    const marks = sheets[1]?.marks ?? [];
    const boxes = marks.flatMap((mark) => (mark.kind === 'text' ? [{ text: mark.text, box: textBox(mark) }] : []));
    const leaders = marks.flatMap((mark) => (mark.kind === 'line' && mark.role === 'leader' ? [mark.from] : []));
    const led = boxes.filter(({ box }) =>
      leaders.some(([x, y]) => x > box.x0 - 1 && x < box.x1 + 1 && y > box.y0 - 1 && y < box.y1 + 1),
    );
    expect(led.map(({ text }) => text).toSorted()).toEqual(['DR2F', 'DR2G']);
    // the board is cut above and below the face: its label stands beside one of these, not beside the face
    const board = boxes.find(({ text }) => text === 'S1')?.box;
    const face = boxes.find(({ text }) => text === 'DR2F')?.box;
    expect(Math.abs((board?.y0 ?? 0) - (face?.y0 ?? 0))).toBeGreaterThan(5);
  });

  test('what is screwed to the walls is figured as thick as it is, the play of a shelf in words', () => {
    const { sheets } = layOutDrawing(table, 'bay.shelf.back-2', { unit: 'mm', paper: 'A4' });
    const gaps = sheets.flatMap(({ dimensions }) => dimensions).filter(({ chain }) => chain === 'gaps');
    expect(gaps.map(({ text }) => text)).toEqual(['17.7', '17.7', '342.5', '17.7', '17.7']);
    const words = sheets.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));
    expect(words.filter((one) => one.includes('0.3 mm of play'))).toHaveLength(1);
  });
});
