import { describe, expect, it } from 'vitest';
import { INCH_SLIDE_LENGTHS, SLIDE_LENGTHS } from '../../src/core/benchwork/drawers/box.ts';
import { SLIDE_CLEARANCE } from '../../src/core/benchwork/evaluate-fittings.ts';
import { BISCUITS, biscuitSlot, mitreBiscuit } from '../../src/core/benchwork/hardware/biscuits.ts';
import { boltFor, boltLength, lengthNeeded } from '../../src/core/benchwork/hardware/bolts.ts';
import { mitrePoints } from '../../src/core/benchwork/legs/angle-figures.ts';
import { mitreCut } from '../../src/core/stock/slant.ts';
import { bite } from '../../src/core/stock/bite.ts';
import type { Feature } from '../../src/core/stock/part.ts';
import { screwDiameter, screwHoles } from '../../src/core/stock/screw-holes.ts';
import published from './hardware.json' with { type: 'json' };

const IN = 25.4;

describe('screws', () => {
  const { 'screw-diameters': diameters, 'screw-holes': holes } = published;

  it.each(diameters.rows)('number $number is $diameter in thick', ({ number, diameter }) => {
    expect(Math.abs(screwDiameter(number) / IN - diameter)).toBeLessThanOrEqual(diameters.tolerance);
  });

  it.each(holes.rows)('number $number has its pilots and clearance', ({ number, softwood, hardwood, clearance }) => {
    const found = screwHoles(screwDiameter(number));
    expect(found?.number).toBe(number);
    const figures = [found?.softwood ?? 0, found?.hardwood ?? 0, found?.clearance ?? 0].map((mm) => mm / IN);
    [softwood, hardwood, clearance].forEach((inch, i) => {
      expect(Math.abs((figures[i] ?? 0) - inch)).toBeLessThanOrEqual(holes.tolerance);
    });
  });

  it('a metric screw takes the holes of the number nearest to it, and a thread far off takes none', () => {
    expect([screwHoles(3.5)?.number, screwHoles(4)?.number, screwHoles(5)?.number]).toEqual([6, 8, 10]);
    expect([screwHoles(2.5), screwHoles(8)]).toEqual([null, null]);
  });

  it('a pilot is thinner than its screw, a clearance hole as wide to a tenth of a millimetre', () => {
    for (const { number } of holes.rows) {
      const found = screwHoles(screwDiameter(number));
      if (found === null) throw new Error('no holes');
      expect(found.clearance).toBeGreaterThan(screwDiameter(number) - 0.1);
      expect(found.softwood).toBeLessThan(found.hardwood);
      expect(found.hardwood).toBeLessThan(screwDiameter(number));
    }
  });
});

describe('bolts', () => {
  const { grip, washer, nut, pitch, length, sold, tolerance } = published.bolt;

  it(`a grip of ${grip} needs ${length}`, () => {
    expect(Math.abs(boltLength({ grip, washer, nut, pitch }) - length)).toBeLessThanOrEqual(tolerance);
  });

  it(`and of what is sold, ${sold} is used`, () => {
    const plain = { name: '', source: '', price: null, pack: 1, kind: 'hardware', diameter: 12 } as const;
    const bolts = [50, 55, 60, 70].map((long) => ({ ...plain, id: `bolt-${long}`, form: 'bolt', length: long }) as const);
    const rest = (['nut', 'washer'] as const).map((form) => ({ ...plain, id: form, form, length: null }));
    // an M12's own nut and washers in the product: 38 + 2 x 2.5 + 10.8 + 2 x 1.75 = 57.3
    expect(boltFor({ hardware: [...bolts, ...rest], covers: [], show: 'mm' }, 12, grip)?.bolt.length).toBe(sold);
  });
});

describe('inch bolts', () => {
  const { rows, washer, tolerance } = published['inch-nuts'];

  it.each(rows)('$size in: a grip of 2 in asks for washers, nut and two threads more', ({ size, threads, height }) => {
    const needed = 2 + 2 * washer + height + 2 / threads;
    expect(Math.abs((lengthNeeded(size * IN, 2 * IN) ?? 0) / IN - needed)).toBeLessThanOrEqual(tolerance);
  });
});

