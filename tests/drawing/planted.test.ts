import { describe, expect, test } from 'vitest';
import type { Part } from '../../src/core/stock/part.ts';
import type { Drawing, DrawingSheet } from '../../src/drawing/drawing.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { lettering } from '../../src/drawing/text.ts';
import { complaints, unfixed, unlabelled, unplaced } from './checker.ts';
import { bitternAsk, gridNotebook } from './fixtures.ts';

const notebook = gridNotebook(bitternAsk);
const side = layOutDrawing(notebook, 'part.side.front', { unit: 'mm', paper: 'A4' });
const plan = layOutDrawing(notebook, 'benchwork.plan', { unit: 'mm', paper: 'A4' });
const part = notebook.parts.find(({ id }) => id === 'side.front');

function spoilt(drawing: Drawing, spoil: (sheet: DrawingSheet) => Partial<DrawingSheet>): Drawing {
  return { ...drawing, sheets: drawing.sheets.map((sheet) => ({ ...sheet, ...spoil(sheet) })) };
}

function said(drawing: Drawing): string {
  return complaints(drawing, 'A4').join('\n');
}

describe('the checks of drawings fail on a planted fault', () => {
  test('nothing is wrong before', () => {
    expect([said(side), said(plan)]).toEqual(['', '']);
  });

  test('a label over a label', () => {
    const over = spoilt(side, (sheet) => {
      const figure = sheet.marks.find((mark) => mark.kind === 'text' && mark.text === '1600');
      return figure === undefined ? {} : { marks: [...sheet.marks, { ...figure, text: '1601' }] };
    });
    expect(said(over)).toContain('"1600" lies over "1601"');
  });

  test('an outline through a label', () => {
    const crossed = spoilt(plan, (sheet) => ({
      marks: sheet.marks.map((mark) =>
        mark.kind === 'text' && mark.text === 'X1' ? { ...mark, at: [mark.at[0] - 5, mark.at[1]] } : mark,
      ),
    }));
    expect(said(crossed)).toMatch(/an? outline line crosses "X1"/);
  });

  test('words beyond the frame and in the title block', () => {
    const beyond = spoilt(side, (sheet) => ({
      marks: [...sheet.marks, lettering('stray', [285, 20]), lettering('inside', [105, 190])],
    }));
    expect(said(beyond)).toContain('"stray" lies beyond the frame');
    expect(said(beyond)).toContain('"inside" lies in the title block');
  });

  test('a scale bar that is not there, is another length, or lies in the view', () => {
    const spoilBar = (change: (mark: DrawingSheet['marks'][number]) => DrawingSheet['marks']) =>
      said(
        spoilt(plan, (sheet) => ({
          marks: sheet.marks.flatMap((mark) => (mark.role === 'scale-bar' ? change(mark) : [mark])),
        })),
      );
    expect(spoilBar(() => [])).toContain('no scale bar is 50 mm long');
    const shorter = spoilBar((mark) =>
      mark.kind === 'line' ? [{ ...mark, to: [mark.to[0], mark.to[1] + 0.1] }] : [mark],
    );
    expect(shorter).toContain('no scale bar is 50 mm long');
    const inside = spoilBar((mark) => (mark.kind === 'line' ? [{ ...mark, to: [30, mark.to[1]] }] : [mark]));
    expect(inside).toContain('the scale bar leaves the filing margin');
  });

  test('an angle and a radius that are drawn otherwise than they are printed', () => {
    expect.assert(part !== undefined);
    const turned: Part = {
      ...part,
      features: [
        { id: 'mitre', kind: 'mitre', edge: 'left', angle: Math.PI / 4, long: 'back' },
        { id: 'round', kind: 'rounded-corner', corner: 'right-top', radius: 12 },
        { id: 'over', kind: 'roundover', edge: 'bottom', side: 'face', radius: 4 },
      ],
    };
    const book = { ...notebook, parts: [turned], benches: [], joints: [], seams: [], sheets: [] };
    const drawn = layOutDrawing(book, 'part.side.front', { unit: 'mm', paper: 'A4' });
    expect([said(drawn), unfixed(drawn, turned).join()]).toEqual(['', '']);
    const kinds = drawn.sheets.flatMap(({ dimensions }) => dimensions.filter(({ about }) => about !== undefined));
    expect(kinds.map(({ measure, text }) => `${measure} ${text}`).sort()).toEqual([
      'angle 45°',
      'radius 12',
      'radius 4',
    ]);
    const wrong = (text: string, other: string) =>
      spoilt(drawn, (sheet) => ({
        dimensions: sheet.dimensions.map((one) => (one.text === text ? { ...one, text: other } : one)),
      }));
    expect(said(wrong('45°', '44°'))).toContain('44° is drawn as 45');
    expect(unfixed(wrong('45°', '44°'), turned).join()).toContain('the angle of mitre comes out at 44, not 45');
    expect(said(wrong('12', '13'))).toContain('the arc of R 13 is drawn with 12');
    expect(unfixed(wrong('4', '6'), turned).join()).toContain('the radius of over comes out at 6, not 4');
  });

  test('a chain that does not add up', () => {
    const first = plan.dimensions.find(({ text }) => text === '373.5');
    const open = spoilt(plan, (sheet) => ({
      dimensions: sheet.dimensions.map((dimension) =>
        dimension === first ? { ...dimension, text: '373.4' } : dimension,
      ),
    }));
    expect(said(open)).toMatch(/chain plan: bays along adds up to 1599\.(9|89)/);
  });

  test('an inch chain that its signs do not close, and one length printed in two ways', () => {
    const inches = layOutDrawing(notebook, 'benchwork.plan', { unit: 'in', paper: 'A4' });
    const bays = inches.dimensions.filter(({ chain }) => chain === 'plan: bays along' || chain === 'bays along');
    const thick = bays.filter(({ text }) => text === '0.697');
    expect([complaints(inches, 'A4'), thick.length > 1]).toEqual([[], true]);
    const printing = (one: (typeof bays)[number] | undefined, text: string) =>
      said(
        spoilt(inches, (sheet) => ({
          dimensions: sheet.dimensions.map((dimension) => (dimension === one ? { ...dimension, text } : dimension)),
        })),
      );
    const bay = bays.find(({ text }) => !text.startsWith('0.'));
    expect(printing(bay, '14')).toMatch(/chain plan: bays along adds up to/);
    expect(printing(thick[0], '23/32-')).toMatch(/17\.7 mm is printed as (23\/32-|0\.697) and as (23\/32-|0\.697)/);
  });

  test('a figure that is not on the sheet, and one whose lines end elsewhere', () => {
    const lost = spoilt(side, (sheet) => ({
      marks: sheet.marks.filter((mark) => mark.kind !== 'text' || mark.text !== '391'),
    }));
    expect(said(lost)).toContain('x0 391 is not printed');
    const moved = spoilt(side, (sheet) => ({
      views: sheet.views.map((view) => ({ ...view, origin: [view.origin[0] + 1, view.origin[1]] as const })),
    }));
    expect(said(moved)).toContain('end beside what they measure');
  });

  test('a feature measured twice', () => {
    const twice = spoilt(side, (sheet) => ({
      dimensions: [...sheet.dimensions, ...sheet.dimensions.filter(({ measure }) => measure === 'x0')],
    }));
    expect(said(twice)).toContain('x0 of dado-1 is dimensioned twice');
  });

  test('a feature without a position, a size or a depth', () => {
    expect.assert(part !== undefined);
    for (const measure of ['x0', 'y0', 'size-x', 'depth', 'length', 'thickness'] as const) {
      const bare = spoilt(side, (sheet) => ({
        dimensions: sheet.dimensions.filter((dimension) => dimension.measure !== measure),
      }));
      expect(unfixed(bare, part).length, measure).toBeGreaterThan(0);
    }
  });

  test('a piece without its label, and a chain that leads past a strut', () => {
    const bare = spoilt(plan, (sheet) => ({
      marks: sheet.marks.filter((mark) => mark.kind !== 'text' || mark.text !== 'X2'),
    }));
    expect(unlabelled(bare, notebook).join()).toContain('strut.across-2 stands without its label X2');
    const dimensions = plan.dimensions.filter(({ text }) => text !== '382.3');
    expect(unplaced({ ...plan, dimensions }, notebook).join()).toContain(
      'no chain leads to the face of strut.across-2',
    );
    expect([...unlabelled(plan, notebook), ...unplaced(plan, notebook)]).toEqual([]);
  });

  test('a position printed wrong', () => {
    expect.assert(part !== undefined);
    const wrong = spoilt(side, (sheet) => ({
      dimensions: sheet.dimensions.map((one) => (one.text === '391' ? { ...one, text: '393' } : one)),
    }));
    expect(unfixed(wrong, part).join()).toContain('the left edge of dado-1 comes out at 393, not 391');
  });
});
