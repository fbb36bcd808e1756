import { describe, expect, test } from 'vitest';
import type { BenchInput } from '../../../src/core/benchwork/input.ts';
import { planSteps } from '../../../src/core/steps/plan.ts';
import type { Step } from '../../../src/core/steps/step.ts';
import { model, PLY_9, PLY_18 } from '../benchwork/example.ts';
import { fittedTable, GOODS, PLY_6, PLY_12, POSTS } from '../benchwork/fitted.ts';
import { words } from './demo.ts';

function stepsOf(bench: Partial<BenchInput> = {}) {
  const built = model(fittedTable(bench));
  const { parts, joints, benches, fasteners, hardware } = built;
  const stock = [PLY_18, PLY_9, PLY_12, PLY_6, ...GOODS.hardware];
  const answer = planSteps({ parts, joints, frames: benches, fasteners, hardware, stock, scope: {}, chapters: [] });
  const step = (id: string): Step => {
    const found = answer.steps.find((one) => one.id === `benchwork.${id}`);
    if (found === undefined) throw new Error(`no step ${id}`);
    return found;
  };
  return { built, answer, step, order: answer.steps.map(({ id }) => id.slice('benchwork.'.length)) };
}

describe('steps of drawers, legs and shelves', () => {
  const { built, answer, step, order } = stepsOf();

  test('put every piece in its place once', () => {
    const fits = answer.steps.flatMap((one) => one.fits ?? []);
    expect([...fits].sort()).toEqual(built.parts.flatMap(({ places }) => places.map(({ id }) => id)).sort());
    expect(answer.faults).toEqual([]);
  });

  test('legs, spacers and shelves come before the deck closes the bays, drawers after it is trimmed', () => {
    const at = (id: string) => order.indexOf(id);
    expect(at('table-legs-on')).toBeLessThan(at('table-spacers'));
    for (const early of ['table-legs-on', 'table-spacers', 'table-shelves']) {
      expect(at(early)).toBeGreaterThan(at('table-flanges'));
      expect(at(early)).toBeLessThan(at('table-deck'));
    }
    for (const late of ['table-drawers-hang', 'table-drawers-face']) expect(at(late)).toBeGreaterThan(at('table-trim'));
    expect(at('table-seal')).toBeGreaterThan(at('table-drawers-face'));
  });

  test('a face is not sawn: it falls out of its opening under a bit of 6.35, labelled before', () => {
    const openings = words(step('openings'));
    expect(openings).toContain('opening 342.475 by 100, corners 15.875');
    expect(openings).toContain('drawer.front-2.face, drawer.front-3.face: what falls out is kept. Write both labels');
    expect(openings).toContain('A bit of 6.35, its middle 3.175 inside');
    for (const saw of ['rip', 'crosscut', 'panels']) expect(step(saw).makes).not.toContain('drawer.front-2.face');
    expect(step('mark').makes).toContain('drawer.front-2.face');
  });

  test('boxes are tried before any finish, with the difference of diagonals that slides forgive', () => {
    // 1/32 in over a box 450 deep and 317.075 wide outside: 2 W s / diagonal
    expect(words(step('table-drawers-box'))).toContain(
      `${Math.round(((2 * 317.075 * 0.79375) / Math.hypot(450, 317.075)) * 1000) / 1000}`,
    );
    expect(words(step('table-drawers-hang'))).toContain('before any finish');
    expect(words(step('table-drawers-face'))).toContain("the same as the hole's (DR2F, DR3F)");
    expect(words(step('table-drawers-hang'))).toContain('2 catch, 2 slide-450');
  });

  test('spacers, cleats and slides have heights from the underside of the side, measured on the placed pieces', () => {
    // a side of 170 whose opening keeps 35 below and above; a box 6 and 12 off it: 41 to 123, its middle at 82
    const spacers = words(step('table-spacers'));
    expect(spacers).toContain('from 52 to 112 above the underside of the side, 450 long');
    expect(spacers.match(/spacer\.front-[23]-(?:left|right)/g)).toHaveLength(4);
    expect(words(step('table-drawers-hang'))).toContain(
      'the middle of the slides is 82 above the underside of the side; draw that line on both spacers, and on the box 41 above its lower edge, which is at 41',
    );
    // cleats stand on the struts' underside, 35 up and 20 tall, a shelf of 9.2 on them
    const shelves = words(step('table-shelves'));
    expect(shelves).toContain('from 35 to 55 above the underside of the side');
    expect(shelves).toContain('the top comes to 64.2 above it');
  });

  test('holes are drilled through face and box in one go, by the table of screw holes', () => {
    const face = words(step('table-drawers-face'));
    // number 8: clearance 11/64 in, pilot in hard wood 3/32 in
    expect(face).toContain(
      '8 screws: screw-4x25. Clearance hole 4.366 through the first piece, pilot 2.381 in the last.',
    );
    expect(face).toContain('4 screws: screw-4x45.');
  });

  test('legs are bolted on, can be taken off, and bring their cautions; ripping their strips does not', () => {
    expect(words(step('table-legs-on'))).toContain('8 bolts: bolt-m8x110.');
    // nuts and washers go on with their bolts; the washers of the casters' bolts with the casters
    expect(words(step('table-legs-on'))).toContain('At hand: 8 nut-m8, 16 washer-m8.');
    const building = words(step('table-legs-build'));
    expect(building).toContain('16 washer-m6');
    expect(building).not.toMatch(/nut-m8|washer-m8/);
    const cautions = (id: string) => step(id).cautions.map(({ id: caution }) => caution);
    expect(cautions('table-legs-on')).toEqual(expect.arrayContaining(['tip-over', 'frame-turning']));
    expect(cautions('table-drawers-hang')).toContain('drawer-fingers');
    expect(cautions('rip')).not.toContain('tip-over');
    expect(step('table-legs-on').people).toBe(2);
  });

  test('rounded edges and coats say what they do to the gap round a face', () => {
    expect(words(step('table-roundover'))).toContain('the gap of 6.35 round a drawer');
    expect(words(step('table-roundover'))).toContain('looks 8.35 wide');
    expect(words(step('table-seal'))).toContain('keep sealer off spacers and slides');
  });
});

test('angle legs are tapered after all that is measured from their edge', () => {
  const { step, order } = stepsOf({ legs: { ...POSTS, form: 'angle', layers: 1, width: 110 } });
  expect(order.indexOf('edges')).toBeGreaterThan(order.indexOf('rout'));
  expect(order.indexOf('edges')).toBeGreaterThan(order.indexOf('holes'));
  const edges = words(step('edges'));
  expect(edges.indexOf('taper')).toBeGreaterThan(edges.lastIndexOf('mitre'));
  expect(edges).toContain('at 45° to the face, full size on the back: saw tilted 45°');
  // the pull's slope stands 70 degrees to its face
  expect(edges).toContain('at 70° to the face, full size on the back: saw tilted 20°');
  expect(words(step('table-legs-build'))).toContain('pull the mitre shut');
});

test('a table without fittings has none of their steps', () => {
  const { order } = stepsOf({ drawers: [], legs: null, shelves: [] });
  expect(order.filter((id) => /drawer|leg|shel|spacer/.test(id))).toEqual([]);
});
