import { describe, expect, it } from 'vitest';
import type { Assembly, PoseName } from '../../../src/core/assembly/assembly.ts';
import { bodiesOf } from '../../../src/core/assembly/bodies.ts';
import { clampsFor } from '../../../src/core/assembly/clamps.ts';
import { USUAL_WORKSHOP } from '../../../src/core/assembly/workshop.ts';
import type { BenchworkModel } from '../../../src/core/benchwork/input.ts';
import type { Feature } from '../../../src/core/stock/part.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { model, table } from '../benchwork/example.ts';
import { proved } from './proved.ts';
import { hitsOnPath } from './sampled.ts';

const input = table([17.7]);
const built = model(input);
const assembly = proved(input, built);

function pose(of: Assembly, name: PoseName) {
  const found = of.poses.find((one) => one.pose === name);
  if (found === undefined) throw new Error(`no pose ${name}`);
  return found;
}

function text(sentence: Assembly['reason']): string {
  return spoken(sentence, (mm) => `${Math.round(mm * 10) / 10} mm`);
}

function changed(change: (feature: Feature, part: string) => Feature): BenchworkModel {
  const parts = built.parts.map((part) => ({ ...part, features: part.features.map((one) => change(one, part.id)) }));
  return { ...built, parts };
}

describe('a lapped grid of one along and three across', () => {
  it('goes together upright: across, along down onto them, ends along x, sides along y, strips from below, deck last', () => {
    const order = pose(assembly, 'upright').order.map(({ parts, direction }) => [parts.join(), direction.join()]);
    expect(order.slice(0, 8)).toEqual([
      ['strut.across-1', '0,0,-1'],
      ['strut.across-2', '0,0,-1'],
      ['strut.across-3', '0,0,-1'],
      ['strut.along-1', '0,0,-1'],
      ['end.left', '1,0,0'],
      ['end.right', '-1,0,0'],
      ['side.front', '0,1,0'],
      ['side.back', '0,-1,0'],
    ]);
    const later = order.slice(8);
    expect(later.slice(0, 7).every(([id, way]) => id?.startsWith('flange.') && way === '0,0,1')).toBe(true);
    expect(later.slice(7)).toEqual([
      ['deck.1', '0,0,-1'],
      ['deck.2', '0,0,-1'],
    ]);
  });

  it('hangs upright on 11 packers of 35: eight strut ends and three crossings', () => {
    const { packers, turns } = pose(assembly, 'upright');
    expect(packers.map(({ height }) => Math.round(height * 1e6) / 1e6)).toEqual(Array(11).fill(35));
    expect(packers.filter(({ where }) => where.endsWith(' end'))).toHaveLength(8);
    expect(packers.filter(({ where }) => where === 'crossing strut.along-1').map(({ part }) => part)).toEqual([
      'strut.across-1',
      'strut.across-2',
      'strut.across-3',
    ]);
    expect(turns).toBe(2);
  });

  it('needs none upside down, where the along strut lies first and the across go down onto it', () => {
    const { packers, turns, order } = pose(assembly, 'upside-down');
    expect(packers).toEqual([]);
    expect(turns).toBe(1);
    expect(order.slice(0, 2).map(({ parts, direction }) => [parts.join(), direction.join()])).toEqual([
      ['strut.along-1', '0,0,1'],
      ['strut.across-1', '0,0,1'],
    ]);
    expect(order.filter(({ turn }) => turn).map(({ parts }) => parts.join())).toEqual(['deck.1']);
  });

  it('is proposed upside down, and says why', () => {
    expect(assembly.chosen).toBe('upside-down');
    expect(text(assembly.reason)).toBe(
      'upside down takes no packers and one turning over; upright takes 11 packers of 35 mm and 2 turnings over',
    );
  });

  it('has a free path for every step, by samples taken with other code', () => {
    const steps = [0, 0.5, 3, 5.8, 20, 60, 100, 134, 200, 600, 1200];
    for (const { order } of assembly.poses) expect(hitsOnPath(built.parts, order, steps)).toEqual([]);
    const [first] = assembly.poses;
    const back = (first?.order ?? []).map((one) => ({ ...one, direction: [0, 1, 0] as const }));
    expect(hitsOnPath(built.parts, back, steps).length).toBeGreaterThan(0);
  });

  it('is square when both diagonals read the hypotenuse of its outside, from the front side on', () => {
    expect(assembly.squaring.diagonal).toBeCloseTo(Math.hypot(1600, 1100), 6);
    expect(assembly.squaring.edges.map(({ part }) => part)).toEqual([
      'side.front',
      'side.back',
      'end.left',
      'end.right',
    ]);
  });

  it('stands on no packers and is built upright when struts and sides are equally deep', () => {
    const flush = table([17.7], { strut: 170 }, { flangeStrips: null });
    const level = proved(flush, model(flush));
    expect(level.poses.map(({ packers }) => packers.length)).toEqual([0, 0]);
    expect(level.chosen).toBe('upright');
  });
});

