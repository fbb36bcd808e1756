import { readFileSync } from 'node:fs';
import type { CutJob } from '../../src/core/cutting/job.ts';

/** One published instance; the bounds are for the report alone and never reach the solver. */
export type Instance = {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly boundOriented: number;
  readonly boundRotated: number;
  readonly bestOriented: number;
  readonly bestRotated: number;
  readonly items: readonly (readonly [number, number])[];
};

export type Turning = 'oriented' | 'rotated';

export function instances2d(): readonly Instance[] {
  const file = new URL('../published/cutting/bins-2d.json', import.meta.url);
  const { instances }: { instances: readonly (readonly number[])[] } = JSON.parse(readFileSync(file, 'utf8'));
  return instances.map((row) => {
    const [
      kind = 0,
      count = 0,
      number = 0,
      width = 0,
      height = 0,
      boundOriented = 0,
      boundRotated = 0,
      bestOriented = 0,
      bestRotated = 0,
      ...sizes
    ] = row;
    const items = Array.from({ length: count }, (_, i) => [sizes[2 * i] ?? 0, sizes[2 * i + 1] ?? 0] as const);
    return {
      name: `${kind}-${count}-${number}`,
      width,
      height,
      boundOriented,
      boundRotated,
      bestOriented,
      bestRotated,
      items,
    };
  });
}

/** The instance as a job for the saw: no kerf, any stages, one sheet size as often as asked, no offcut worth keeping. */
export function jobOf(instance: Instance, turning: Turning, budget: number): CutJob {
  const grain = turning === 'oriented' ? 'length' : 'any';
  return {
    stock: [
      {
        ...{ id: 'bin', length: instance.width, width: instance.height, grain },
        ...{ price: 1, count: null, offcut: false, noGo: [] },
      },
    ],
    parts: instance.items.map(([length, width], i) => ({ id: `p${i}`, length, width, quantity: 1, grain })),
    ...{ kerf: 0, trim: 0, style: { kind: 'saw', stages: 'any' }, keep: 1e6, budget },
  };
}
