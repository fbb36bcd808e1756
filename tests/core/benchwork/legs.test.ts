import { describe, expect, it } from 'vitest';
import { machiningOf } from '../../../src/core/assembly/machining/machining.ts';
import { USUAL_MACHINES } from '../../../src/core/assembly/machining/operation.ts';
import { meetings } from '../../../src/core/benchwork/fittings.ts';
import { frame } from '../../../src/core/benchwork/frame.ts';
import type { BenchInput, BenchworkModel, LegsInput } from '../../../src/core/benchwork/input.ts';
import { mitrePoints } from '../../../src/core/benchwork/legs/angle-figures.ts';
import { placedBox } from '../../../src/core/geometry/solid.ts';
import { joinsPieces } from '../../../src/core/stock/fastener.ts';
import type { HardwareStock } from '../../../src/core/stock/goods.ts';
import { partSolid } from '../../../src/core/stock/solid.ts';
import { knownThickness } from '../../../src/core/stock/thickness-check.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { instance, model, PLY_18 } from './example.ts';
import { CASTER, fittedTable, GOODS, POSTS } from './fitted.ts';

const ANGLES: LegsInput = { ...POSTS, form: 'angle', layers: 1, width: 110 };
const TRESTLES: LegsInput = { ...POSTS, form: 'trestle', layers: 1, width: 90 };
const withLegs = (legs: LegsInput, bench: Partial<BenchInput> = {}) => model(fittedTable({ legs, ...bench }));

function boxIn(built: BenchworkModel, id: string) {
  const { part, place } = instance(built, id);
  return placedBox(partSolid(part), place.pose);
}

const heights = (built: BenchworkModel, role: string) => {
  const boxes = built.parts
    .filter((part) => part.role === role)
    .flatMap((part) => part.places.map(({ pose }) => placedBox(partSolid(part), pose)));
  return [Math.min(...boxes.map(({ min }) => min[2])), Math.max(...boxes.map(({ max }) => max[2]))];
};

function halts(legs: LegsInput, bench: Partial<BenchInput> = {}) {
  return withLegs(legs, bench)
    .findings.filter(({ level }) => level === 'halt')
    .map(({ rule, where, figure, limit, mend }) => ({
      rule,
      where,
      figure,
      limit,
      mend: spoken(mend, (mm) => `${mm}`),
    }));
}

