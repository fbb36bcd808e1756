import { describe, expect, it } from 'vitest';
import { baysBehind, standingIn } from '../../../src/core/benchwork/drawers/bays.ts';
import { frame } from '../../../src/core/benchwork/frame.ts';
import { lappedGrid } from '../../../src/core/benchwork/grid.ts';
import type { BenchInput, DrawersInput } from '../../../src/core/benchwork/input.ts';
import { lotsOf } from '../../../src/core/cutting/lot.ts';
import { placedBox } from '../../../src/core/geometry/solid.ts';
import { joinsPieces } from '../../../src/core/stock/fastener.ts';
import type { HardwareStock } from '../../../src/core/stock/goods.ts';
import { partOutline } from '../../../src/core/stock/outline.ts';
import { partSolid } from '../../../src/core/stock/solid.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { cornerRadius, drawersClear, inWood, sampleOf, threadPoints } from '../../laws/fitting-laws.ts';
import { instance, model, PLY_9, PLY_18 } from './example.ts';
import { DRAWERS, fittedTable, GOODS, PLY_6, PLY_12, SHELVES } from './fitted.ts';

const built = model(fittedTable());
const box = (id: string) => {
  const { part, place } = instance(built, id);
  return placedBox(partSolid(part), place.pose);
};
const wide = (points: readonly (readonly [number, number])[], axis: 0 | 1) =>
  Math.max(...points.map((p) => p[axis])) - Math.min(...points.map((p) => p[axis]));