describe('biscuits and slides', () => {
  it('come in the sizes their makers list', () => {
    expect(BISCUITS).toEqual(published.biscuits.rows);
  });

  it('the widest that leaves wood beyond its slot: number 10 in a mitre of an 18 mm sheet, none in 9 mm', () => {
    const [face18, face9] = [18, 9].map((t) => mitrePoints(110, t).face);
    expect(mitreBiscuit(face18 ?? 0)?.size).toBe('10');
    expect(mitreBiscuit(face9 ?? 0)).toBeNull();
    for (const one of BISCUITS) expect(biscuitSlot(one) * 2).toBeGreaterThan(one.width);
  });

  it('slides are sold by fifties and stand off half an inch', () => {
    const { first, last, step, clearance } = published.slides;
    expect(SLIDE_LENGTHS).toEqual(Array.from({ length: (last - first) / step + 1 }, (_, i) => first + i * step));
    const { inches } = published.slides;
    const count = (inches.last - inches.first) / inches.step + 1;
    expect(INCH_SLIDE_LENGTHS.map((mm) => Math.round((mm / IN) * 1e9) / 1e9)).toEqual(Array.from({ length: count }, (_, i) => inches.first + i * inches.step));
    expect(SLIDE_CLEARANCE).toBe(clearance);
  });
});

describe('a round bit in a square corner', () => {
  const { bit, uncut, centre, overcut, tolerance } = published['router-corner'];
  const blank = { length: 200, width: 100, thickness: 18, grain: 'length' } as const;
  const pocket = { id: 'p', kind: 'dado', side: 'face', patch: { x0: 50, x1: 90, y0: 20, y1: 60 }, depth: 6 } as const;
  const loops = (feature: Feature) => bite(blank, feature)?.loops ?? [];

  it(`leaves ${uncut} uncut, measured from the pocket's own outline`, () => {
    const [loop = []] = loops({ ...pocket, corner: bit / 2 });
    const nearest = Math.min(...loop.map(([x, y]) => Math.hypot(x - 50, y - 20)));
    expect(Math.abs(nearest - uncut)).toBeLessThanOrEqual(tolerance);
  });

  it(`relieves it from a centre ${centre} inside both walls, ${overcut} beyond them`, () => {
    const reliefs = loops({ ...pocket, corner: 0, relief: bit / 2 }).slice(1);
    expect(reliefs).toHaveLength(4);
    const [loop = []] = reliefs;
    const middle = ([0, 1] as const).map((axis) => loop.reduce((sum, point) => sum + point[axis], 0) / loop.length);
    expect(Math.abs((middle[0] ?? 0) - 50 - centre)).toBeLessThanOrEqual(tolerance);
    expect(Math.abs((middle[1] ?? 0) - 20 - centre)).toBeLessThanOrEqual(tolerance);
    const radius = Math.hypot(centre, centre);
    expect(Math.abs(radius - (middle[0] ?? 0) + 50 - overcut)).toBeLessThanOrEqual(2 * tolerance);
  });
});

describe('a mitre at 45 degrees', () => {
  const { width, thickness, short, face, tolerance } = published.mitre;

  it('keeps its long point and loses the sheet at its short one', () => {
    const points = mitrePoints(width, thickness);
    expect([points.long, points.short]).toEqual([width, short]);
    expect(Math.abs(points.face - face)).toBeLessThanOrEqual(tolerance);
  });

  it('and the solid is cut through the same two points', () => {
    const blank = { length: 400, width, thickness, grain: 'length' } as const;
    const cut = mitreCut({ blank, features: [] }, { id: 'm', kind: 'mitre', edge: 'top', angle: Math.PI / 4, long: 'back' });
    const on = (y: number, z: number) => cut.normal[1] * y + cut.normal[2] * z - cut.offset;
    expect(on(width, 0)).toBeCloseTo(0, 9);
    expect(on(short, thickness)).toBeCloseTo(0, 9);
  });
});

