import { describe, expect, it } from 'vitest';
import { groupsOf } from '../../../src/core/assembly/group.ts';
import { model } from '../benchwork/example.ts';
import { DRAWERS, fittedTable, POSTS, SHELVES } from '../benchwork/fitted.ts';
import { proved } from './proved.ts';
import { hitsOnPath } from './sampled.ts';

const input = fittedTable({ drawers: [DRAWERS], legs: POSTS, shelves: [SHELVES] });
const built = model(input);
const groups = groupsOf(built.parts.flatMap(({ places }) => places.map(({ id }) => id)));
const assembly = proved(input, built, { groups });
const order = assembly.poses.find(({ pose }) => pose === assembly.chosen)?.order ?? [];

describe('a table with drawers, legs and shelves', () => {
  it('goes together, and every drawer and leg as one, built before it goes in', () => {
    expect(assembly.findings.filter(({ level }) => level === 'halt')).toEqual([]);
    expect(assembly.chosen).toBe('upside-down');
    for (const { id, members } of groups) {
      const whole = order.findIndex(
        ({ parts, within }) =>
          within === null && parts.length === members.length && members.every((one) => parts.includes(one)),
      );
      const inside = order.flatMap(({ within }, i) => (within === id ? [i] : []));
      expect(whole).toBeGreaterThan(0);
      expect(inside).toHaveLength(members.length);
      expect(Math.max(...inside)).toBeLessThan(whole);
    }
  });

  it('takes its legs and strips on its back, then is turned once for the deck, drawers last and from the front', () => {
    const turned = order.findIndex(({ turn }) => turn);
    const before = order.slice(0, turned).flatMap(({ parts }) => parts);
    const after = order.slice(turned).flatMap(({ parts }) => parts);
    expect(before.some((id) => id.startsWith('leg.'))).toBe(true);
    expect(before.some((id) => id.startsWith('flange.'))).toBe(true);
    expect(after.some((id) => id.startsWith('leg.') || id.startsWith('flange.'))).toBe(false);
    expect(after).toContain('deck.1');
    const last = order.at(-1);
    expect(last?.parts.every((id) => id.startsWith('drawer.'))).toBe(true);
    expect(last?.direction).toEqual([0, 1, 0]);
    expect(order.filter(({ turn }) => turn)).toHaveLength(1);
  });

  it('closes every joint once, and glues legs and drawers on their own, with clamps that reach round them alone', () => {
    const closed = order.flatMap(({ joints }) => joints);
    expect([...closed].sort()).toEqual(built.joints.map(({ id }) => id).sort());
    const leg = assembly.stages.filter(({ parts }) => parts.every((id) => id.startsWith('leg.front-left.')));
    expect(leg.length).toBeGreaterThan(0);
    for (const { along, reach } of leg.flatMap(({ clamps }) => clamps)) expect(along === 'z' || reach < 150).toBe(true);
  });

  it('has a free path for every move of the bench, by samples taken with other code', () => {
    const own = order.filter(({ within }) => within === null);
    expect(hitsOnPath(built.parts, own, [0, 2, 40, 200, 900])).toEqual([]);
  });

  it('comes apart for a move at its bolts, the legs each in one piece', () => {
    expect(assembly.apart.loosened.every((id) => id.startsWith('bolted.'))).toBe(true);
    expect(assembly.apart.loosened).toHaveLength(4);
    const legs = assembly.apart.pieces.filter((piece) => piece.every((id) => id.startsWith('leg.')));
    expect(legs).toHaveLength(4);
    expect(assembly.apart.marks).toHaveLength(4);
  });

  it('lets a driver come to every screw', () => {
    expect(built.fasteners.length).toBeGreaterThan(50);
    expect(assembly.fastening).toHaveLength(built.fasteners.length);
    expect(assembly.fastening.filter(({ after }) => after === null)).toEqual([]);
  });
});
