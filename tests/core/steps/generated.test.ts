import { describe, expect, test } from 'vitest';
import type { Feature, Part } from '../../../src/core/stock/part.ts';
import { ids, MODEL, planned, stepNamed, words } from './demo.ts';

const generated = planned([]);

describe('the steps of a lapped grid that nobody wrote', () => {
  test('come in the order of the bench', () => {
    expect(ids(generated)).toEqual(
      ['rip', 'crosscut', 'panels', 'mark', 'test-lap', 'rout', 'slots']
        .concat(
          ['dry-fit', 'glue', 'square', 'flanges', 'deck', 'trim', 'roundover', 'seal'].map((id) => `table-${id}`),
        )
        .map((id) => `benchwork.${id}`),
    );
    expect(generated.faults).toEqual([]);
    expect(generated.steps.every((step) => step.generated)).toBe(true);
  });

  // Measured 17.7, clearance 0.3, lap-relief 0.4: dado a third of the thickness to 0.1 mm, slot the mate and its clearance,
  // half of 135 and the relief; common practice, no source. The frame: 1600 - 2 (17.7 - 5.9) = 1576.4.
  test('say the lengths, depths and widths of the parts', () => {
    expect(words(stepNamed(generated, 'benchwork.slots'))).toContain('Slots 18 wide and 67.9 deep.');
    expect(words(stepNamed(generated, 'benchwork.rout'))).toContain('rabbet 5.9 deep and 18 wide.');
    expect(words(stepNamed(generated, 'benchwork.test-lap'))).toContain('one slot 18 wide and 67.9 deep');
    const crosscut = words(stepNamed(generated, 'benchwork.crosscut'));
    expect(crosscut).toContain('Stop block at 1576.4: 1 piece: strut.along-1.');
    expect(crosscut).toContain('Stop block at 1076.4: 5 pieces: end.left, end.right, strut.across-1');
  });

  test('set the fence once for each width, and the strip adds up', () => {
    const rip = words(stepNamed(generated, 'benchwork.rip'));
    expect(rip.match(/^Fence at/gm)).toHaveLength(3);
    // two sides of 1600 and two ends of 1076.4 make 5352.8
    expect(rip).toContain('Fence at 170 from birch-ply-18: 5352.8 of strip');
  });

  test('gang the mates of one shape and leave a single one alone', () => {
    const slots = words(stepNamed(generated, 'benchwork.slots'));
    expect(slots).toMatch(/clamped side by side.*strut\.across-1, strut\.across-2, strut\.across-3/);
    expect(slots).toMatch(/^strut\.along-1: from the bottom edge/m);
  });

  test('name every label a builder writes', () => {
    const mark = words(stepNamed(generated, 'benchwork.mark'));
    for (const part of MODEL.parts)
      for (const place of part.places) expect(mark).toContain(`${place.label} on ${place.id}`);
  });

  // 1600^2 + 1100^2 = 1941.649^2 (Pythagoras)
  test('square by the diagonal and wait for the glue', () => {
    expect(words(stepNamed(generated, 'benchwork.table-square'))).toContain('1941.649');
    expect(stepNamed(generated, 'benchwork.table-square').wait).toBe(60);
    expect(stepNamed(generated, 'benchwork.table-deck').wait).toBe(24 * 60);
    expect(stepNamed(generated, 'benchwork.table-trim').after).toContain('benchwork.table-deck');
  });

  test('put every part of the bench in its place', () => {
    const fits = generated.steps.flatMap((step) => step.fits ?? []);
    expect([...fits].sort()).toEqual(MODEL.parts.flatMap((part) => part.places.map((place) => place.id)).sort());
  });

  test('lift and turn by two, and keep children from the machines', () => {
    expect(stepNamed(generated, 'benchwork.rip').people).toBe(2);
    const flanges = stepNamed(generated, 'benchwork.table-flanges');
    expect(flanges.people).toBe(2);
    expect(flanges.cautions.map((caution) => caution.id)).toContain('frame-turning');
    expect(stepNamed(generated, 'benchwork.rout').child).toBe('away');
  });
});

describe('parts of other shapes', () => {
  const plain = MODEL.parts.find((part) => part.role === 'side');
  const shaped = (features: readonly Feature[], more: Partial<Part> = {}): Part[] =>
    plain === undefined ? [] : [{ ...plain, features, ...more }];

  test('openings, notches for a request and holes are cut; a taper comes after all of them', () => {
    const patch = { x0: 300, x1: 700, y0: 40, y1: 140 };
    const answer = planned(
      [],
      {},
      {
        parts: shaped([
          { kind: 'opening', id: 'o', patch, corner: 6.35 },
          {
            kind: 'notch',
            id: 'n',
            for: 'W1-motor',
            edge: 'bottom',
            patch: { x0: 10, x1: 40, y0: 0, y1: 25 },
            corner: 0,
          },
          { kind: 'hole', id: 'h', at: [50, 60], diameter: 12, side: 'face', depth: 'through' },
          { kind: 'taper', id: 't', edge: 'top', from: [0, 170], to: [400, 120] },
        ]),
        joints: [],
      },
    );
    expect(words(stepNamed(answer, 'benchwork.openings'))).toContain(
      'opening 400 by 100, corners 6.35, its left edge at 300',
    );
    expect(words(stepNamed(answer, 'benchwork.openings'))).toContain('notch 30 wide and 25 deep');
    expect(words(stepNamed(answer, 'benchwork.holes'))).toContain('Drill 12.');
    expect(ids(answer).indexOf('benchwork.edges')).toBeGreaterThan(ids(answer).indexOf('benchwork.holes'));
    expect(ids(answer)).not.toContain('benchwork.slots');
  });

  test('parts kept for later, and notebooks without parts, give no steps', () => {
    expect(planned([], {}, { parts: shaped([], { phase: 'later' }) }).steps).toEqual([]);
    expect(planned([], {}, { parts: [] }).steps).toEqual([]);
  });

  test('MDF brings its caution where it makes dust, and only there', () => {
    const mdf = {
      kind: 'sheet',
      id: 'mdf-18',
      name: 'MDF',
      source: 'made for the test',
      price: null,
      material: 'mdf',
      sizes: [],
      density: 750,
      stiffness: null,
      bending: null,
    } as const;
    const stock = [{ ...mdf, thickness: { nominal: 18, listed: 18, low: 17.8, high: 18.2 } }];
    const answer = planned([], {}, { parts: shaped([], { stock: 'mdf-18' }), stock, joints: [] });
    const cautions = (id: string) => stepNamed(answer, id).cautions.map((caution) => caution.id);
    expect(cautions('benchwork.rip')).toContain('mdf');
    expect(cautions('benchwork.mark')).not.toContain('mdf');
  });
});