describe('glue stages', () => {
  it('close within the open time, every glued joint once, and never across a turn', () => {
    const glued = built.joints.filter(({ held }) => held === 'glue').map(({ id }) => id);
    expect(assembly.stages.flatMap(({ joints }) => joints).sort()).toEqual([...glued].sort());
    expect(assembly.stages.every(({ minutes }) => minutes <= USUAL_WORKSHOP.openTime)).toBe(true);
    const frame = new Map(pose(assembly, 'upside-down').order.flatMap((one) => one.parts.map((id) => [id, one.frame])));
    for (const { parts } of assembly.stages) expect(new Set(parts.map((id) => frame.get(id))).size).toBe(1);
  });

  it('ask for a clamp over each strut and end along a side, and say which are missing', () => {
    const side = assembly.stages.find(({ parts }) => parts.join() === 'side.front');
    expect(side?.clamps).toEqual([
      {
        along: 'y',
        reach: expect.closeTo(1088.2, 1),
        count: 5,
        at: ['end.left', 'end.right', 'strut.across-1', 'strut.across-2', 'strut.across-3'],
      },
    ]);
    const short = proved(input, built, { workshop: { ...USUAL_WORKSHOP, clamps: [{ opening: 600, count: 8 }] } });
    const [missing] = short.findings.filter(({ rule }) => rule === 'clamps-missing');
    expect(missing?.level).toBe('care');
    expect(missing?.figure).toBe(0);
    expect(missing?.limit).toBe(5);
    // from end to end the outside length; across, the width less what the second side still covers, then the width
    expect(spoken(missing?.what ?? [], (mm) => String(Math.round(mm)))).toBe(
      'of the glue stages, stage 1 takes 1 that opens 1600, stage 2 takes 5 that open 1088 and stage 3 takes 5 that open 1100; the longest in hand opens 600',
    );
    expect(spoken(missing?.mend ?? [], (mm) => String(Math.round(mm)))).toMatch(
      /^borrow 1 that opens 1600 and 4 that open 1100,/,
    );
    const rich = proved(input, built, { workshop: { ...USUAL_WORKSHOP, clamps: [{ opening: 2000, count: 30 }] } });
    expect(rich.findings).toEqual([]);
  });

  it('take clamps 8 to 12 in apart and 1.5 to 2 in from the ends along a strip (a PVA maker’s guide)', () => {
    const placing = pose(assembly, 'upside-down').order.find(({ parts }) => parts.includes('flange.along-1'));
    if (placing === undefined) throw new Error('no strip');
    const joints = built.joints.filter(({ id }) => placing.joints.includes(id));
    const clamps = clampsFor([{ placing, joints, standing: bodiesOf(built.parts) }], USUAL_WORKSHOP);
    const count = clamps.reduce((sum, clamp) => sum + clamp.count, 0);
    const between = (1600 - 2 * 17.7 - 2 * 50.8) / (count - 1);
    expect(between).toBeGreaterThanOrEqual(8 * 25.4);
    expect(between).toBeLessThanOrEqual(12 * 25.4);
  });

  it('say when one side closes more joints than the glue waits for', () => {
    const slow = proved(input, built, { workshop: { ...USUAL_WORKSHOP, perJoint: 2 } });
    const late = slow.findings.filter(({ rule }) => rule === 'glue-closes-late');
    expect(late.map(({ where, figure, limit }) => [where, figure, limit])).toContainEqual(['side.front', 10, 5]);
  });
});

describe('what cannot go together', () => {
  it('stops at laps cut from the same side, with the place, and names both struts', () => {
    const same = changed((one, part) => {
      if (one.kind !== 'notch' || !part.startsWith('strut.along')) return one;
      const { patch } = one;
      return { ...one, edge: 'top', patch: { ...patch, y0: 135 - (patch.y1 - patch.y0), y1: 135 } };
    });
    const stuck = proved(input, same);
    const halts = stuck.findings.filter(({ level }) => level === 'halt');
    expect(stuck.chosen).toBeNull();
    expect(halts.map(({ rule }) => rule)).toEqual(
      expect.arrayContaining(['parts-overlap', 'joint-cannot-touch', 'no-straight-path']),
    );
    const knot = halts.find(({ rule }) => rule === 'no-straight-path');
    expect(text(knot?.what ?? [])).toContain('no straight path found; a tilt is not tried');
    expect(stuck.knots[0]?.parts).toHaveLength(2);
    expect(text(knot?.mend ?? [])).toMatch(/^leave one joint open/);
  });

  it('stops at a joint whose parts never meet', () => {
    const lost = {
      ...built,
      joints: [
        ...built.joints,
        {
          id: 'dado.end.left.deck.2',
          kind: 'dado',
          between: ['end.left', 'deck.2'],
          clearance: 0.3,
          relief: 0,
          held: 'glue',
        } as const,
      ],
    };
    const told = proved(input, lost).findings.filter(({ rule }) => rule === 'joint-cannot-touch');
    expect(told.map(({ where, level }) => [where, level])).toEqual([['dado.end.left.deck.2', 'halt']]);
  });

  it('stops at a square strut that meets round corners in its dado', () => {
    const round = changed((one) => (one.kind === 'stopped-dado' ? { ...one, corner: 3.175, relief: 0 } : one));
    expect(proved(input, round).findings.some(({ rule }) => rule === 'parts-overlap')).toBe(true);
  });
});
