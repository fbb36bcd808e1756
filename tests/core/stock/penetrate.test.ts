import { expect, test } from 'vitest';
import { standing } from '../../../src/core/geometry/pose.ts';
import type { Request } from '../../../src/core/stock/part.ts';
import { penetrated } from '../../../src/core/stock/penetrate.ts';
import { deck, struts } from '../scenery/table.ts';

const still = { table: standing([0, 0], 0) };
const notch: Request = {
  by: 'pond',
  part: 'strut.across-2',
  kind: 'notch',
  at: [667, 120, 691],
  size: [40, 10],
  limit: 15,
  chapter: 'scenery',
};
const rules = (requests: readonly Request[]) =>
  penetrated([struts, deck], requests, still).findings.map(({ rule }) => rule);

test('a notch in one of two like struts makes it a part of its own', () => {
  const { parts, findings } = penetrated([struts, deck], [notch], still);
  expect(parts.map(({ id, label }) => [id, label])).toEqual([
    ['strut.across-1', 'C1'],
    ['strut.across-2', 'C2'],
    ['deck.1', 'D1'],
  ]);
  expect(parts[0]?.features).toEqual(struts.features);
  expect(parts[1]?.features[1]).toEqual({
    id: 'notch-1',
    for: 'pond',
    kind: 'notch',
    edge: 'top',
    patch: { x0: 100, x1: 140, y0: 80, y1: 90 },
    corner: 0,
  });
  // 40 mm is over a third of 90
  expect(findings.map(({ rule, where, figure, limit }) => [rule, where, figure, limit])).toEqual([
    ['notch-long', 'strut.across-2', 40, 30],
  ]);
});

test('the same asked of both leaves one part', () => {
  const both = [notch, { ...notch, part: 'strut.across-1', at: [333, 120, 691] as const }];
  expect(penetrated([struts], both, still).parts).toHaveLength(1);
});

test('a bench that stands turned gets its cuts where they were asked', () => {
  const turned = { table: standing([1000, 0], Math.PI / 2) };
  // bench (667, 120) stands at notebook (1000 - 120, 667)
  const { parts } = penetrated([struts], [{ ...notch, at: [880, 667, 691] }], turned);
  const feature = parts[1]?.features[1];
  expect(feature?.kind === 'notch' ? feature.patch.x0 : Number.NaN).toBeCloseTo(100, 9);
});

test('a cut-out, a slot and a hole in the deck', () => {
  const asks: readonly Request[] = [
    { by: 'pond', part: 'deck.1', kind: 'cut-out', at: [500, 300, 700], size: [100, 60], limit: null },
    { by: 'W1', part: 'deck.1', kind: 'slot', at: [200, 100, 700], size: [20, 6], limit: null },
    { by: 'feeder-1', part: 'deck.1', kind: 'hole', at: [800, 100, 700], size: [5, 5], limit: null },
  ];
  const [cut] = penetrated([deck], asks, still).parts;
  expect(cut?.features.map(({ id, for: by }) => [id, by])).toEqual([
    ['cut-out-1', 'pond'],
    ['opening-1', 'W1'],
    ['hole-1', 'feeder-1'],
  ]);
  expect(cut?.features[0]).toMatchObject({
    outline: [
      [450, 270],
      [550, 270],
      [550, 330],
      [450, 330],
    ],
  });
  expect(cut?.features[2]).toMatchObject({ at: [800, 100], diameter: 5, depth: 'through' });
});

test('limits of notches and holes are cares, with what to do instead', () => {
  expect(rules([{ ...notch, size: [20, 20] }])).toEqual(['notch-deep']);
  expect(rules([{ ...notch, at: [667, 250, 691], size: [20, 10] }])).toEqual(['notch-in-middle']);
  // at an end a quarter of the depth is allowed: 22.5
  expect(rules([{ ...notch, at: [667, 10, 691], size: [20, 22] }])).toEqual([]);
  expect(rules([{ ...notch, kind: 'hole', at: [667, 150, 646], size: [31, 31] }])).toEqual(['hole-large']);
  expect(rules([{ ...notch, kind: 'hole', at: [667, 150, 646], size: [30, 30] }])).toEqual([]);
  expect(rules([{ ...notch, kind: 'hole', at: [667, 150, 620], size: [10, 10] }])).toEqual(['hole-off-middle']);
});

test('a cut through a lap, and one that misses the wood, are halts', () => {
  const found = penetrated([struts], [{ ...notch, at: [667, 300, 691], size: [20, 10] }], still).findings;
  expect(found.filter(({ level }) => level === 'halt').map(({ rule }) => rule)).toEqual(['cut-meets-joint']);
  expect(rules([{ ...notch, at: [667, 900, 691] }])).toEqual(['request-misses']);
  expect(rules([{ ...notch, part: 'strut.across-9' }])).toEqual(['request-misses']);
});

test('a hole beside a notch that another room asks for keeps wood to it, in the final piece', () => {
  // the notch reaches from 100 to 140 along and from 80 up; a hole of 10 at 110 along
  const hole = (z: number): Request => ({
    ...{ by: 'bus', part: 'strut.across-2', kind: 'hole', size: [10, 10], limit: 30, chapter: 'wiring' },
    at: [667, 130, z],
  });
  const found = (z: number) =>
    penetrated([struts], [notch, hole(z)], still).findings.filter(({ rule }) => rule !== 'notch-long');
  // 691 is the top at 90: at 671 its middle is at 70, its rim at 75, 5 under the notch
  expect(found(671).find(({ rule }) => rule === 'hole-near-cut')).toMatchObject({
    level: 'care',
    figure: 5,
    limit: 15,
  });
  expect(found(661).filter(({ rule }) => rule === 'hole-near-cut')).toEqual([]);
  expect(found(678).map(({ rule }) => rule)).toContain('cut-meets-joint');
});

test('two holes asked for by two rooms keep wood between them', () => {
  const hole = (by: string, y: number): Request => ({
    ...{ by, part: 'strut.across-2', kind: 'hole', size: [10, 10], limit: 30, chapter: 'wiring' },
    at: [667, y, 646],
  });
  const near = (y: number) =>
    penetrated([struts], [hole('bus', 150), hole('W1', y)], still).findings.filter(
      ({ rule }) => rule === 'hole-near-cut',
    );
  expect(near(168).map(({ figure }) => figure)).toEqual([8, 8]);
  expect(near(180)).toEqual([]);
});
