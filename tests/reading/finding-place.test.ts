import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import type { Finding } from '../../src/core/finding.ts';
import type { Plan } from '../../src/core/plan.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { findingPlaces } from '../../src/reading/finding-place.ts';
import { readContent } from '../../src/reading/read.ts';

const CONTENT = 'content';
let plan: Plan;

beforeAll(async () => {
  const { plans } = readContent(await loadWithShipped(CONTENT, CONTENT));
  const found = plans.find(({ slug }) => slug === 'bittern-basin');
  if (found === undefined) throw new Error('the big demo is there');
  plan = found;
});

function about(chapter: string, where: string): Finding {
  return {
    ...{ rule: 'x', level: 'care', where, chapter, what: ['x'], mend: ['x'] },
    ...{ figure: null, limit: null, unit: 'count', source: 'x', accepted: null },
  };
}

/** The text that the place points at, to the end of its line. */
function pointedAt(chapter: string, where: string): string {
  const { file, line, column } = findingPlaces(plan)(about(chapter, where));
  const text = readFileSync(join(CONTENT, file), 'utf8').split('\n')[line - 1] ?? '';
  return `${file.replace('notebooks/bittern-basin/', '')} ${text.slice(column - 1)}`;
}

test.each([
  ['benchwork', 'deck', 'benchwork.md birch-ply-9'],
  ['benchwork', 'table', 'benchwork.md id: table'],
  ['benchwork', 'deck.seam-1', 'benchwork.md { parallel-to: y, on: strut.across-3 } }'],
  ['benchwork', 'drawer.front-2', 'benchwork.md { side: front, bays: [2, 3], slides'],
  ['benchwork', 'shelf.back-2.space', 'benchwork.md { side: back, bays: [2, 3], material: deck }'],
  ['benchwork', 'strut.across-2', 'benchwork.md 3 }'],
  ['benchwork', 'side.front', 'benchwork.md id: table'],
  ['benchwork', 'rout', 'benchwork.md id: rout'],
  ['benchwork', 'benchwork.sand-hands', 'benchwork.md id: sand-hands'],
  ['scenery', 'scenery.set-back-wall', 'scenery.md id: set-back-wall'],
  ['track', 'loop', 'track.md id: loop'],
  ['track', 'W2', 'track.md {'],
  ['scenery', 'basin', 'scenery.md id: basin'],
  ['wiring', 'loop', 'track.md id: loop'],
  ['wiring', 'strut.across-2', 'wiring.md '],
  ['scenery', 'layer.1', 'scenery.md '],
  ['benchwork', 'tools', 'notebook.md '],
])('a finding of %s about %s points at %s', (chapter, where, start) => {
  expect(pointedAt(chapter, where).startsWith(start)).toBe(true);
});

test('what nobody wrote points at its chapter, and a chapter that is not there at the cover', () => {
  expect(findingPlaces(plan)(about('wiring', 'rails'))).toMatchObject({
    file: 'notebooks/bittern-basin/wiring.md',
    path: 'wiring',
  });
  const without = Object.fromEntries(Object.entries(plan.spots).filter(([path]) => !path.startsWith('wiring')));
  const bare = { ...plan, wiring: null, spots: without };
  expect(findingPlaces(bare)(about('wiring', 'rails')).file).toBe('notebooks/bittern-basin/notebook.md');
});
