import { describe, expect, it } from 'vitest';
import { evaluateBenchwork } from '../../../src/core/benchwork/evaluate.ts';
import { materialThicknesses } from '../../../src/core/benchwork/materials.ts';
import { benchworkSchema } from '../../../src/core/benchwork/schema.ts';
import type { Stock } from '../../../src/core/stock/goods.ts';
import { quantityKit } from '../../../src/core/units/schema.ts';
import { PLY_9, PLY_18 } from './example.ts';
import { CASTER, GOODS } from './fitted.ts';

const STOCK: readonly Stock[] = [PLY_18, PLY_9, CASTER, ...GOODS.hardware, ...GOODS.covers];

function read(bench: Record<string, unknown>) {
  const chapter = benchworkSchema(quantityKit(null)).parse({
    dimensions: { length: '1600 mm', slide: '450 mm' },
    materials: { frame: 'birch-ply-18', deck: 'birch-ply-9' },
    benches: [{ id: 'table', construction: 'lapped-grid', ...bench }],
  });
  const thicknesses = materialThicknesses(chapter, { stock: STOCK, readings: {} });
  if (!thicknesses.ok) throw new Error('no thickness');
  const result = evaluateBenchwork(chapter, {
    scope: {},
    thicknesses: thicknesses.value,
    stock: STOCK,
    show: 'mm',
    bits: [6.35],
  });
  return {
    bench: result.ok ? result.value.benches[0] : undefined,
    goods: result.ok ? result.value.goods : undefined,
    faults: result.ok ? [] : result.faults.map(({ rule, at, mend }) => [rule, at, mend]),
  };
}

const SLIDES = { length: 'slide' };

describe('drawers, legs and shelves as written', () => {
  it('drawers: the bit in hand, half an inch a side, box from the frame and bottom from the deck unless said', () => {
    const { bench, goods } = read({ drawers: { side: 'front', bays: ['2', '3'], slides: SLIDES, faces: 'cut-out' } });
    expect(bench?.drawers).toEqual([
      {
        at: 'benchwork.benches.0.drawers',
        side: 'front',
        bays: [2, 3],
        slides: { length: 450, clearance: 12.7 },
        faces: 'cut-out',
        bit: 6.35,
        corners: 'rabbet',
        pull: 'bar',
        opening: null,
        ligament: null,
        material: 'frame',
        bottom: 'deck',
        unsaid: ['clearance'],
      },
    ]);
    expect(goods?.hardware).toHaveLength(GOODS.hardware.length);
  });

  it('gaps, each as it is written and null where it is not', () => {
    const gaps = { under: '5 mm', 'lift-out': '14 mm' };
    const { bench } = read({ drawers: { side: 'front', bays: ['2'], slides: SLIDES, faces: 'cut-out', gaps } });
    expect(bench?.drawers?.[0]?.gaps).toEqual({ under: 5, liftOut: 14, overlap: null });
  });

  it('several sets, each with its path', () => {
    const set = { side: 'front', bays: ['2'], slides: SLIDES, faces: 'overlaid' };
    const { bench } = read({ drawers: [set, { ...set, side: 'back', opening: '90 mm' }] });
    expect(bench?.drawers?.map(({ at, opening }) => [at, opening])).toEqual([
      ['benchwork.benches.0.drawers.0', null],
      ['benchwork.benches.0.drawers.1', 90],
    ]);
  });

  it('legs on casters, on feet, on the floor', () => {
    const post = { form: 'post', material: 'frame', layers: '4' };
    expect(read({ legs: { ...post, casters: { stock: 'caster-75', mount: 'plate' } } }).bench?.legs).toMatchObject({
      layers: 4,
      stand: { kind: 'caster', caster: { id: 'caster-75' }, free: null },
    });
    // half the thread of 40 is travel, and the foot's pad and half the travel are its height
    expect(read({ legs: { ...post, feet: { stock: 'foot-m8' } } }).bench?.legs?.stand).toMatchObject({
      travel: 20,
      height: 20,
    });
    expect(read({ legs: post }).bench?.legs?.stand).toEqual({ kind: 'floor' });
  });

  it('mistakes, each at its place with what would do', () => {
    const post = { form: 'post', material: 'frame', layers: '4' };
    const casters = (stock: string, mount: string) => read({ legs: { ...post, casters: { stock, mount } } }).faults;
    expect(casters('caster-57', 'plate')).toEqual([
      ['stock-unknown', 'benchwork.benches.0.legs.casters.stock', 'did you mean caster-75?'],
    ]);
    expect(casters('caster-75', 'stem')).toEqual([
      ['caster-mount', 'benchwork.benches.0.legs.casters.stock', 'write "mount: plate"'],
    ]);
    const both = { casters: { stock: 'caster-75', mount: 'plate' }, feet: { stock: 'foot-m8' } };
    expect(read({ legs: { ...post, ...both } }).faults).toMatchObject([
      ['legs-stand-twice', 'benchwork.benches.0.legs', 'take one of the two out'],
    ]);
    expect(read({ legs: { ...post, feet: { stock: 'nut-m8' } } }).faults).toEqual([
      ['stock-unknown', 'benchwork.benches.0.legs.feet.stock', 'use one of foot-m8'],
    ]);
  });
});
