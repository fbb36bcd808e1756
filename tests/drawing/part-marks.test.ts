import { describe, expect, test } from 'vitest';
import type { Part } from '../../src/core/stock/part.ts';
import type { TextMark } from '../../src/drawing/mark.ts';
import { markKey } from '../../src/drawing/mate-marks.ts';
import { markNotes } from '../../src/drawing/part-notes.ts';
import { type PartView, partViewBlock } from '../../src/drawing/part-view.ts';
import { instance, model } from '../core/benchwork/example.ts';
import { fittedTable } from '../core/benchwork/fitted.ts';

const { parts } = model(fittedTable());

function viewOf(part: Part): PartView {
  const { length } = part.blank;
  return partViewBlock({ part, unit: 'mm', scale: 10, breaks: [], from: 0, to: length, heading: 'Seen' });
}

function texts(view: Pick<PartView, 'marks'>): readonly string[] {
  return view.marks.filter((mark): mark is TextMark => mark.kind === 'text').map(({ text }) => text);
}

function listOf(part: Part, written: readonly string[]): string {
  const blocks = markNotes(part, { unit: 'mm', written: new Set(written) });
  return blocks.flatMap(texts).join(' ').replaceAll('\u00a0', ' ');
}

/** Marks that stand neither on the view nor in the list as not drawn, with where they belong. */
function lost(part: Part, view: PartView): readonly string[] {
  const list = listOf(part, view.written);
  const shown = texts(view);
  return part.places.flatMap(({ marks }) =>
    marks
      .filter(({ text, at: [x, y] }) => {
        const isShown = shown.some((one) => one.split(/[ /(),]+/).includes(text) || one.includes(text));
        return (
          !isShown && !list.includes(`${text} (${Math.round(x * 10) / 10}; ${Math.round(y * 10) / 10}; not drawn)`)
        );
      })
      .map((mark) => `${mark.text} ${markKey(mark)}`),
  );
}

describe('marks to write', () => {
  const marked = parts.filter(({ places }) => places.some(({ marks }) => marks.length > 0));

  test('each stands on the view, or the list gives its place and says that it is not drawn', () => {
    expect(marked.length).toBeGreaterThan(8);
    expect(marked.flatMap((part) => lost(part, viewOf(part)))).toEqual([]);
  });

  test('planted fault: a view without its boxes whose list still counts them as drawn is noticed', () => {
    const bare = (view: PartView) => ({ ...view, marks: view.marks.filter(({ kind }) => kind !== 'text') });
    expect(marked.flatMap((part) => lost(part, bare(viewOf(part)))).length).toBeGreaterThan(8);
  });

  test('an arrow on the far side is dashed', () => {
    const { part } = instance(model(fittedTable()), 'side.front');
    const arrow = viewOf(part).marks.filter((one) => one.kind === 'line' && one.role === 'symbol');
    expect(arrow.map((one) => ('pen' in one ? one.pen : ''))).toEqual(['hidden']);
  });

  test('the front of a left and of a right spacer is at the end that stands at the front', () => {
    const fronts = ['spacer.front-2-left', 'spacer.front-2-right'].map((id) => {
      const { place } = instance(model(fittedTable()), id);
      const [x] = place.marks.find(({ text }) => text === 'front')?.at ?? [Number.NaN];
      return place.pose.origin[1] + place.pose.x[1] * x;
    });
    expect(fronts[0]).toBeLessThan(60);
    expect(fronts[1]).toBeCloseTo(fronts[0] ?? 0, 6);
  });
});
