import { describe, expect, it } from 'vitest';
import { holds } from '../../../src/core/geometry/polygon.ts';
import { compute } from '../../../src/core/notebook.ts';
import type { Fastener } from '../../../src/core/stock/fastener.ts';
import { partOutline } from '../../../src/core/stock/outline.ts';
import type { Part } from '../../../src/core/stock/part.ts';
import { benchWalls } from '../../../src/core/wiring/bench-bays.ts';
import { bundleDiameter, throughDeck } from '../../../src/core/wiring/bundle.ts';
import { boardAt, deckBoards, fromLeftAndFront, takesHole } from '../../../src/core/wiring/deck-board.ts';
import type { DeckHole } from '../../../src/core/wiring/deck-holes.ts';
import { outlineOf } from '../../../src/core/wiring/routing/site.ts';
import { wiringModel } from '../../../src/core/wiring/wiring.ts';
import { changedPlan } from './changed-demo.ts';
import { table } from './tables.ts';

const answer = compute(changedPlan());
if (!answer.ok || answer.value.wiring === null) throw new Error('the demo notebook does not compute');
const book = answer.value;
const { deckHoles, wires } = answer.value.wiring;

/** Pairs that end above the deck without a hole of their number where they pass it. */
function holeless(holes: readonly DeckHole[]): readonly string[] {
  const [bench] = book.benches;
  return wires
    .filter(({ label }) => /[af]$/.test(label))
    .filter(({ label, path }) => {
      const up = path.find(([, , z]) => Math.abs(z - (bench?.deckTop ?? 0)) < 1e-6);
      if (up === undefined) return false;
      const mine = holes.filter((one) => one.label === label.replace('a', ''));
      return mine.length !== 1 || mine.some(({ place: [x, y] }) => Math.hypot(x - up[0], y - up[1]) > 1e-6);
    })
    .map(({ label }) => label);
}

/** Holes that meet a board on edge, or water, or a place where the deck has no wood. */
function bad(holes: readonly DeckHole[]): readonly string[] {
  const walls = benchWalls(book);
  return holes
    .filter(({ diameter, place: [x, y] }) => {
      const near = (low: number, high: number, at: number) => Math.max(low - at, 0, at - high);
      const met = walls.some((wall) => {
        const box = outlineOf(wall);
        return Math.hypot(near(...box.x, x), near(...box.y, y)) < diameter / 2;
      });
      const wet = (book.scenery?.water ?? []).some(({ outline }) => holds({ outline, holes: [] }, [x, y]));
      return met || wet;
    })
    .map(({ label }) => label);
}