describe('posts of four layers on casters', () => {
  const built = withLegs(POSTS);

  it('are 70.8 square, from the pad to the deck', () => {
    const layers = [1, 2, 3, 4].map((i) => boxIn(built, `leg.front-left.layer-${i}`));
    const across = [0, 1].map(
      (axis) =>
        Math.max(...layers.map(({ max }) => max[axis] ?? 0)) - Math.min(...layers.map(({ min }) => min[axis] ?? 0)),
    );
    for (const mm of across) expect(mm).toBeCloseTo(70.8, 9);
    expect(instance(built, 'leg.front-left.layer-1').part.places).toHaveLength(16);
  });

  it('bring the deck to 700.00: caster 100, pad 35.4, post 555.4, deck 9.2', () => {
    expect(heights(built, 'leg-pad')).toEqual([100, 135.4]);
    expect(instance(built, 'leg.front-left.layer-1').part.blank.length).toBeCloseTo(555.4, 9);
    expect(heights(built, 'deck')[1]).toBeCloseTo(700, 9);
  });

  it('and stay there when sheets measure otherwise', () => {
    for (const reading of [17.1, 17.65, 18.3]) {
      const input = fittedTable();
      const frameSheet = { stock: PLY_18, thickness: knownThickness(PLY_18, [reading, reading]) };
      const other = model({ ...input, materials: { ...input.materials, frame: frameSheet } });
      expect(heights(other, 'deck')[1]).toBeCloseTo(700, 9);
      expect(heights(other, 'leg-pad')[0]).toBeCloseTo(100, 9);
      expect(heights(other, 'leg-layer')[1]).toBeCloseTo(690.8, 9);
    }
  });

  it('stand in every corner, bolted through the sides', () => {
    expect(boxIn(built, 'leg.front-left.layer-1').min.slice(0, 2)).toEqual([17.7, 17.7]);
    expect(boxIn(built, 'leg.back-right.layer-1').max.slice(0, 2)).toEqual([1582.3, 1082.3]);
    const bolts = built.fasteners.filter((one) => one.form === 'bolt' && joinsPieces(one));
    expect(bolts).toHaveLength(8);
    // grip 17.7 + 70.8; two washers of 1.6, a nut of 6.8 and two threads of 1.25 make 101, sold as 110
    expect(new Set(bolts.map(({ item }) => item))).toEqual(new Set(['bolt-m8x110']));
    expect(instance(built, 'side.front').part.features.filter(({ kind }) => kind === 'hole')).toHaveLength(4);
  });

  it('stand on plates bolted at their own pattern, and on pads held by two brackets clear of it', () => {
    const own = built.fasteners.filter((one) => !joinsPieces(one) && one.through[0]?.startsWith('leg.front-left.'));
    const at = (piece: string) => own.filter(({ through }) => through[0] === piece).map(({ head }) => head);
    // the plate's middle is the post's, 53.1 from both outsides; bolts 44 apart, heads below 3 of plate and a washer of 1.6
    expect(at('leg.front-left.pad-1')).toEqual(
      [31.1, 75.1].flatMap((x) => [31.1, 75.1].map((y) => [x, y, 95.4].map((one) => expect.closeTo(one, 9)))),
    );
    // at a quarter of 70.8 from each edge; 10 and 30 from the corner; 1.5 of metal on the post's inner face and the pad
    const us = [35.4, 70.8];
    expect(at('leg.front-left.layer-4')).toEqual(
      us.flatMap((x) => [145.4, 165.4].map((z) => [x, 90, z].map((one) => expect.closeTo(one, 9)))),
    );
    expect(at('leg.front-left.pad-2')).toEqual(
      us.flatMap((x) => [98.5, 118.5].map((y) => [x, y, 136.9].map((one) => expect.closeTo(one, 9)))),
    );
  });

  it('have pads of two layers, the grain of one across the other', () => {
    const [low, high] = [1, 2].map((i) => instance(built, `leg.front-left.pad-${i}`).place.pose.x);
    expect(Math.abs((low?.[0] ?? 0) * (high?.[0] ?? 0) + (low?.[1] ?? 0) * (high?.[1] ?? 0))).toBe(0);
  });

  it('sweep a circle of 68 round each wheel, told where it reaches beyond the frame', () => {
    const circle = built.envelopes.find(({ id }) => id === 'leg.front-left.caster');
    expect(circle?.min).toEqual([-14.9, -14.9, 0]);
    expect(built.findings.find(({ rule }) => rule === 'casters-reach-out')).toMatchObject({
      level: 'note',
      figure: 14.9,
    });
  });

  it('count casters, inserts and the bolts that end inside them', () => {
    const of = built.hardware
      .filter(({ where }) => where === 'leg.front-left')
      .map(({ item, quantity }) => `${quantity} ${item}`);
    expect(of).toEqual([
      '4 bolt-m6x16',
      '2 bolt-m8x110',
      '2 bracket-40',
      '1 caster-75',
      '4 insert-m6',
      '2 nut-m8',
      '8 screw-3.5x16',
      '4 washer-m6',
      '4 washer-m8',
    ]);
  });
});

