import { describe, expect, it } from 'vitest';
import type { CutJob } from '../../../src/core/cutting/job.ts';
import { layOut } from '../../../src/core/cutting/layout.ts';
import { LAWS } from '../../laws/cutting-laws.ts';

// Four rectangles round a fifth: the smallest layout that no saw can cut from edge to edge (known since Brooks, Smith,
// Stone and Tutte, Duke Mathematical Journal 7, 1940, as the simple pinwheel).
const pinwheel: CutJob = {
  stock: [
    {
      ...{ id: 'ply', length: 506.35, width: 506.35, grain: 'length', price: 10 },
      ...{ count: null, offcut: false, noGo: [] },
    },
  ],
  parts: [
    { id: 'flat', length: 300, width: 200, quantity: 2, grain: 'length' },
    { id: 'tall', length: 200, width: 300, quantity: 2, grain: 'length' },
    { id: 'middle', length: 80, width: 80, quantity: 1, grain: 'length' },
  ],
  ...{ kerf: 2.4, trim: 0, style: { kind: 'router', bit: 6.35 }, keep: 150, budget: 50 },
};

describe('the router', () => {
  it('nests a pinwheel on one sheet, where a saw needs two', () => {
    const nested = layOut(pinwheel);
    expect(nested.sheets).toHaveLength(1);
    for (const law of Object.values(LAWS)) expect(law(pinwheel, nested)).toEqual([]);
    expect(layOut({ ...pinwheel, kerf: 6.35, style: { kind: 'saw', stages: 'any' } }).sheets).toHaveLength(2);
  });

  it('keeps the bit between parts, not the kerf', () => {
    const tight = layOut({ ...pinwheel, style: { kind: 'router', bit: 12.7 } });
    expect(tight.sheets).toHaveLength(2);
    expect(
      LAWS.kerfBetween({ ...pinwheel, style: { kind: 'router', bit: 12.7 } }, layOut(pinwheel)).length,
    ).toBeGreaterThan(0);
  });
});