describe('drawers in the demo table', () => {
  it('each face is its opening less two bits, to 0.01, its corners less round by one', () => {
    const side = instance(built, 'side.front').part;
    const { holes } = partOutline(side);
    const openings = holes.filter((hole) => wide(hole, 0) > 100);
    expect(openings).toHaveLength(2);
    for (const opening of openings) {
      for (const name of ['drawer.front-2.face', 'drawer.front-3.face']) {
        const { outline } = partOutline(instance(built, name).part);
        expect(Math.abs(wide(opening, 0) - wide(outline, 0) - 12.7)).toBeLessThanOrEqual(0.01);
        expect(Math.abs(wide(opening, 1) - wide(outline, 1) - 12.7)).toBeLessThanOrEqual(0.01);
        expect(Math.abs(cornerRadius(opening) - cornerRadius(outline) - 6.35)).toBeLessThanOrEqual(0.01);
      }
    }
    expect(drawersClear(sampleOf(fittedTable(), built))).toEqual([]);
  });

  it('two faces are in the list and none in the cutting: they fall out of the side', () => {
    const face = instance(built, 'drawer.front-2.face').part;
    expect(face.from).toBe('side.front');
    expect(face.places).toHaveLength(2);
    const jobs = lotsOf(built.parts, [PLY_18, PLY_9, PLY_12, PLY_6]).flatMap(({ parts }) => parts.map(({ id }) => id));
    expect(jobs).toContain('drawer.front-2.side-left');
    expect(jobs).not.toContain('drawer.front-2.face');
  });

  it('each hole is marked with its face and each face with its side', () => {
    const texts = (id: string) => instance(built, id).place.marks.map(({ text }) => text);
    expect(texts('side.front')).toEqual(expect.arrayContaining(['DR2F', 'DR3F']));
    expect(texts('drawer.front-3.face')).toContain('S1');
  });

  it('the box fits its slides between spacers flush with the opening', () => {
    // bay 377.875; two spacers of 17.7 leave an opening of 342.475; slides of 12.7 a side leave 317.075
    const [left, right] = [box('drawer.front-2.side-left'), box('drawer.front-2.side-right')];
    expect(right.max[0] - left.min[0]).toBeCloseTo(317.075, 9);
    const spacer = box('spacer.front-2-left');
    expect(left.min[0] - spacer.max[0]).toBeCloseTo(12.7, 9);
    expect(left.max[1] - left.min[1]).toBeCloseTo(450, 9);
    expect(left.min[1]).toBeCloseTo(17.7, 9);
  });

  it('pulls out by the length of its slides', () => {
    const space = built.envelopes.find(({ id }) => id === 'drawer.front-2.pulled-out');
    expect(space).toMatchObject({ of: 'drawer.front-2', kind: 'drawer' });
    expect(space?.min[1]).toBeCloseTo(-480, 9);
    expect(space?.max[1]).toBeCloseTo(467.7, 9);
  });

  it("each pull's screws have wood all round in the bar: above the finger groove and behind the slope", () => {
    const bodies = new Map(sampleOf(fittedTable(), built).bodies.map((body) => [body.id, body]));
    const screws = built.fasteners.filter(({ through }) => through.some((id) => id.endsWith('.pull')));
    expect(screws).toHaveLength(4);
    for (const screw of screws) {
      expect(screw.length).toBeLessThan(12 + 17.7 + 30);
      const pull = bodies.get(screw.through[2] ?? '');
      if (pull === undefined) throw new Error('no pull');
      const points = threadPoints(screw, pull);
      expect(points.length).toBeGreaterThan(20);
      expect(points.filter((point) => !inWood(pull, point))).toEqual([]);
    }
  });

  it('each screw is shorter than what it joins', () => {
    const thick = (id: string, axis: readonly number[]) => {
      const { min, max } = box(id);
      return [0, 1, 2].reduce((sum, i) => sum + Math.abs(axis[i] ?? 0) * ((max[i] ?? 0) - (min[i] ?? 0)), 0);
    };
    for (const { form, length, through, direction } of built.fasteners.filter(joinsPieces)) {
      const wood = through.reduce((sum, id) => sum + thick(id, direction), 0);
      if (form === 'screw') expect(length).toBeLessThan(wood);
      else expect(length).toBeGreaterThan(wood);
    }
  });

  it('screws its slides on near their ends and in the middle, at half the height of the box', () => {
    const [low, high] = [box('drawer.front-2.side-left').min, box('drawer.front-2.side-left').max];
    const at = (piece: string) => built.fasteners.filter(({ through }) => through.length === 1 && through[0] === piece);
    for (const piece of ['drawer.front-2.side-left', 'spacer.front-2-right']) {
      // from the inside of the board, 17.7 thick
      expect(at(piece).map(({ head }) => head[1] - 17.7)).toEqual([37, 225, 413].map((one) => expect.closeTo(one, 9)));
      for (const { head } of at(piece)) expect(head[2]).toBeCloseTo((low[2] + high[2]) / 2, 9);
    }
    // metal of 1.2 under the head
    for (const { head, direction } of at('drawer.front-2.side-left')) {
      expect(head[0]).toBeCloseTo(low[0] - 1.2, 9);
      expect(direction).toEqual([1, 0, 0]);
    }
  });

  it('counts slides, catches and screws by drawer', () => {
    const of = (where: string) =>
      built.hardware.filter((use) => use.where === where).map(({ item, quantity }) => `${quantity} ${item}`);
    expect(of('drawer.front-2')).toEqual([
      '1 catch',
      '6 screw-3.5x12',
      '6 screw-3.5x16',
      '4 screw-4x25',
      '2 screw-4x45',
      '1 slide-450',
    ]);
    expect(of('table')).toEqual(['3 sealer', '1 wood-glue']);
  });

  it('has no halt', () => {
    expect(built.findings.filter(({ level }) => level === 'halt')).toEqual([]);
  });
});

/** Findings of a table with these drawers, its dimensions changed. */
function found(
  drawers: Partial<DrawersInput>,
  bench: Partial<BenchInput> = {},
  dimensions: Readonly<Record<string, number>> = {},
) {
  const table = fittedTable({ drawers: [{ ...DRAWERS, ...drawers }], ...bench });
  return model({ ...table, dimensions: { ...table.dimensions, ...dimensions } }).findings;
}