describe('holes of thin wires through the deck', () => {
  it('each wire that comes up has its own, where its path passes the deck', () => {
    expect(deckHoles.length).toBe(12);
    expect(holeless(deckHoles)).toEqual([]);
    // planted faults: one lost, one moved
    expect(holeless(deckHoles.slice(1))).toEqual(['20a']);
    const moved = deckHoles.map((one, i) =>
      i === 2 ? { ...one, place: [one.place[0] + 1, one.place[1]] as const } : one,
    );
    expect(holeless(moved)).toEqual(['22a']);
  });

  it('are on a board of the deck, over no strut, not in water', () => {
    expect(deckHoles.filter(({ part }) => part === null)).toEqual([]);
    expect(bad(deckHoles)).toEqual([]);
    const strut = benchWalls(book).find(({ role }) => role === 'strut');
    if (strut === undefined) throw new Error('no strut');
    const { x, y } = outlineOf(strut);
    const middle = [(x[0] + x[1]) / 2, (y[0] + y[1]) / 2] as const;
    const [water] = book.scenery?.water ?? [];
    const corners = water?.outline ?? [];
    const wet = [0, 1].map((axis) => corners.reduce((sum, corner) => sum + (corner[axis] ?? 0), 0) / corners.length);
    const planted = [middle, [wet[0] ?? 0, wet[1] ?? 0] as const];
    expect(bad(planted.map((place, i) => ({ ...(deckHoles[i] as DeckHole), place })))).toEqual(['20', '21']);
  });

  it('are told from the left end and the front edge of the finished board', () => {
    const wrong = (holes: readonly DeckHole[]) =>
      holes.filter(({ at, part, place }) => {
        const owner = book.parts.find(({ places }) => places.some(({ id }) => id === part));
        const own = owner?.places.find(({ id }) => id === part);
        if (owner === undefined || own === undefined || at === null) return true;
        // the demo's bench stands on the notebook's axes
        const { origin, x, y } = own.pose;
        const corners = partOutline(owner).outline.map(([u, v]) => [
          origin[0] + x[0] * u + y[0] * v,
          origin[1] + x[1] * u + y[1] * v,
        ]);
        const low = [0, 1].map((axis) => Math.min(...corners.map((corner) => corner[axis] ?? 0)));
        return Math.hypot(place[0] - (low[0] ?? 0) - at[0], place[1] - (low[1] ?? 0) - at[1]) > 1e-6;
      });
    expect(wrong(deckHoles)).toEqual([]);
    expect(deckHoles.some(({ part }) => part === 'deck.2')).toBe(true);
    // planted fault: from the corner of the table
    expect(wrong(deckHoles.map((one) => ({ ...one, at: one.place }))).length).toBeGreaterThan(0);
  });

  it('take both wires and no more than the next drill', () => {
    for (const outside of [1.4, 1.8, 2.2, 2.6]) {
      const drill = throughDeck(2, outside, 'mm');
      expect(drill).toBeGreaterThanOrEqual(bundleDiameter(2, outside) + 0.5);
      expect(drill).toBeLessThanOrEqual(Math.max(5, 2 * outside + 2.5));
    }
    expect(deckHoles.map(({ diameter }) => diameter)).toEqual(deckHoles.map(() => 6));
  });
});

describe('wood round a hole through the deck', () => {
  const deck: Part = {
    ...{ id: 'deck.1', label: 'D1', role: 'deck', chapter: 'benchwork', bench: 'table', stock: 'ply', phase: 'now' },
    blank: { length: 1218, width: 818, thickness: 9, grain: 'length' },
    features: [{ id: 'slot', kind: 'opening', patch: { x0: 300, x1: 340, y0: 300, y1: 320 }, corner: 0 }],
    places: [
      { id: 'deck.1', label: 'D1', pose: { origin: [0, 0, 600], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] }, marks: [] },
    ],
    cutAfterMeasuring: false,
  };
  const screw: Fastener = {
    ...{ id: 's', item: 'screw', form: 'screw', holds: 'deck', diameter: 4, length: 30, through: ['deck.1'] },
    ...{ head: [700, 300, 609], direction: [0, 0, -1] },
  };
  const ground = { ...table.ground, parts: [...table.ground.parts, deck], fasteners: [screw] };
  const boards = deckBoards(ground);
  const takes = takesHole(boards, 6);

  it('is left to edges, cuts and screws', () => {
    expect(takes([400, 400])).toBe(true);
    // a slot's edge 15 off, its middle, and a board's edge
    expect([takes([358.1, 310]), takes([357.9, 310]), takes([320, 310]), takes([17, 400])]).toEqual([
      true,
      false,
      false,
      false,
    ]);
    expect([takes([708.1, 300]), takes([707.9, 300])]).toEqual([true, false]);
    expect(boardAt(boards, [320, 310])).toBe(null);
    expect(boards[0] === undefined ? null : fromLeftAndFront(boards[0], [358, 310])).toEqual([358, 310]);
  });

  it('moves a feeder along its line where a screw is, and says so', () => {
    const bare = wiringModel({ ...table, ground: { ...ground, fasteners: [] } });
    const [x, y] = bare.deckHoles[0]?.place ?? [0, 0];
    const there = { ...screw, head: [x, y, 609] as const };
    const moved = wiringModel({ ...table, ground: { ...ground, fasteners: [there] } });
    const [hole] = moved.deckHoles;
    expect(bare.deckHoles[0]?.moved).toBe(0);
    expect(Math.abs(hole?.moved ?? 0)).toBe(10);
    expect(Math.hypot((hole?.place[0] ?? x) - x, (hole?.place[1] ?? y) - y)).toBeCloseTo(10, 6);
  });
});
