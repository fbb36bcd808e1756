import { describe, expect, test } from 'vitest';
import { area } from '../../src/core/geometry/polygon.ts';
import { compute } from '../../src/core/notebook.ts';
import type { Blank, Feature, Part } from '../../src/core/stock/part.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { partLayout } from '../../src/drawing/part-drawing.ts';
import { endProfile } from '../../src/drawing/part-end.ts';
import { sizingOf } from '../../src/drawing/part-sizing.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import published from '../published/hardware.json' with { type: 'json' };
import { complaints } from './checker.ts';

const blank: Blank = { length: 120, width: 30, thickness: 17.7, grain: 'length' };
const groove: Feature = {
  ...{ id: 'groove-1', kind: 'groove', side: 'back', depth: 5.9, corner: 0 },
  patch: { x0: 0, x1: 120, y0: 14, y1: 24 },
};
const slope: Feature = { id: 'mitre-1', kind: 'mitre', edge: 'top', angle: (70 * Math.PI) / 180, long: 'back' };
const size = (features: readonly Feature[]) =>
  endProfile({ blank, features }).reduce((sum, shape) => sum + area(shape), 0);

describe('a part from its end', () => {
  test('shows the groove and the slope that run from end to end (plane geometry)', () => {
    const inset = 17.7 / Math.tan((70 * Math.PI) / 180);
    expect(size([groove, slope])).toBeCloseTo(30 * 17.7 - 10 * 5.9 - (17.7 * inset) / 2, 6);
    expect(size([])).toBeCloseTo(30 * 17.7, 9);
  });

  test('but not what stops before an end', () => {
    expect(size([{ ...groove, patch: { ...groove.patch, x1: 100 } }])).toBeCloseTo(30 * 17.7, 9);
  });
});

describe('a mitred half', () => {
  const { width, thickness, short } = published.mitre;
  const part: Part = {
    ...{ id: 'half', bench: 'table', chapter: 'benchwork', role: 'leg-half', label: 'H', stock: 'ply', phase: 'now' },
    blank: { length: 400, width, thickness, grain: 'length' },
    features: [{ id: 'mitre-1', kind: 'mitre', edge: 'bottom', angle: Math.PI / 4, long: 'back' }],
    places: [],
    cutAfterMeasuring: false,
  };

  test(`is measured to its short point, ${short} of ${width}`, () => {
    const figures = partLayout(
      part,
      { unit: 'mm', paper: 'A4' },
      { screwsAt: () => ({ views: [], notes: [] }), notes: [] },
    ).blocks.flatMap(({ dimensions }) => dimensions);
    const points = figures.filter(({ chain }) => chain === 'points').map(({ text }) => Number(text));
    expect(points.toSorted((a, b) => a - b)).toEqual([thickness, short]);
  });
});

describe('a dado across the whole width', () => {
  test('is cut across its run though it is wider than the part', () => {
    const dado = { ...groove, id: 'dado-1', kind: 'dado', patch: { x0: 40, x1: 75, y0: 0, y1: 30 } } as const;
    expect(sizingOf({ letter: 'A', features: [dado] }, blank, 1).detail).toBe('across');
    expect(sizingOf({ letter: 'A', features: [groove] }, blank, 1).detail).toBe('along');
  });
});

describe('angle legs and trestles in inches', async () => {
  const folder = new URL('../cases/fittings/content', import.meta.url).pathname;
  const shipped = new URL('../../content', import.meta.url).pathname;
  const { plans } = readContent(await loadWithShipped(folder, shipped));
  const book = (slug: string) => {
    const plan = plans.find((one) => one.slug === slug);
    const result = plan === undefined ? null : compute(plan);
    if (result?.ok !== true) throw new Error(slug);
    return result.value;
  };
  const says = (slug: string, id: string) =>
    layOutDrawing(book(slug), id, { unit: 'in', paper: 'A4' }).dimensions.map(({ text }) => text);

  test('rails, pads and uprights of a trestle are measured in its end view', () => {
    // uprights of 3 1/2 behind ends of 0.703, 34 3/4 wide over all; rails 3 1/2, the low one 150 mm above the pads
    expect(says('inch-trestles', 'benchwork.left').filter((text) => text === '3 1/2')).toHaveLength(4);
    expect(says('inch-trestles', 'benchwork.left')).toContain('5 29/32');
  });

  test('the taper starts at its foot width and ends below the upper block', () => {
    const half = says('inch-angles', 'part.leg.front-left.half-side');
    // 5 in and three quarters of it
    expect(half).toEqual(expect.arrayContaining(['5', '3 3/4', '14 7/32']));
  });

  test.each(['inch-angles', 'inch-trestles'])('%s: drawings of legs are sound', (slug) => {
    const notebook = book(slug);
    const legs = notebook.parts.filter(({ role }) => role.startsWith('leg')).map(({ id }) => `part.${id}`);
    expect(legs.length).toBeGreaterThan(3);
    for (const id of [...legs, 'benchwork.front', 'benchwork.left']) {
      for (const unit of ['mm', 'in'] as const) {
        expect(complaints(layOutDrawing(notebook, id, { unit, paper: 'A4' }), 'A4')).toEqual([]);
      }
    }
  });
});
