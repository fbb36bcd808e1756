import { describe, expect, it } from 'vitest';
import type { Placing } from '../../../src/core/assembly/assembly.ts';
import { groupsOf } from '../../../src/core/assembly/group.ts';
import { pictureSteps } from '../../../src/core/assembly/picture-steps.ts';
import { joinsPieces } from '../../../src/core/stock/fastener.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { model } from '../benchwork/example.ts';
import { DRAWERS, fittedTable, POSTS, SHELVES } from '../benchwork/fitted.ts';
import { proved } from './proved.ts';
import { hitsOnPath } from './sampled.ts';

const input = fittedTable({ drawers: [DRAWERS], legs: POSTS, shelves: [SHELVES] });
const built = model(input);
const groups = groupsOf(built.parts.flatMap(({ places }) => places.map(({ id }) => id)));
const assembly = proved(input, built, { groups });
const order = assembly.poses.find(({ pose }) => pose === assembly.chosen)?.order ?? [];

const FIRST: Placing = {
  parts: [],
  direction: [0, 0, -1],
  with: [],
  joints: [],
  path: 'first',
  legs: [],
  travel: 0,
  frame: 'upright',
  turn: false,
  within: null,
};

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

  it('builds all its legs before the first of them goes in, one picture each and one for all going in', () => {
    const legs = order.filter(({ parts }) => parts.every((id) => id.startsWith('leg.')));
    const first = legs.findIndex(({ within }) => within === null);
    expect(legs.slice(first).map(({ within }) => within)).toEqual([null, null, null, null]);
    const pictures = pictureSteps(order).filter(({ parts }) => parts[0]?.startsWith('leg.'));
    expect(pictures.map(({ within }) => within?.replace(/\..*/, '') ?? null)).toEqual([
      'leg',
      'leg',
      'leg',
      'leg',
      null,
    ]);
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
    // four layers of 17.7 glued two by two, then two pads of 17.7 under them, to the top of a leg that stands on 100 of caster
    const layers = leg.flatMap(({ clamps }) => clamps.filter(({ along }) => along === 'y'));
    expect(layers.map(({ reach }) => Math.round(reach * 10) / 10)).toEqual([2 * 17.7, 4 * 17.7]);
    // 555.4 of layer: ends 50.8 free, no more than 304.8 between
    expect(layers.map(({ count }) => count)).toEqual([3, 3]);
    const ends = leg.flatMap(({ clamps }) => clamps.filter(({ along }) => along === 'z'));
    expect(ends.map(({ reach }) => Math.round(reach * 10) / 10)).toEqual([690.8 - 100, 690.8 - 100]);
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
    const drawers = assembly.apart.pieces.filter((piece) => piece.every((id) => id.startsWith('drawer.')));
    // a bottom that floats in its grooves stays in its box
    expect(drawers.map((piece) => piece.length)).toEqual([7, 7]);
    // two bolts a leg: a number for each of eight holes
    const marks = assembly.apart.marks.map((mark) => spoken(mark, String));
    expect(marks[0]).toMatch(/^Write 1 and 2, each beside its hole, on S1 and likewise on P1A/);
    expect(marks[3]).toMatch(/^Write 7 and 8/);
  });

  it('lets go of its drawers, then on its back of its legs, each on a free path by samples; shelves stay under the deck', () => {
    const { off, pieces } = assembly.apart;
    expect(off).toHaveLength(6);
    expect(off.map(({ turn }) => turn)).toEqual([false, false, true, false, false, false]);
    expect(off.flatMap(({ loosened }) => loosened).sort()).toEqual([...assembly.apart.loosened].sort());
    expect(pieces[0]).toContain('shelf.back-2.panel');
    const back = [...off].reverse().map(({ parts, direction }): Placing => {
      const [x, y, z] = direction;
      const way = [0 - x, 0 - y, 0 - z] as const;
      return { ...FIRST, parts, direction: way, path: 'straight', legs: [{ direction: way, distance: null }] };
    });
    expect(hitsOnPath(built.parts, [{ ...FIRST, parts: pieces[0] ?? [] }, ...back], [0, 2, 40, 200, 900])).toEqual([]);
  });

  it('names in a glue stage only what is glued in it', () => {
    const strips = assembly.stages.filter(({ joints }) => joints.some((id) => id.includes('flange.')));
    expect(strips.length).toBeGreaterThan(0);
    for (const { parts } of strips) expect(parts.filter((id) => id.startsWith('leg.'))).toEqual([]);
    const box = assembly.stages.find(({ parts }) => parts.includes('drawer.front-2.bottom'));
    expect(box?.parts).not.toContain('drawer.front-2.face');
  });

  it('lets a driver come to every screw', () => {
    const joining = built.fasteners.filter(joinsPieces);
    expect(joining.length).toBeGreaterThan(50);
    expect(assembly.fastening).toHaveLength(joining.length);
    expect(assembly.fastening.filter(({ after }) => after === null)).toEqual([]);
  });
});
