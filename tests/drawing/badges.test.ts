import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/core/finding.ts';
import { badgesOf } from '../../src/drawing/badges.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import type { Mark } from '../../src/drawing/mark.ts';
import { complaints } from './checker.ts';
import { bitternAsk, gridNotebook } from './fixtures.ts';

const plain = gridNotebook(bitternAsk);

function told(where: string, level: Finding['level'], accepted: string | null = null): Finding {
  const words = { what: ['x'], mend: ['y'], source: 'made for the test', rule: 'made' };
  return { ...words, level, where, accepted, chapter: 'benchwork', figure: null, limit: null, unit: 'count' };
}

function badges(findings: readonly Finding[], id: string): readonly number[] {
  const { marks } = layOutDrawing({ ...plain, findings }, id, { unit: 'mm', paper: 'A4' });
  const full = (mark: Mark) => (mark.kind === 'polygon' && mark.role === 'symbol' && mark.fill === 'ink' ? mark : null);
  const bare = layOutDrawing(plain, id, { unit: 'mm', paper: 'A4' }).marks.filter((mark) => full(mark) !== null).length;
  return marks.flatMap((mark) => full(mark)?.rings.map((ring) => ring.length) ?? []).slice(bare);
}

function words(findings: readonly Finding[]): string {
  const { marks } = layOutDrawing({ ...plain, findings }, 'benchwork.plan', { unit: 'mm', paper: 'A4' });
  return marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ');
}

describe('badges of findings', () => {
  test('stand beside the piece: an octagon for a halt, a triangle for a care, nothing for a note', () => {
    expect(badges([told('strut.across-1', 'halt')], 'benchwork.plan')).toEqual([8]);
    expect(badges([told('strut.across-1', 'care')], 'benchwork.plan')).toEqual([3]);
    expect(badges([told('strut.across-1', 'note')], 'benchwork.plan')).toEqual([]);
  });

  test('show the gravest, and none that an author lives with', () => {
    expect(badgesOf({ ...plain, findings: [told('end.left', 'halt'), told('end.left', 'care')] }).get('end.left')).toBe(
      'halt',
    );
    expect(badges([told('strut.across-1', 'care', 'a batten is glued beside it')], 'benchwork.plan')).toEqual([]);
  });

  test('are explained in words where there are any, and keep the drawing readable', () => {
    const findings = plain.parts.map(({ id }) => told(id, 'care'));
    expect(words(findings)).toContain('Triangle: care.');
    expect(words([])).not.toContain('riangle');
    for (const view of ['plan', 'deck', 'front', 'left', 'section']) {
      const drawing = layOutDrawing({ ...plain, findings }, `benchwork.${view}`, { unit: 'in', paper: 'Letter' });
      expect(complaints(drawing, 'Letter')).toEqual([]);
    }
  });
});