/** Halts about openings. */
function openings(drawers: Partial<DrawersInput>, dimensions: Readonly<Record<string, number>> = {}) {
  return found(drawers, {}, dimensions).filter(({ rule }) => /^opening|^no-ligament/.test(rule));
}

/** Rule, figure, limit and mend of the halts of a table with these drawers, once each. */
function halts(...asked: Parameters<typeof found>) {
  return found(...asked)
    .filter(({ level }) => level === 'halt')
    .map(({ rule, where, figure, limit, mend }) => ({
      rule,
      where,
      figure,
      limit,
      mend: spoken(mend, (mm) => `${mm}`),
    }));
}

describe('drawers that cannot be made are halts with the most that can be had, and are left out', () => {
  it('an opening taller than the side', () => {
    const [halt] = halts({ bays: [2], opening: 180 });
    expect(halt).toMatchObject({ rule: 'opening-taller-than-side', where: 'drawer.front-2', figure: 180, limit: 105 });
    expect(halts({ bays: [2], opening: 105 })).toEqual([]);
  });

  it('no ligament', () => {
    const [halt] = halts({ bays: [2], opening: 130 });
    expect(halt).toMatchObject({
      rule: 'no-ligament',
      limit: 15,
      mend: 'make the opening at most 105, which leaves 30, or the sides at least 190 and the struts at least 160',
    });
    expect(halts({ bays: [2], opening: 105 })).toEqual([]);
    expect(halts({ bays: [2], opening: 130 }, {}, { side: 190, strut: 160 })).toEqual([]);
  });

  it('an opening that the side over the struts is too low for: how tall it is, and at most', () => {
    const [found] = openings({ bays: [2], opening: 148 });
    expect(spoken(found?.what ?? [], String)).toBe(
      'an opening 148 tall does not fit above the undersides of the struts, where the side is 135 tall',
    );
    expect(found).toMatchObject({ rule: 'opening-taller-than-side', figure: 148, limit: 105 });
  });

  it('ligaments that leave no opening, and the most that do', () => {
    const [found] = openings({ bays: [2], ligament: 90 });
    expect(spoken(found?.what ?? [], String)).toBe('90 of wood below and 90 above leave no opening in a side of 170');
    expect(spoken(found?.mend ?? [], String)).toBe('write a ligament of at most 53.5');
    expect(halts({ bays: [2], ligament: 53.5 })).toEqual([]);
    expect(halts({ bays: [2], ligament: 54 })).toHaveLength(1);
  });

  it('struts too shallow for any opening, and how deep they would be', () => {
    const shallow = openings({ bays: [2] }, { strut: 60 });
    expect(spoken(shallow[0]?.what ?? [], String)).toBe(
      '110 of wood below and 110 above leave no opening in a side of 170',
    );
    expect(spoken(shallow[0]?.mend ?? [], String)).toBe('make the struts at least 116.5');
    expect(openings({ bays: [2] }, { strut: 116.5 })).toEqual([]);
    expect(openings({ bays: [2] }, { strut: 116 })).toHaveLength(1);
  });

  it('slides longer than the bay: the longest in the stock files that fit, those of the measure that pages show', () => {
    const long = { bays: [2], slides: { length: 550, clearance: 12.7 } };
    const [plain] = GOODS.hardware;
    const slides = [450, 500, 550, 406.4, 457.2, 508].map(
      (mm) => ({ ...plain, id: `slide-${mm}`, form: 'slide', length: mm }) as HardwareStock,
    );
    const mend = (hardware: readonly HardwareStock[], show: 'mm' | 'in') => {
      const found = model(
        fittedTable({ drawers: [{ ...DRAWERS, ...long }] }, { goods: { ...GOODS, hardware, show } }),
      ).findings;
      return spoken(found.find(({ rule }) => rule === 'slides-longer-than-bay')?.mend ?? [], String);
    };
    const rest = GOODS.hardware.filter(({ form }) => form !== 'slide');
    expect(halts(long)[0]).toMatchObject({ rule: 'slides-longer-than-bay', figure: 550 });
    expect(mend([...rest, ...slides], 'mm')).toBe('use slides of 500, the longest in the stock files that fit');
    expect(mend([...rest, ...slides], 'in')).toBe('use slides of 508, the longest in the stock files that fit');
    expect(mend([...rest, ...slides.filter(({ length }) => length !== 508)], 'in')).toBe(
      'use slides of 457.2, the longest in the stock files that fit',
    );
    expect(mend([...rest, ...slides.slice(0, 1)], 'in')).toBe(
      'use slides of 450, the longest in the stock files that fit',
    );
    expect([mend(rest, 'mm'), mend(rest, 'in')]).toEqual([
      'use slides of 500, the longest that fit',
      'use slides of 508, the longest that fit',
    ]);
    expect(mend([...rest, ...slides.slice(2, 3)], 'mm')).toBe(
      'the shortest slide in the stock files is 550; choose a bay at least 552 deep',
    );
  });

  it('what stock lacks is told once, with how many are wanted and an entry that would do', () => {
    const hardware = GOODS.hardware.filter(({ form }) => form !== 'catch' && form !== 'insert');
    const found = model(fittedTable({}, { goods: { ...GOODS, hardware } })).findings.filter(
      ({ rule }) => rule === 'hardware-not-in-stock',
    );
    expect(found.map(({ what, figure }) => [spoken(what, String), figure])).toEqual([
      ['the stock files have no insert for a thread of M6, and 16 are wanted (4 places)', 16],
      ['the stock files have no catch, and 2 are wanted (2 places)', 2],
    ]);
    expect(spoken(found[0]?.mend ?? [], String)).toContain('form: insert, diameter: 6 mm, pack: 1 }');
  });

  it('screws of slides and brackets that stock lacks are told, not left out in silence', () => {
    const hardware = GOODS.hardware.filter(({ id }) => !id.startsWith('screw-3.5'));
    const built = model(fittedTable({}, { goods: { ...GOODS, hardware } }));
    const lacks = built.findings.filter(({ rule }) => rule === 'metal-screw-not-in-stock');
    expect(lacks.map(({ level, where }) => [level, where])).toEqual([
      ['care', 'leg.front-left'],
      ['care', 'drawer.front-2'],
      ['care', 'drawer.front-2'],
    ]);
    const all = model(fittedTable()).findings.filter(({ rule }) => rule === 'metal-screw-not-in-stock');
    expect(all).toEqual([]);
  });

  it('slides of 500 fit', () => {
    expect(
      halts({ bays: [2], slides: { length: 500, clearance: 12.7 } }).filter(({ rule }) => rule.startsWith('slides')),
    ).toEqual([]);
  });

  it('a drawer behind a leg, and the bays that are free', () => {
    const found = halts({ bays: [1, 2] });
    expect(found).toMatchObject([
      { rule: 'drawer-behind-leg', where: 'drawer.front-1', mend: 'free bays of this side: 2, 3' },
    ]);
  });

  it('two drawers in one bay, a shelf where a drawer runs', () => {
    const struts = { along: { kind: 'even', count: 0 }, across: { kind: 'even', count: 3 } } as const;
    const both = model(fittedTable({ struts, drawers: [DRAWERS, { ...DRAWERS, side: 'back' }], shelves: [] }));
    expect(both.findings.filter(({ rule }) => rule === 'bay-taken').map(({ where }) => where)).toEqual([
      'drawer.back-2',
      'drawer.back-3',
    ]);
    const shelf = model(fittedTable({ shelves: [{ ...SHELVES, side: 'front' }] }));
    expect(shelf.findings.filter(({ rule }) => rule === 'bay-taken')).toHaveLength(2);
  });

  it('a low side and a narrow bay', () => {
    expect(halts({ bays: [2], ligament: 60 })).toMatchObject([{ rule: 'opening-too-low', limit: 63 }]);
    const many = {
      struts: { along: { kind: 'even', count: 1 }, across: { kind: 'even', count: 12 } },
      flangeStrips: null,
    } as const;
    expect(halts({ bays: [3] }, { ...many, legs: null, shelves: [], deck: null })).toMatchObject([
      { rule: 'bay-too-narrow' },
    ]);
  });

  it('what is left out leaves no parts behind', () => {
    const none = model(fittedTable({ drawers: [{ ...DRAWERS, opening: 180 }] }));
    expect(none.parts.filter(({ id }) => id.startsWith('drawer') || id.startsWith('spacer'))).toEqual([]);
    expect(none.parts.find(({ id }) => id === 'side.front')?.features.filter(({ kind }) => kind === 'opening')).toEqual(
      [],
    );
  });
});