describe('angle legs', () => {
  const built = withLegs(ANGLES);
  const half = instance(built, 'leg.front-left.half-side').part;

  it('are two mitred halves flush with the frame outside, as tall as what is left under it', () => {
    expect(boxIn(built, 'leg.front-left.half-side').min.slice(0, 2)).toEqual([0, 0]);
    expect(boxIn(built, 'leg.back-right.half-end').max.slice(0, 2)).toEqual([1600, 1100]);
    expect(heights(built, 'leg-half')).toEqual([100, 520.8]);
    expect(mitrePoints(110, 17.7).short).toBeCloseTo(92.3, 9);
  });

  it('come in two hands, four of each', () => {
    expect(built.parts.filter(({ role }) => role === 'leg-half').map(({ places }) => places.length)).toEqual([4, 4]);
  });

  it('have blocks in dados, the top one set down, and pads in a rabbet at the foot', () => {
    expect(half.features.map(({ kind }) => kind).sort()).toEqual([
      'mitre',
      'rabbet',
      'stopped-dado',
      'stopped-dado',
      'taper',
    ]);
    const top = boxIn(built, 'leg.front-left.block-2');
    expect(520.8 - top.max[2]).toBeCloseTo(100, 9);
  });

  it('stand a fin up inside the frame to the deck, held by two bolts, so that the leg drops out', () => {
    const fin = boxIn(built, 'leg.front-left.fin');
    expect([fin.min[1], fin.max[1]]).toEqual([17.7, 35.4]);
    expect(fin.max[2]).toBeCloseTo(690.8, 9);
    expect(built.joints.find(({ id }) => id === 'bolted.side.front.leg.front-left.fin')).toMatchObject({
      held: 'bolts',
    });
    expect(
      built.fasteners.filter(({ through }) => through.includes('leg.front-left.fin') && through[0] === 'side.front'),
    ).toHaveLength(2);
  });

  it('are tapered last, for the taper takes the edge that dados and mitre are measured from', () => {
    const order = machiningOf([half], USUAL_MACHINES)[0];
    expect(JSON.stringify(order)).toContain('taper');
    const kinds = JSON.stringify(order).match(/"kind":"(rabbet|stopped-dado|mitre|taper)"/g) ?? [];
    expect(kinds[kinds.length - 1]).toBe('"kind":"taper"');
  });

  it('take biscuits across the mitre', () => {
    expect(
      built.hardware.find(({ item, where }) => item === 'biscuit-10' && where === 'leg.front-left')?.quantity,
    ).toBe(4);
  });
});

describe('trestles', () => {
  const built = withLegs(TRESTLES);

  it('are one at each end: two uprights inside the end, two rails in dados', () => {
    expect(instance(built, 'leg.left.upright-front').part.places).toHaveLength(4);
    expect(instance(built, 'leg.left.rail-1').part.places).toHaveLength(4);
    expect(instance(built, 'leg.left.rail-1').part.blank.length).toBeCloseTo(1064.6, 9);
    expect(boxIn(built, 'leg.right.upright-back').max.slice(0, 2)).toEqual([1582.3, 1082.3]);
  });

  it('the upper rail lies under the frame, so that the trestle drops out in one piece', () => {
    expect(boxIn(built, 'leg.left.rail-2').max[2]).toBeCloseTo(520.8, 9);
    expect(built.joints.filter(({ held }) => held === 'bolts').map(({ between }) => between[0])).toEqual([
      'end.left',
      'end.left',
      'end.right',
      'end.right',
    ]);
  });

  it('stand on four casters', () => {
    expect(
      built.hardware.filter(({ item }) => item === 'caster-75').reduce((sum, { quantity }) => sum + quantity, 0),
    ).toBe(4);
    expect(built.findings.filter(({ level }) => level === 'halt')).toEqual([]);
  });
});

describe('what they stand on', () => {
  const foot = GOODS.hardware.find(({ form }) => form === 'foot');
  if (foot === undefined) throw new Error('no foot');

  it('feet: the leg is shorter by the foot in the middle of its travel', () => {
    const built = withLegs({ ...POSTS, stand: { kind: 'foot', foot, travel: 20, height: 25 } });
    expect(heights(built, 'leg-pad')[0]).toBe(25);
    expect(built.findings.find(({ rule }) => rule === 'foot-travel')).toMatchObject({ level: 'note', figure: 20 });
    expect(built.hardware.filter(({ item }) => item === 'foot-m8').map(({ quantity }) => quantity)).toEqual([
      1, 1, 1, 1,
    ]);
  });

  it('stem casters in one insert each', () => {
    const stem = { ...CASTER, id: 'stem', mount: 'stem', overallHeight: 72, plate: null, bolts: null } as const;
    const built = withLegs({ ...POSTS, stand: { kind: 'caster', caster: stem, free: null } });
    expect(heights(built, 'leg-pad')[0]).toBe(72);
    expect(built.hardware.find(({ item, where }) => item === 'insert-m8' && where === 'leg.back-left')?.quantity).toBe(
      1,
    );
  });

  it('casters without a brake behind: legs differ by the casters, two still lock; with none a care', () => {
    const free = { ...CASTER, id: 'free', overallHeight: 96, locks: false };
    const built = withLegs({ ...POSTS, stand: { kind: 'caster', caster: CASTER, free } });
    expect(boxIn(built, 'leg.back-left.pad-1').min[2]).toBe(96);
    expect(built.findings.filter(({ rule }) => rule === 'casters-do-not-lock')).toEqual([]);
    const none = withLegs({ ...POSTS, stand: { kind: 'caster', caster: { ...CASTER, locks: false }, free } });
    expect(none.findings.find(({ rule }) => rule === 'casters-do-not-lock')).toMatchObject({
      level: 'care',
      figure: 0,
      limit: 2,
    });
  });
});

