import { describe, expect, it } from 'vitest';
import type { Goods } from '../../../src/core/benchwork/goods.ts';
import type { BenchInput, BenchworkModel, DrawersInput, LegsInput } from '../../../src/core/benchwork/input.ts';
import type { CasterStock } from '../../../src/core/stock/goods.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { instance, model } from './example.ts';
import { CASTER, DRAWERS, fittedTable, GOODS, POSTS } from './fitted.ts';

const written = (one: CasterStock): LegsInput => ({ ...POSTS, stand: { kind: 'caster', caster: one, free: null } });
const HOLES: Goods = {
  ...GOODS,
  hardware: GOODS.hardware.map((one) => (one.form === 'insert' ? { ...one, hole: (one.diameter ?? 0) + 2.5 } : one)),
};

function built(bench: Partial<BenchInput>, goods: Goods = GOODS): BenchworkModel {
  return model(fittedTable(bench, { goods }));
}

function assumed({ findings }: BenchworkModel, rule: string): readonly string[] {
  return findings.filter((one) => one.rule === rule).map(({ level, what }) => `${level}: ${spoken(what, String)}`);
}

function holes(of: BenchworkModel, id: string): readonly number[] {
  const { features } = instance(of, id).part;
  return features.flatMap((one) => (one.kind === 'hole' ? [one.diameter] : []));
}

describe('what nobody wrote about legs is told with its figure, and can be written', () => {
  it('a plate and an insert', () => {
    const bare = built({ legs: written(CASTER) });
    expect(assumed(bare, 'legs-assumed')).toEqual([
      'note: not written, so assumed: the plate of caster-75 is 3 thick; an insert with a thread of M6 is screwed into a hole of 8',
    ]);
    expect(holes(bare, 'leg.front-left.pad-1')).toEqual([8, 8, 8, 8]);
    const all = built({ legs: written({ ...CASTER, plateThickness: 2.5 }) }, HOLES);
    expect(assumed(all, 'legs-assumed')).toEqual([]);
    expect(holes(all, 'leg.front-left.pad-1')).toEqual([8.5, 8.5, 8.5, 8.5]);
  });

  it('a stem: its thread chooses the insert and so the hole', () => {
    const stem: CasterStock = { ...CASTER, id: 'stem', mount: 'stem', overallHeight: 72, plate: null, bolts: null };
    const bare = built({ legs: written(stem) });
    expect(assumed(bare, 'legs-assumed')).toEqual([
      'note: not written, so assumed: the stem of stem has a thread of M8; stem needs 40 by 40 of its pad; an insert with a thread of M8 is screwed into a hole of 10',
    ]);
    const said = built({ legs: written({ ...stem, stem: 6, plate: [30, 30] }) }, HOLES);
    expect(assumed(said, 'legs-assumed')).toEqual([]);
    expect(holes(said, 'leg.front-left.pad-1')).toEqual([8.5]);
    expect(said.hardware.find(({ item, where }) => item === 'insert-m6' && where === 'leg.back-left')?.quantity).toBe(
      1,
    );
  });

  it('a thicker plate asks for a longer bolt, or a halt that says how long', () => {
    // M6 x 16 through 3 + 1.6 holds 11.4 in an insert of 15; through 9 + 1.6 only 5.4, less than its own diameter
    const thick = built({ legs: written({ ...CASTER, plateThickness: 9 }) });
    expect(thick.findings.filter(({ rule }) => rule === 'no-bolt-fits')).toMatchObject([{ limit: 25.6 }]);
  });

  it("an angle's foot", () => {
    const angle: LegsInput = { ...written({ ...CASTER, plateThickness: 3 }), form: 'angle', layers: 1, width: 110 };
    expect(assumed(built({ legs: angle }, HOLES), 'legs-assumed')).toEqual([
      'note: not written, so assumed: a half tapers from 110 to 82.5 at its foot',
    ]);
    expect(assumed(built({ legs: { ...angle, footWidth: 80 } }, HOLES), 'legs-assumed')).toEqual([]);
  });
});

describe('what nobody wrote about drawers is told once a set', () => {
  const told = (drawers: Partial<DrawersInput>) =>
    assumed(built({ drawers: [{ ...DRAWERS, ...drawers }] }), 'drawers-assumed');

  it('the room of slides, the bit, the wood beside openings', () => {
    expect(told({ unsaid: ['clearance', 'bit'] })).toEqual([
      'note: not written, so assumed: slides take 12.7 each side of a box; openings are cut with a bit of 6.35; openings leave 35 of the side below and 35 above',
    ]);
    expect(told({ unsaid: [], ligament: 35 })).toEqual([]);
    expect(told({ opening: 100 })).toEqual([]);
  });
});
