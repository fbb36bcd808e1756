import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { CutJob } from '../../src/core/cutting/job.ts';
import { layOut } from '../../src/core/cutting/layout.ts';
import { replay } from '../../src/core/cutting/replay.ts';
import { instances2d, jobOf } from '../bench/instances.ts';

type Row = readonly [name: string, capacity: number, optimum: number, ...sizes: number[]];

const file = new URL('./cutting/bins-1d.json', import.meta.url);
const { instances }: { instances: readonly Row[] } = JSON.parse(readFileSync(file, 'utf8'));

/** Lengths from boards without width, as wire is cut. */
function wire([, capacity, , ...sizes]: Row): CutJob {
  return {
    stock: [{ ...{ id: 'wire', length: capacity, width: 0, grain: 'any', price: 1 }, ...{ count: null, offcut: false, noGo: [] } }],
    parts: sizes.map((length, i) => ({ id: `p${i}`, length, width: 0, quantity: 1, grain: 'any' })),
    ...{ kerf: 0, trim: 0, style: { kind: 'saw', stages: 'any' }, keep: 1e6, budget: 600 },
  };
}

// Falkenauer, Journal of Heuristics 2, 1996; optima: Delorme, Iori and Martello 2018.
describe('one dimension, Falkenauer', () => {
  it.each(['u120', 't60'])('%s: the optimum or one more, and no bound above the optimum', (group) => {
    const rows = instances.filter(([name]) => name.startsWith(`${group}_`));
    expect(rows).toHaveLength(20);
    for (const row of rows) {
      const [name, , optimum] = row;
      const answer = layOut(wire(row));
      expect(answer.sheets.flatMap((sheet) => replay(sheet).faults)).toEqual([]);
      expect([name, answer.sheets.length - optimum]).toSatisfy(([, over]: [string, number]) => over === 0 || over === 1);
      expect(answer.bounds[0]?.bound).toBeLessThanOrEqual(optimum);
    }
  });
});

// Berkey and Wang 1987; Martello and Vigo 1998; best values: see bins-2d.json.
describe('two dimensions, every tenth of the 500 published instances', () => {
  const some = instances2d().filter((_, i) => i % 10 === 3);

  it.each(['oriented', 'rotated'] as const)('%s: never below the published bound, never a bound above the best layout known', (turning) => {
    let over = 0;
    for (const one of some) {
      const answer = layOut(jobOf(one, turning, 100));
      const found = answer.sheets.length;
      const [bound, best] = turning === 'oriented' ? [one.boundOriented, one.bestOriented] : [one.boundRotated, one.bestRotated];
      expect([one.name, found >= bound]).toEqual([one.name, true]);
      expect([one.name, (answer.bounds[0]?.bound ?? 0) <= best]).toEqual([one.name, true]);
      over += found - bound;
    }
    expect(over / some.length).toBeLessThan(0.35);
  });
});