describe('legs that cannot be made are halts with what can be had', () => {
  it('too many layers for the corner', () => {
    const struts = { along: { kind: 'even', count: 1 }, across: { kind: 'at', at: [80, 800] } } as const;
    const [halt] = halts(POSTS, { struts, deck: null, drawers: [], shelves: [], flangeStrips: null });
    expect(halt).toMatchObject({ rule: 'leg-larger-than-corner', where: 'leg.front-left', figure: 70.8 });
    expect(halt?.mend).toContain('53.45 (3 layers)');
  });

  it('a bolt whose nut nobody reaches', () => {
    const struts = { along: { kind: 'at', at: [130, 550] }, across: { kind: 'even', count: 3 } } as const;
    const found = halts(POSTS, { struts, drawers: [], shelves: [], flangeStrips: null });
    expect(found.map(({ rule, where }) => [rule, where])).toEqual([
      ['bolt-without-nut-access', 'leg.front-left'],
      ['bolt-without-nut-access', 'leg.front-right'],
    ]);
    // 130 - 8.85 - 17.7 - 70.8
    expect(found[0]).toMatchObject({ figure: 32.65, limit: 40 });
  });

  it("a wheel's circle in a drawer: how high or how small it would have to be", () => {
    const wheel = { id: 'leg.a.caster', of: 'leg.a', kind: 'caster', min: [0, 0, 0], max: [200, 200, 150] } as const;
    const drawer = {
      id: 'drawer.b.pulled-out',
      of: 'drawer.b',
      kind: 'drawer',
      min: [180, -400, 120],
      max: [500, 450, 220],
    } as const;
    const [halt, ...more] = meetings([wheel, drawer]);
    expect(more).toEqual([]);
    expect(halt).toMatchObject({ rule: 'caster-hits', level: 'halt', where: 'leg.a', figure: 100, limit: 80 });
    expect(halt?.mend).toContainEqual({ length: 30, way: 'up' });
    expect(meetings([wheel, { ...drawer, min: [180, -400, 150] }])).toEqual([]);
  });

  it("two wheels' circles in each other", () => {
    const wide = { ...CASTER, swivelRadius: 600 };
    const found = halts({ ...POSTS, stand: { kind: 'caster', caster: wide, free: null } });
    expect(found.map(({ rule, where }) => [rule, where])).toEqual([
      ['caster-hits', 'leg.front-left'],
      ['caster-hits', 'leg.front-right'],
    ]);
    // posts stand 993.8 apart, so half of that
    expect(found[0]).toMatchObject({ figure: 600, limit: 496.9 });
  });

  it('no bolt long enough in stock: the length it takes', () => {
    const goods = { ...GOODS, hardware: GOODS.hardware.filter(({ id }) => id !== 'bolt-m8x110') };
    const found = model(fittedTable({}, { goods })).findings.filter(({ rule }) => rule === 'no-bolt-fits');
    // four legs want it, and it is told once
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ level: 'halt', figure: 88.5, limit: 101 });
    expect(spoken(found[0]?.what ?? [], String)).toBe(
      'the stock files have no bolt M8 with its nut and washer for a grip of 88.5 (4 places)',
    );
  });

  it('pages in inches: bolts of 5/16 in where stock has them, their holes and nuts too', () => {
    const [plain] = GOODS.hardware;
    const inch = (form: HardwareStock['form'], inches: number | null): HardwareStock => ({
      ...(plain ?? GOODS.hardware[0]),
      ...{ kind: 'hardware', name: '', source: '', price: null, pack: 1 },
      ...{ id: `${form}-5-16`, form, diameter: (5 * 25.4) / 16, length: inches === null ? null : inches * 25.4 },
    });
    const hardware = [...GOODS.hardware, inch('bolt', 4.5), inch('nut', null), inch('washer', null)];
    const bolts = (goods: typeof GOODS) =>
      model(fittedTable({}, { goods })).fasteners.filter((one) => one.form === 'bolt' && joinsPieces(one));
    expect(new Set(bolts({ ...GOODS, hardware, show: 'in' }).map(({ item }) => item))).toEqual(new Set(['bolt-5-16']));
    expect(new Set(bolts({ ...GOODS, hardware }).map(({ item }) => item))).toEqual(new Set(['bolt-m8x110']));
    expect(new Set(bolts({ ...GOODS, show: 'in' }).map(({ item }) => item))).toEqual(new Set(['bolt-m8x110']));
    const side = instance(model(fittedTable({}, { goods: { ...GOODS, hardware, show: 'in' } })), 'side.front').part;
    const holes = side.features.flatMap((one) => (one.kind === 'hole' ? [one.diameter] : []));
    expect(holes).toHaveLength(4);
    // 21/64 in, close fit for 5/16 in (ASME B18.2.8, from memory)
    for (const hole of holes) expect(hole).toBeCloseTo((21 * 25.4) / 64, 9);
  });

  it('a pad narrower than the plate, no height for legs', () => {
    expect(halts({ ...POSTS, width: 50 })).toMatchObject(Array(4).fill({ rule: 'pad-smaller-than-plate', limit: 60 }));
    const low = model({ ...fittedTable(), dimensions: { ...fittedTable().dimensions, height: 300 } });
    expect(low.findings.filter(({ rule }) => rule === 'no-height-for-legs')).toMatchObject(
      Array(4).fill({ level: 'halt', limit: 135.4 }),
    );
  });
});