describe('clearances (field case "Have a fit or not", woodenthings.wordpress.com)', () => {
  const rules = (clearance: number) =>
    model(fittedTable({ drawers: [{ ...DRAWERS, slides: { length: 450, clearance } }] })).findings.filter(
      ({ where, level }) => where.startsWith('drawer') && level === 'care',
    );

  it('1/32 in a side on plain runners binds: take 1/32 more off each', () => {
    const [care] = rules(25.4 / 32);
    expect(care).toMatchObject({ rule: 'drawer-binds', level: 'care', limit: 25.4 / 16 });
    expect(care?.mend).toContainEqual({ length: 0.79375 });
    expect(rules(25.4 / 16).filter(({ rule }) => rule === 'drawer-binds')).toEqual([]);
  });

  it('slides take 1/2 in and 1/32 more, never less', () => {
    expect(rules(12.7 + 25.4 / 32)).toEqual([]);
    expect(rules(12.7 + 1)).toMatchObject([{ rule: 'slide-clearance-unusual' }]);
    expect(rules(12)).toMatchObject([{ rule: 'slide-clearance-unusual' }]);
  });
});

describe('gaps round a box and its face', () => {
  const gaps = { under: 5, liftOut: 14, overlap: null } as const;
  const found = (drawers: Partial<DrawersInput>) =>
    model(fittedTable({ drawers: [{ ...DRAWERS, ...drawers }] })).findings.filter(({ where }) =>
      where.startsWith('drawer'),
    );
  const rules = (drawers: Partial<DrawersInput>) =>
    found(drawers)
      .filter(({ level }) => level !== 'note')
      .map(({ rule, level, figure, limit }) => [rule, level, figure, limit]);

  it('are 6 below and 12 above unless they are written', () => {
    const tall = (input: Partial<DrawersInput>) => {
      const { part, place } = instance(
        model(fittedTable({ drawers: [{ ...DRAWERS, ...input }] })),
        'drawer.front-2.side-left',
      );
      const { min, max } = placedBox(partSolid(part), place.pose);
      return [min[2], max[2]];
    };
    const [low = 0, high = 0] = tall({});
    expect(tall({ gaps })).toEqual([low - 1, high - 2]);
  });

  it('that let a box drag or keep it in are told with the least', () => {
    expect(rules({ gaps })).toEqual([]);
    expect(rules({ gaps: { ...gaps, under: 2 } })).toEqual([['box-drags', 'care', 2, 3]]);
    expect(rules({ gaps: { ...gaps, liftOut: 9 } })).toEqual([['box-not-lifted-out', 'care', 9, 10]]);
    expect(rules({ gaps: { ...gaps, liftOut: 60 } })).toMatchObject([
      ['opening-too-low', 'halt', 100, 110],
      ['opening-too-low', 'halt', 100, 110],
    ]);
  });

  it('an overlaid face reaches as far as is written, and no further than half the wood between two openings', () => {
    const wide = (overlap: number) => {
      const over = model(fittedTable({ drawers: [{ ...DRAWERS, faces: 'overlaid', gaps: { ...gaps, overlap } }] }));
      return over.parts.find(({ id }) => id === 'drawer.front-2.face')?.blank.length;
    };
    expect(wide(20)).toBeCloseTo(342.475 + 40, 9);
    // a strut and two spacers of 17.7 less 3 between the faces: 25.05 each
    expect(rules({ faces: 'overlaid', gaps: { ...gaps, overlap: 26 } })).toEqual([
      ['face-overlap', 'halt', 26, 25.05],
      ['face-overlap', 'halt', 26, 25.05],
    ]);
  });

  it('an overlap of a face that is cut out is a fault, and so is a gap of nothing', () => {
    const faults = (drawers: Partial<DrawersInput>) => {
      const result = frame(fittedTable({ drawers: [{ ...DRAWERS, ...drawers }] }));
      return result.ok ? [] : result.faults.map(({ rule, at }) => [rule, at.replace('benchwork.benches.0.', '')]);
    };
    expect(faults({ gaps: { ...gaps, overlap: 10 } })).toEqual([['gap-unused', 'drawers.gaps.overlap']]);
    expect(faults({ gaps: { ...gaps, under: 0 } })).toEqual([['size-impossible', 'drawers.gaps.under']]);
    expect(faults({ gaps })).toEqual([]);
  });
});

