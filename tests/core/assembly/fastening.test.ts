import { describe, expect, it } from 'vitest';
import type { Driving, Placing } from '../../../src/core/assembly/assembly.ts';
import { accessFindings, fasteningOrder, USUAL_TOOL } from '../../../src/core/assembly/fastening.ts';
import { inTheToolsWay } from '../../../src/core/assembly/tool-access.ts';
import type { Fastener } from '../../../src/core/stock/fastener.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { pieceOf } from './puzzle.ts';

const PLATE = pieceOf('plate', [
  [
    [0, 0, 0],
    [300, 300, 18],
  ],
]);
const RAIL = pieceOf('rail', [
  [
    [0, 0, -100],
    [300, 18, 0],
  ],
]);
const WALL = pieceOf('wall', [
  [
    [0, 40, 18],
    [300, 58, 200],
  ],
]);
const SCREW: Fastener = {
  id: 'screw-1',
  item: 'screw-4x40',
  form: 'screw',
  holds: 'plate',
  head: [150, 9, 18],
  direction: [0, 0, -1],
  diameter: 4,
  length: 40,
  through: ['plate', 'rail'],
};

function told(drivings: readonly Driving[], tool: typeof USUAL_TOOL | { radius: number; length: number }) {
  return accessFindings({ drivings, fasteners: [SCREW], tool, labels: new Map([['plate', 'P1']]) });
}

function move(part: string): Placing {
  return {
    parts: [part],
    direction: [0, 0, -1],
    with: [],
    joints: [],
    path: 'straight',
    legs: [],
    travel: 0,
    frame: 'upright',
    turn: false,
    within: null,
  };
}

describe('room for a tool', () => {
  it('is a cylinder behind the head: a wall 31 from the axis is clear of 25 and in the way of 32', () => {
    const at = { head: SCREW.head, direction: SCREW.direction, length: 200 };
    expect(inTheToolsWay({ ...at, radius: 25 }, [PLATE, RAIL, WALL])).toEqual([]);
    expect(inTheToolsWay({ ...at, radius: 32 }, [PLATE, RAIL, WALL])).toEqual(['wall']);
    expect(inTheToolsWay({ ...at, head: [150, 35, 18], radius: 25 }, [WALL])).toEqual(['wall']);
  });
});

describe('room that is had', () => {
  it('is measured up to what stands in the way, and told with what is needed', () => {
    const lid = pieceOf('lid', [
      [
        [100, 0, 98],
        [200, 30, 110],
      ],
    ]);
    const bodies = [RAIL, PLATE, lid];
    const order = [move('lid'), move('rail'), move('plate')];
    const [driving] = fasteningOrder({ fasteners: [SCREW], order, bodies, tool: USUAL_TOOL });
    // the head lies at 18, the lid's underside at 98
    expect(driving?.had).toBeGreaterThan(79.8);
    expect(driving?.had).toBeLessThanOrEqual(80);
    const [found] = told(driving === undefined ? [] : [driving], USUAL_TOOL);
    expect(found).toMatchObject({ rule: 'no-room-for-the-tool', where: 'lid', figure: driving?.had, limit: 150 });
    expect(spoken(found?.what ?? [], String)).toMatch(/behind the heads of 1 screw in P1 on plate up to lid;/);
  });
});

describe('the order of fastening', () => {
  const base = { fasteners: [SCREW], bodies: [RAIL, PLATE, WALL], tool: { radius: 40, length: 200 } };

  it('drives a screw once all it goes through stands and before what would close it off', () => {
    const order = [move('rail'), move('plate'), move('wall')];
    expect(fasteningOrder({ ...base, order })).toEqual([{ fastener: 'screw-1', after: 1, blockedBy: [] }]);
  });

  it('names what stands in the way when it went in first', () => {
    const drivings = fasteningOrder({ ...base, order: [move('wall'), move('rail'), move('plate')] });
    expect(drivings).toEqual([{ fastener: 'screw-1', after: null, blockedBy: ['wall'], had: 0 }]);
    const [found] = told(drivings, base.tool);
    expect(found?.level).toBe('care');
    expect(found?.where).toBe('wall');
    expect(found).toMatchObject({ figure: 0, limit: 200, unit: 'mm' });
    expect(
      told(
        fasteningOrder({ ...base, tool: USUAL_TOOL, order: [move('wall'), move('rail'), move('plate')] }),
        USUAL_TOOL,
      ),
    ).toEqual([]);
  });
});