describe('legs that are written wrong are faults at their place', () => {
  const faults = (legs: LegsInput) => {
    const result = frame(fittedTable({ legs }));
    return result.ok ? [] : result.faults.map(({ rule, at }) => [rule, at.replace('benchwork.benches.0.', '')]);
  };

  it('no width, half a layer, a foot wider than the leg, a role without material', () => {
    expect(faults({ ...ANGLES, width: null })).toEqual([['leg-width-missing', 'legs']]);
    expect(faults({ ...POSTS, layers: 2.5 })).toEqual([['leg-layers', 'legs.layers']]);
    expect(faults({ ...ANGLES, footWidth: 120 })).toEqual([['foot-width', 'legs.foot-width']]);
    expect(faults({ ...POSTS, material: 'oak' })).toEqual([['material-missing', 'legs.material']]);
  });
});

describe('brackets where pages show inches', () => {
  const [metric] = GOODS.hardware.filter(({ form }) => form === 'bracket');
  const inch = { ...(metric ?? GOODS.hardware[0]), id: 'bracket-1-1-2', length: 38.1 } as HardwareStock;
  const brackets = (show: 'mm' | 'in') => {
    const goods = { ...GOODS, hardware: [...GOODS.hardware, inch], show };
    return new Set(
      model(fittedTable({}, { goods }))
        .hardware.filter(({ item }) => item.startsWith('bracket'))
        .map(({ item }) => item),
    );
  };

  it('are those sold by the inch, their screws at shares of their own legs', () => {
    expect(brackets('mm')).toEqual(new Set(['bracket-40']));
    expect(brackets('in')).toEqual(new Set(['bracket-1-1-2']));
    const built = model(fittedTable({}, { goods: { ...GOODS, hardware: [...GOODS.hardware, inch], show: 'in' } }));
    const heads = built.fasteners.filter(({ through }) => through.join() === 'leg.front-left.layer-4');
    // a quarter and three quarters of 38.1 above the pad at 135.4
    expect([...new Set(heads.map(({ head }) => head[2]))]).toEqual([144.925, 163.975].map((z) => expect.closeTo(z, 9)));
  });
});