describe('boxes of other make', () => {
  it('overlaid faces are blanks of their own, over the opening all round', () => {
    const over = model(fittedTable({ drawers: [{ ...DRAWERS, faces: 'overlaid' }] }));
    const { part, place } = instance(over, 'drawer.front-2.face');
    expect(part.from).toBeUndefined();
    expect(part.blank).toMatchObject({ length: 342.475 + 24, width: 124 });
    expect(placedBox(partSolid(part), place.pose).max[1]).toBeCloseTo(0, 9);
  });

  it('a back in dados stands its own thickness in from the end', () => {
    const dado = model(fittedTable({ drawers: [{ ...DRAWERS, corners: 'dado' }] }));
    const [back, side] = ['back', 'side-left'].map((name) => {
      const { part, place } = instance(dado, `drawer.front-2.${name}`);
      return placedBox(partSolid(part), place.pose);
    });
    expect((side?.max[1] ?? 0) - (back?.max[1] ?? 0)).toBeCloseTo(12, 9);
  });

  it('a bottom floats: 0.8 short of the floor of each groove', () => {
    const bottom = instance(built, 'drawer.front-2.bottom').part.blank;
    // inside 317.075 - 24, and two grooves of 6 less 1.6
    expect(bottom.length).toBeCloseTo(317.075 - 24 + 12 - 1.6, 9);
    expect(
      built.joints
        .filter(({ kind }) => kind === 'groove')
        .every(({ held, relief }) => held === 'loose' && relief === 0.8),
    ).toBe(true);
  });

  it('drawers in an end, counted from the left of whoever stands before it', () => {
    const ends = model(
      fittedTable({
        drawers: [{ ...DRAWERS, side: 'right', bays: [1, 2], slides: { length: 300, clearance: 12.7 } }],
        legs: null,
        shelves: [],
      }),
    );
    expect(ends.findings.filter(({ level }) => level === 'halt')).toEqual([]);
    expect(instance(ends, 'drawer.right-1.face').part.from).toBe('end.right');
  });
});

describe('a drawer cabinet under a layout (field cases "The web of death" and "Access from beneath")', () => {
  it('a motor that hangs in a bay is a clash with its drawer', () => {
    const input = fittedTable();
    const grid = input.benches[0] === undefined ? null : lappedGrid(input, input.benches[0]);
    const bay = grid === null ? undefined : baysBehind(grid, 'front')[1];
    const motor = { id: 'W1-motor', of: 'W1', kind: 'motor', min: [500, 200, 650], max: [540, 220, 690] } as const;
    expect(bay === undefined ? [] : standingIn(bay, [motor])).toHaveLength(1);
  });
});
