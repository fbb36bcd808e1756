import { describe, expect, it } from 'vitest';
import { freeAlong, reachFindings } from '../../../src/core/benchwork/hardware/reach.ts';
import type { Vector } from '../../../src/core/geometry/shapes.ts';
import type { Fastener } from '../../../src/core/stock/fastener.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { model } from './example.ts';
import { DRAWERS, fittedTable } from './fitted.ts';

const box = (id: string, min: Vector, max: Vector) => ({ id, box: { min, max } });

describe('room along a line', () => {
  const tool = { from: [0, 0, 0], way: [0, 1, 0], half: 6 } as const;

  it('ends at the nearest thing in a tool as wide as this, not at one beside or behind it', () => {
    const wall = box('wall', [-100, 80, -100], [100, 90, 100]);
    expect(freeAlong(tool, [wall], 200)).toEqual({ free: 80, before: 'wall' });
    expect(freeAlong(tool, [box('beside', [6, 10, -5], [20, 30, 5]), wall], 200)).toEqual({ free: 80, before: 'wall' });
    expect(freeAlong(tool, [box('near', [5.9, 10, -5], [20, 30, 5]), wall], 200)).toEqual({ free: 10, before: 'near' });
    expect(freeAlong(tool, [box('behind', [-9, -30, -9], [9, 0, 9])], 200)).toEqual({ free: 200, before: null });
  });
});

describe('a driver at screws', () => {
  const halts = (slides: number) =>
    model(fittedTable({ drawers: [{ ...DRAWERS, slides: { length: slides, clearance: 12.7 } }] })).findings.filter(
      ({ rule }) => rule === 'no-room-for-driver',
    );

  it('inside a box needs the screw and a stubby driver: 25 + 90 and 45 + 90 between front and back', () => {
    // a box 140 deep of 12 mm wood is 116 clear: the face's screws of 25 go in, the pull's of 45 do not
    expect(halts(140).map(({ where, figure, limit }) => [where, figure, limit])).toEqual([
      ['butt.drawer.front-2.face.drawer.front-2.pull', 116, 135],
      ['butt.drawer.front-3.face.drawer.front-3.pull', 116, 135],
    ]);
    const [first] = halts(140);
    expect(spoken(first?.mend ?? [], String)).toBe(
      'move drawer.front-2.back 19 away, or have a driver no longer than 71',
    );
    expect(halts(138)).toHaveLength(4);
    expect(halts(159)).toEqual([]);
  });
});

describe('a spanner at nuts', () => {
  const bolt: Fastener = {
    id: 'bolt.1',
    item: 'bolt-m8x60',
    form: 'bolt',
    holds: 'bolted.side.front.leg.front-left.layer-1',
    head: [50, 0, 40],
    direction: [0, 1, 0],
    diameter: 8,
    length: 60,
    through: ['side.front', 'leg.front-left.layer-1'],
  };
  const side = box('side.front', [0, 0, 0], [1000, 18, 100]);
  const layer = box('leg.front-left.layer-1', [18, 18, -300], [90, 36, 100]);
  const found = (...more: ReturnType<typeof box>[]) => reachFindings([bolt], [side, layer, ...more]);

  it('is measured from where the bolt leaves the last wood', () => {
    expect(found(box('strut.along-1', [0, 66, 0], [1000, 84, 100]))).toMatchObject([
      { rule: 'bolt-without-nut-access', level: 'halt', figure: 30, limit: 40 },
    ]);
    expect(found(box('strut.along-1', [0, 76, 0], [1000, 84, 100]))).toEqual([]);
  });

  it('is stopped by what is screwed into the bay, not by a deck or a drawer that comes later', () => {
    const stopped = (id: string) => found(box(id, [0, 40, 0], [1000, 60, 100])).length;
    expect([stopped('spacer.front-1-left'), stopped('shelf.front-1.cleat-left'), stopped('flange.along-1')]).toEqual([
      1, 1, 1,
    ]);
    expect([stopped('deck.1'), stopped('drawer.front-1.back'), stopped('shelf.front-1.panel')]).toEqual([0, 0, 0]);
  });
});
