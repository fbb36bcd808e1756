import { describe, expect, test } from 'vitest';
import { fixPlace } from '../../../src/core/log/fix-place.ts';
import { publicityFindings } from '../../../src/core/log/publicity.ts';
import { datedFindings } from '../../../src/core/log/today.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { MODEL } from '../steps/demo.ts';
import { entry, records } from './entries.ts';

function blankOf(id: string) {
  const part = MODEL.parts.find(({ places }) => places.some((place) => place.id === id));
  if (part === undefined) throw new Error(id);
  return part.blank;
}

describe('a fix', () => {
  const at = (part: string, from: string | null, mm: number | null = 100) =>
    fixPlace(MODEL.parts, { part, at: mm, from });

  test('is so far from the end that is named, whichever way the piece lies', () => {
    const { length } = blankOf('side.front');
    const [left, right] = [at('side.front', 'left'), at('side.front', 'the right end')];
    expect(left?.[0]).toBeCloseTo(100, 6);
    expect(right?.[0]).toBeCloseTo(length - 100, 6);
    const [front, back] = [at('end.left', 'front'), at('end.left', 'back')];
    expect((front?.[1] ?? 0) + (back?.[1] ?? 0)).toBeCloseTo(MODEL.benches[0]?.width ?? 0, 6);
    expect(front?.[1] ?? 0).toBeLessThan(back?.[1] ?? 0);
  });

  test('has no place when its part is gone, when nobody measured it, and off the piece', () => {
    expect([at('strut.across-9', 'left'), at('side.front', 'left', null), at('side.front', 'left', 99_999)]).toEqual([
      null,
      null,
      null,
    ]);
  });
});

describe('what is told by the day', () => {
  const log = records(entry('2026-01-31-oiled', { upkeep: [{ what: 'wheels oiled', 'again-in': '1 months' }] }));

  test('is upkeep from the day it is due, and an entry before it is written', () => {
    expect(datedFindings(log, '2026-02-27')).toEqual([]);
    expect(datedFindings(log, '2026-02-28').map(({ rule }) => rule)).toEqual(['upkeep-due']);
    expect(datedFindings(log, '2026-01-30').map(({ rule }) => rule)).toEqual(['entry-in-future']);
  });
});

describe('what would go public', () => {
  const told = (...given: Parameters<typeof publicityFindings>) =>
    publicityFindings(...given).map(({ what }) => spoken(what, String));

  test('is the room, photos that are not private in any entry, and days', () => {
    const photo = (file: string, kept: string) => ({ file, alt: 'x', private: kept });
    const log = records(
      entry('2026-01-01-a', { photos: [photo('a.jpg', 'false'), photo('b.jpg', 'false')] }),
      entry('2026-01-02-b', { photos: [photo('b.jpg', 'true')] }),
    );
    const [words] = told({ records: log, room: true });
    expect(words).toContain("the room's outline");
    expect(words).toContain('1 photo,');
    expect(words).toContain('2 entries');
    expect(told({ records: [], room: false })).toEqual([]);
  });
});
