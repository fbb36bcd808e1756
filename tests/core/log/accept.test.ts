import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../src/core/finding.ts';
import { acceptFindings } from '../../../src/core/log/accept.ts';
import { impact } from '../../../src/core/log/impact.ts';
import { model, table } from '../benchwork/example.ts';
import { MODEL } from '../steps/demo.ts';
import { entry, records } from './entries.ts';

const SEAM: Finding = {
  rule: 'deck-seam-bearing',
  level: 'care',
  where: 'deck.seam-1',
  chapter: 'benchwork',
  what: [],
  figure: 8.85,
  limit: 12,
  unit: 'mm',
  mend: [],
  source: 'made for the test',
  accepted: null,
};

function accepted(finding: Finding, figure: string | null, where = 'deck.seam-1') {
  const one = {
    finding: 'deck-seam-bearing',
    where,
    because: 'batten comes in May',
    ...(figure === null ? {} : { figure }),
  };
  return acceptFindings([finding], records(entry('2026-03-01-x', { accept: [one] })));
}

describe('an accepted finding', () => {
  test('keeps its reason while its figure is no worse', () => {
    expect(accepted(SEAM, '8.85 mm').findings).toMatchObject([{ accepted: 'batten comes in May' }]);
    expect(accepted({ ...SEAM, figure: 10 }, '8.85 mm').findings).toMatchObject([{ accepted: 'batten comes in May' }]);
    expect(accepted(SEAM, '8.85 mm').notes).toEqual([]);
  });

  test('opens again when its figure is worse, on either side of its limit', () => {
    const less = accepted({ ...SEAM, figure: 8.5 }, '8.85 mm');
    expect(less.findings).toMatchObject([{ accepted: null }]);
    expect(less.notes).toMatchObject([{ rule: 'accept-worse' }]);
    const sag = { ...SEAM, figure: 3.2, limit: 2 };
    expect(accepted(sag, '3 mm').findings).toMatchObject([{ accepted: null }]);
    expect(accepted({ ...sag, figure: 2.5 }, '3 mm').findings).toMatchObject([{ accepted: 'batten comes in May' }]);
    expect(accepted(SEAM, null).findings).toMatchObject([{ accepted: null }]);
  });

  test('cannot be a halt, and one that meets no finding is kept as a note', () => {
    const halt = accepted({ ...SEAM, level: 'halt' }, '8.85 mm');
    expect(halt.findings).toMatchObject([{ accepted: null }]);
    expect(halt.notes).toMatchObject([{ rule: 'accept-halt' }]);
    expect(accepted(SEAM, '8.85 mm', 'deck.seam-2').notes).toMatchObject([{ rule: 'accept-idle' }]);
  });

  test('is compared in the unit of the finding', () => {
    const grade = { ...SEAM, figure: 3.5, limit: 3, unit: '%' } as const;
    expect(accepted(grade, '3.5 %').findings).toMatchObject([{ accepted: 'batten comes in May' }]);
    expect(accepted(grade, '3 %').findings).toMatchObject([{ accepted: null }]);
  });
});

describe('the impact of a change', () => {
  // Measured 17.5 and not 17.7: dado 5.8, ends and across struts 0.2 longer, the outside as before.
  test('names the parts that change and the pieces made already', () => {
    const change = impact(MODEL, model(table([17.5])), new Set(['end.left', 'side.front']));
    const ends = change.changed.find((one) => one.part === 'end.left');
    expect(ends?.differences.find((one) => one.what === 'length')).toMatchObject({ before: 1076.4, after: 1076.6 });
    expect(ends?.alreadyMade).toEqual(['end.left']);
    const sides = change.changed.find((one) => one.part === 'side.front');
    expect(sides?.differences.map((one) => one.what)).not.toContain('length');
    expect(change.added.concat(change.removed.map((one) => one.part))).toEqual([]);
  });

  test('names parts that come and go, and counts sheets', () => {
    const bare = {
      parts: MODEL.parts.filter((part) => part.role !== 'deck'),
      bounds: [{ stock: 'birch-ply-18', found: 2 }],
    };
    const full = {
      parts: MODEL.parts,
      bounds: [
        { stock: 'birch-ply-18', found: 2 },
        { stock: 'birch-ply-9', found: 1 },
      ],
    };
    expect(impact(bare, full, new Set()).added).toEqual(['deck.1', 'deck.2']);
    const back = impact(full, bare, new Set(['deck.1']));
    expect(back.removed).toEqual([
      { part: 'deck.1', instances: ['deck.1'], alreadyMade: ['deck.1'] },
      { part: 'deck.2', instances: ['deck.2'], alreadyMade: [] },
    ]);
    expect(back.sheets).toEqual([{ stock: 'birch-ply-9', before: 1, after: 0 }]);
    const single = MODEL.parts.flatMap((part) =>
      part.places.map((place) => ({ ...part, id: place.id, places: [place] })),
    );
    expect(impact({ parts: MODEL.parts }, { parts: single }, new Set()).changed).toEqual([]);
    expect(impact(full, full, new Set())).toEqual({ changed: [], added: [], removed: [], sheets: [] });
  });
});
