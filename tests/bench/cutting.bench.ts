import ShelfPack from '@mapbox/shelf-pack';
import { MaxRectsPacker, PACKING_LOGIC } from 'maxrects-packer';
import { describe, expect, it } from 'vitest';
import { layOut } from '../../src/core/cutting/layout.ts';
import { replay } from '../../src/core/cutting/replay.ts';
import { type Instance, instances2d, jobOf, type Turning } from './instances.ts';

/** One setting for all instances, in the solver's units of work. */
const BUDGET = 2500;

/** Constructive search of Charalambous and Fleszar 2011 as in Gardeyn and Wauters 2022, tables 1 and 2, added up. */
const MOST: Readonly<Record<Turning, number>> = { oriented: 7311, rotated: 7064 };

type Box = { width: number; height: number; x: number; y: number; oversized?: boolean };

type Method = { readonly name: string; readonly bins: (instance: Instance) => number };
type Score = { readonly total: number; readonly median: number; readonly mean: number; readonly worst: number };

describe.each(['oriented', 'rotated'] as const)('the 500 published instances, %s', (turning) => {
  const instances = instances2d();
  const bound = instances.reduce(
    (sum, one) => sum + (turning === 'oriented' ? one.boundOriented : one.boundRotated),
    0,
  );

  it('fewer bins than the published constructive search, every cut replayed', () => {
    const ours = score(instances, { name: 'this solver', bins: (instance) => solved(instance, turning) });
    const others = general(turning).map((method) => ({ name: method.name, ...score(instances, method) }));
    console.log(report({ turning, bound, lines: [{ name: `this solver, ${BUDGET} units`, ...ours }, ...others] }));
    expect(ours.total).toBeLessThanOrEqual(MOST[turning]);
    expect(ours.total).toBeGreaterThanOrEqual(bound);
  });
});

function solved(instance: Instance, turning: Turning): number {
  const answer = layOut(jobOf(instance, turning, BUDGET));
  const came = answer.sheets.flatMap((sheet) => {
    const { faults, parts } = replay(sheet);
    if (faults.length > 0) throw new Error(`${instance.name}: ${faults[0]}`);
    return parts.map((part) => part.part);
  });
  if (new Set(came).size !== instance.items.length) throw new Error(`${instance.name}: not every part was cut`);
  return answer.sheets.length;
}

/**
 * General-purpose packing libraries, made for textures; the free packer's sheets need not be guillotine cuts. The one
 * with shelves fills one bin: its pieces come by height, each into the first bin that takes it.
 */
function general(turning: Turning): readonly Method[] {
  const turns = turning === 'rotated';
  return [
    {
      name: 'maxrects-packer (free)',
      bins: ({ width, height, items }) => {
        const bins = new MaxRectsPacker<Box>(width, height, 0, {
          smart: false,
          pot: false,
          square: false,
          allowRotation: turns,
          logic: PACKING_LOGIC.MAX_AREA,
        });
        bins.addArray(items.map(([w, h]) => ({ width: w, height: h, x: 0, y: 0 })));
        return bins.bins.length;
      },
    },
    {
      name: 'shelf-pack (never turns)',
      bins: ({ width, height, items }) => {
        const bins: ShelfPack[] = [];
        for (const [w, h] of [...items].sort((a, b) => b[1] - a[1])) {
          if (bins.some((bin) => bin.packOne(w, h) !== null)) continue;
          const bin = new ShelfPack(width, height);
          if (bin.packOne(w, h) === null) throw new Error(`${w} by ${h} fits no bin`);
          bins.push(bin);
        }
        return bins.length;
      },
    },
  ];
}

function score(instances: readonly Instance[], method: Method): Score {
  const times: number[] = [];
  let total = 0;
  for (const instance of instances) {
    const start = performance.now();
    total += method.bins(instance);
    times.push(performance.now() - start);
  }
  const sorted = times.toSorted((a, b) => a - b);
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length;
  return { total, median: sorted[Math.floor(sorted.length / 2)] ?? 0, mean, worst: sorted.at(-1) ?? 0 };
}

type Line = Score & { readonly name: string };

function report({
  turning,
  bound,
  lines,
}: {
  readonly turning: Turning;
  readonly bound: number;
  readonly lines: readonly Line[];
}): string {
  const row = (line: Line) =>
    `  ${line.name.padEnd(26)} ${line.total} bins   median ${line.median.toFixed(1)} ms, mean ${line.mean.toFixed(1)}, worst ${line.worst.toFixed(0)}`;
  return [`${turning}: lower bounds add up to ${bound}, to beat ${MOST[turning]}`, ...lines.map(row)].join('\n');
}
