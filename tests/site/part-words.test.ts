import { describe, expect, test } from 'vitest';
import { featureRows } from '../../src/site/feature-words.ts';
import { jointLines } from '../../src/site/joint-words.ts';
import type { Book } from '../../src/site/notebooks.ts';
import { pieceLabel } from '../../src/site/parts.ts';
import { contentMark } from '../../src/site/ticks.ts';
import { notebook, prose } from './fixture.ts';

const book: Book = { notebook, prose, photos: '' };
const [side] = notebook.parts;
if (side === undefined) throw new Error('the fixture has no part');

describe('the table beside a part’s drawing', () => {
  test('says of each feature what it is, where it starts, its size and its depth', () => {
    const [dado, hole] = featureRows(side.features);
    expect(dado).toMatchObject({ what: 'dado', side: 'back', for: 'strut.across-1' });
    expect([dado?.at.mm, dado?.size.mm, dado?.depth.mm]).toEqual(['100, 35', '18 × 135', '5.9']);
    expect(hole).toMatchObject({ what: 'hole', side: 'face' });
    expect([hole?.at.mm, hole?.size.mm, hole?.depth.mm]).toEqual(['30, 60', '⌀ 8', 'through']);
  });
});

describe('what a part joins', () => {
  test('stands by the kind of joint, with the labels on the wood', () => {
    const lines = jointLines(book, side);
    expect(lines.map(({ name }) => name.replace(/<.*/, ''))).toEqual([
      'dado, glue, clearance ',
      'rabbet, glue, clearance ',
    ]);
    expect(lines[0]?.meetings).toBe(
      'S1 with <span class="piece"><a href="/bittern-basin/parts/strut.across/">T1</a></span>',
    );
  });

  test('an id that is no piece is said as it is', () => {
    expect(pieceLabel(book, 'side.back')).toBe('S2');
    expect(pieceLabel(book, 'side')).toBe('S');
    expect(pieceLabel(book, 'elsewhere')).toBe('elsewhere');
  });
});

describe('the mark of what is ticked', () => {
  test('is the same for the same content and another for any change', () => {
    const [step] = notebook.steps;
    expect(contentMark(step)).toBe(contentMark({ ...step }));
    expect(contentMark(step)).not.toBe(contentMark({ ...step, title: 'Measure the sheets twice' }));
    expect(contentMark(step)).toMatch(/^[0-9a-f]{12}$/);
  });
});
