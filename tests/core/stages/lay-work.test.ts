import { expect, test } from 'vitest';
import { compute } from '../../../src/core/notebook.ts';
import { layWork } from '../../../src/core/stages/lay-work.ts';
import { RISERS } from '../../../src/core/steps/generated/laying.ts';
import type { LaidLine } from '../../../src/core/track/lay.ts';
import { loadContent } from '../../../src/reading/disk.ts';
import { readContent } from '../../../src/reading/read.ts';

const files = await loadContent(new URL('../../../content', import.meta.url).pathname);

function demo() {
  const plan = readContent(files).plans.find(({ slug }) => slug === 'bittern-basin');
  if (plan === undefined) throw new Error('the demo was not read');
  const result = compute(plan);
  if (!result.ok || result.value.track === null) throw new Error('the demo has a track');
  return { plan, track: result.value.track };
}

test('risers follow the grade: 18 mm in 900 mm is 2 mm in 100, by similar triangles', () => {
  const { plan, track } = demo();
  const main = layWork(plan, track, ['table']).raised.find(({ line }) => line === 'main');
  const between = (main?.stations ?? []).filter(({ at }) => at > 850 && at < 1450);
  expect(between.length).toBeGreaterThan(2);
  for (const { at, height } of between) expect(height).toBeCloseTo(((at - 700) * 18) / 900, 6);
});

test('no two heights that differ stand further apart than a riser may', () => {
  const { plan, track } = demo();
  for (const { stations } of layWork(plan, track, []).raised)
    stations.forEach(({ at, height }, i) => {
      const next = stations[i + 1];
      if (next !== undefined && Math.abs(next.height - height) >= 0.05)
        expect(next.at - at).toBeLessThanOrEqual(RISERS + 1e-9);
    });
});

test('a level line on the deck needs none, and a line for later is not laid', () => {
  const { plan, track } = demo();
  const level = (line: LaidLine): LaidLine => ({ ...line, profile: { breaks: [{ at: 0, height: 0 }], curves: [] } });
  expect(layWork(plan, { ...track, lines: track.lines.map(level) }, []).raised).toEqual([]);
  const later = track.lines.map((line): LaidLine => ({ ...line, phase: 'later' }));
  const none = layWork(plan, { ...track, lines: later }, []);
  expect([none.marks, none.raised, none.turnouts]).toEqual([[], [], []]);
});
