import { describe, expect, test } from 'vitest';
import { insideLoop } from '../../../src/core/scenery/distance.ts';
import { heightField } from '../../../src/core/scenery/field.ts';
import type { Land, Path, Water } from '../../../src/core/scenery/land.ts';
import { sceneryModel } from '../../../src/core/scenery/scenery.ts';
import { around, bare, cloth, hill, pond } from './table.ts';

const line = (y: number): Path => ({
  ...{ id: 'main', half: 20, bed: 12, slope: 2 / 3, free: [] },
  points: [0, 200, 400, 600, 800, 1000].map((x) => ({ at: x, x, y, z: 0 })),
});
const told = (land: Partial<Land>, lines: readonly Path[] = []) =>
  sceneryModel({ ...bare, ...land }, { ...around, lines }).findings;
const of = (rule: string, land: Partial<Land>, lines: readonly Path[] = []) =>
  told(land, lines).filter((finding) => finding.rule === rule);
const bridge = (from: number, to: number) => ({ ...{ id: 'span', line: 'main', at: '', over: 'pond' }, from, to });
const moved = (water: Water, [dx, dy]: readonly [number, number]): Water => ({
  ...water,
  outline: water.outline.map(([x, y]) => [x + dx, y + dy] as const),
});

/** The highest ground inside an outline, node by node of a grid of 2 mm, apart from the product's own search. */
function highestInside({ outline }: Water, land: Land): number {
  const field = heightField({ ...land, paths: [] });
  let most = 0;
  for (let x = 0; x <= 1000; x += 2) {
    for (let y = 0; y <= 600; y += 2) if (insideLoop(outline, [x, y])) most = Math.max(most, field(x, y));
  }
  return most;
}

describe('a line over water', () => {
  test('is a halt where no bridge carries it, with the stretch and the bridge to write', () => {
    const [finding] = of('line-over-water', { water: [pond] }, [line(150)]);
    expect(finding?.level).toBe('halt');
    // the pond reaches from 250 to 400 mm along the line, and the bed is 12 mm to each side
    expect(finding?.figure).toBeCloseTo(50 + 12, 0);
    expect(JSON.stringify(finding?.mend)).toMatch(/Write a bridge on .*main.*"length":240.*"length":410.*pond/);
  });

  test('is right on a bridge that spans it, and told for what a short one leaves', () => {
    expect(of('line-over-water', { water: [pond], bridges: [bridge(230, 420)] }, [line(150)])).toEqual([]);
    expect(of('line-over-water', { water: [pond], bridges: [bridge(230, 340)] }, [line(150)])).toHaveLength(1);
  });

  test('is a care where only its bed hangs over, and nothing beside it', () => {
    expect(of('line-over-water', { water: [pond] }, [line(94)]).map(({ level }) => level)).toEqual(['care']);
    expect(of('line-over-water', { water: [pond] }, [line(80)])).toEqual([]);
  });

  test('a bridge nowhere near its water is told', () => {
    const [finding] = of('bridge-elsewhere', { water: [pond], bridges: [bridge(600, 700)] }, [line(150)]);
    expect(finding?.where).toBe('span');
    expect(of('bridge-elsewhere', { water: [pond], bridges: [bridge(230, 420)] }, [line(150)])).toEqual([]);
  });
});

describe('a water and its banks', () => {
  test('over the deck with no bank it runs out; behind a bank all round it does not', () => {
    const high = { ...pond, surface: 5 };
    const [finding] = of('water-runs-out', { water: [high] });
    expect([finding?.level, finding?.figure, finding?.limit]).toEqual(['halt', 5, 0]);
    expect(of('water-runs-out', { water: [pond] })).toEqual([]);
    const dam = { kind: 'bank' as const, id: 'dam', height: 8, slope: 1, outline: pond.outline };
    expect(of('water-runs-out', { water: [high], forms: [dam] })).toEqual([]);
  });

  test('inside a hill it is told as high as a grid finds the ground there', () => {
    const water = moved(pond, [150, 120]);
    const land = { ...bare, forms: [hill], water: [water] };
    const [finding] = of('water-in-ground', land);
    expect(Math.abs((finding?.figure ?? 0) - highestInside(water, land))).toBeLessThan(1.5);
    expect(JSON.stringify(finding?.what)).toContain('down');
    expect(of('water-in-ground', { forms: [hill], water: [pond] })).toEqual([]);
  });

  test('a bank of earth across its edge is told by name', () => {
    const outline = [
      [380, 120],
      [450, 120],
      [450, 180],
      [380, 180],
    ] as const;
    const bank = { kind: 'bank' as const, id: 'yard', height: 20, slope: 1, outline };
    const [finding] = of('water-in-ground', { forms: [bank], water: [pond] });
    expect(finding?.figure).toBeCloseTo(20, 6);
    expect(JSON.stringify(finding?.what)).toContain('yard');
  });

  test('two that overlap are a halt, and moved apart as told they are not', () => {
    const other = { ...moved(pond, [140, 0]), id: 'mere' };
    const [finding] = of('waters-meet', { water: [pond, other] });
    expect(finding?.level).toBe('halt');
    const by = Math.ceil(finding?.figure ?? 0);
    expect(of('waters-meet', { water: [pond, moved(other, [by, 0])] })).toEqual([]);
    expect(of('waters-meet', { water: [pond, moved(other, [by - 2, 0])] })).toHaveLength(1);
  });
});

describe('hills and trees on a line', () => {
  test('a low hill over a line is told as dug away, and not where it keeps off', () => {
    const low = { ...hill, height: 30 };
    const [finding] = of('hill-dug-away', { forms: [low] }, [line(300)]);
    expect(finding?.figure).toBeCloseTo(30, 0);
    expect(of('hill-dug-away', { forms: [low] }, [line(120)])).toEqual([]);
  });

  test('trees keep off the line, and none is counted on it', () => {
    const square = [
      [600, 100],
      [800, 100],
      [800, 300],
      [600, 300],
    ] as const;
    const zone = { id: 'wood', at: '', outline: square, of: [cloth], trees: 1000 };
    expect(of('trees-on-line', { zones: [zone] }, [line(200)])).toHaveLength(1);
    expect(of('trees-on-line', { zones: [zone] }, [line(400)])).toEqual([]);
    const count = (lines: readonly Path[]) =>
      sceneryModel({ ...bare, zones: [zone] }, { ...around, lines }).zones[0]?.trees;
    // 200 x 200 mm hold 40 trees at 1000 to the m2; less a strip of 40 mm, 32
    expect([count([line(400)]), count([line(200)])]).toEqual([40, 32]);
  });

  test('a zone that runs into a water is told', () => {
    const zone = { id: 'wood', at: '', outline: moved(pond, [60, 0]).outline, of: [cloth], trees: 0 };
    expect(of('zone-in-water', { zones: [zone], water: [pond] })[0]?.figure).toBeCloseTo(90, 3);
    expect(
      of('zone-in-water', { zones: [{ ...zone, outline: moved(pond, [400, 0]).outline }], water: [pond] }),
    ).toEqual([]);
  });
});
