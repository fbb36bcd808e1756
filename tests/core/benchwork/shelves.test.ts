import { describe, expect, it } from 'vitest';
import type { ShelvesInput } from '../../../src/core/benchwork/input.ts';
import { placedBox } from '../../../src/core/geometry/solid.ts';
import { joinsPieces } from '../../../src/core/stock/fastener.ts';
import { partSolid } from '../../../src/core/stock/solid.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { instance, model, TABLE } from './example.ts';
import { DRAWERS, fittedTable, POSTS, SHELVES } from './fitted.ts';

const halts = (shelves: Partial<ShelvesInput>) =>
  model(fittedTable({ shelves: [{ ...SHELVES, ...shelves }] }))
    .findings.filter(({ level }) => level === 'halt')
    .map(({ rule, where, limit, mend }) => ({ rule, where, limit, mend: spoken(mend, (mm) => `${mm}`) }));

describe('open shelves behind', () => {
  const built = model(fittedTable());
  const box = (id: string) => {
    const { part, place } = instance(built, id);
    return placedBox(partSolid(part), place.pose);
  };

  it('lie on cleats on both walls of the bay, with the clearance all round', () => {
    const [panel, left, right] = ['panel', 'cleat-left', 'cleat-right'].map((name) => box(`shelf.back-2.${name}`));
    expect(panel?.min[2]).toBeCloseTo(left?.max[2] ?? 0, 9);
    expect(left?.max[2]).toBeCloseTo(right?.max[2] ?? 0, 9);
    // bay 377.875 by 523.45, 0.3 each side
    expect((panel?.max[0] ?? 0) - (panel?.min[0] ?? 0)).toBeCloseTo(377.275, 9);
    expect((panel?.max[1] ?? 0) - (panel?.min[1] ?? 0)).toBeCloseTo(522.85, 9);
  });

  it('are reached through the side, opened from the shelf to the wood under the deck', () => {
    const [opening] = instance(built, 'side.back').part.features.filter(({ kind }) => kind === 'opening');
    expect(opening).toMatchObject({ patch: { y0: 64.2, y1: 140 } });
  });

  it('too low, too high, behind a leg', () => {
    expect(halts({ bays: [2], below: 120 })).toMatchObject([
      { rule: 'shelf-height', limit: 105.8, mend: 'put it 70 to 105.8 below' },
    ]);
    expect(halts({ bays: [2], below: 60 })).toMatchObject([{ rule: 'shelf-height' }]);
    expect(halts({ bays: [2], below: 80 })).toEqual([]);
    expect(halts({ bays: [1] })).toMatchObject([
      { rule: 'bay-taken', where: 'shelf.back-1', mend: 'free bays of this side: 2, 3' },
    ]);
  });
});

describe('a hand on a shelf (field case "Access from beneath", forum.trains.com: 2 in are too little)', () => {
  const cares = (shelves: Partial<ShelvesInput>) =>
    model(fittedTable({ shelves: [{ ...SHELVES, bays: [2], ...shelves }] }))
      .findings.filter(({ rule }) => rule === 'no-hand-room')
      .map(({ level, where, figure, limit, mend }) => [level, where, figure, limit, spoken(mend, (mm) => `${mm}`)]);

  it('has the opening above it, from the shelf to the wood under the deck', () => {
    // as low as it goes: 140 - 64.2 = 75.8; 80 below the deck: 80 - 30 = 50 of an opening
    expect(cares({})).toEqual([]);
    expect(cares({ below: 80 })).toEqual([['care', 'shelf.back-2', 50, 65, 'put it 95 to 105.8 below the deck']]);
    expect(cares({ below: 95 })).toEqual([]);
  });
});

describe('two benches with drawers and legs', () => {
  const annexe = { ...TABLE, id: 'annexe', at: 'benchwork.benches.1', place: { x: 1600, y: 0, turn: 0 } };
  const input = fittedTable();
  const both = model({ ...input, benches: [...input.benches, { ...annexe, drawers: [DRAWERS], legs: POSTS }] });

  it('keep their ids, labels, faces and hardware apart', () => {
    const face = instance(both, 'annexe.drawer.front-2.face').part;
    expect(face.from).toBe('annexe.side.front');
    const labels = both.parts.flatMap(({ places }) => places.map(({ label }) => label));
    expect(new Set(labels).size).toBe(labels.length);
    expect(both.hardware.filter(({ item }) => item === 'slide-450').map(({ where }) => where)).toEqual([
      'table.drawer.front-2',
      'table.drawer.front-3',
      'annexe.drawer.front-2',
      'annexe.drawer.front-3',
    ]);
    expect(both.envelopes.map(({ of }) => of)).toContain('annexe.leg.front-left');
    const ids = new Set(both.parts.flatMap(({ places }) => places.map(({ id }) => id)));
    expect(both.fasteners.flatMap(({ through }) => through).filter((id) => !ids.has(id))).toEqual([]);
    const joints = new Set(both.joints.map(({ id }) => id));
    const held = both.fasteners.filter(joinsPieces).map(({ holds }) => holds);
    expect(held.filter((joint) => !joints.has(joint))).toEqual([]);
  });
});
