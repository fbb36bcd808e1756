import { describe, expect, it } from 'vitest';
import { layOutLines } from '../../../src/core/track/layout.ts';
import { radiusRooms } from '../../../src/core/track/radius-room.ts';
import { curve, from, line, oval, straight, track } from './example.ts';

const roadbed = { stock: 'cork-3', width: 25, thickness: 3, sheet: null };

describe('room for a larger radius', () => {
  it('the demo oval: to the edge of its deck, and the second radius follows', () => {
    const [first, ...more] = radiusRooms(oval());
    expect(more).toEqual([]);
    expect([first?.line, first?.piece, first?.radius]).toEqual(['main', 1, 380]);
    // 484 mm from the left edge less half the roadbed and half of what the easements add
    const k = 45 - 90 ** 3 / 240 / 427 ** 2;
    expect(first?.largest).toBe(Math.floor((484 - k - 12.5) * 10) / 10);
    expect([first?.stop?.kind, first?.stop?.line]).toEqual(['deck', 'main']);
    const after = first?.lines.find(({ id }) => id === 'main')?.unknowns.after;
    expect(after?.find(({ what }) => what === 'radius')?.value).toBeCloseTo(426.5, 6);
  });

  it('a half circle below another line: until their roadbeds touch', () => {
    const over = line('over', [straight(1200)], { from: from(-600, 700) });
    const turn = line('turn', [straight(10), curve('left', 300, 180)], { from: from(-10, 0) });
    const [room] = radiusRooms(track([over, turn], { roadbed }));
    // its far side lies 2 R above its start; arcs are compared as chords
    expect(Math.abs((room?.largest ?? 0) - (700 - 25) / 2)).toBeLessThan(0.15);
    expect(room?.stop).toMatchObject({ kind: 'line', line: 'over', other: 'turn' });
  });

  it('a bend between two straights that closing finds: until one of them is used up', () => {
    const goal = line('goal', [straight(100)], { from: from(500, 300, 90) });
    const bend = [straight('to close'), curve('left', 200, 90), straight('to close')];
    const [room] = radiusRooms(track([goal, line('bend', bend, { ends: 'goal.start' })], { roadbed }));
    // the straights are 500 - R and 300 - R
    expect(room?.largest).toBeGreaterThanOrEqual(299.9);
    expect(room?.largest).toBeLessThanOrEqual(300);
    expect(room?.stop).toEqual({ kind: 'closing', line: 'bend' });
    const [one, other] = room?.lines.find(({ id }) => id === 'bend')?.unknowns.after ?? [];
    expect((one?.value ?? 0) - (other?.value ?? 0)).toBeCloseTo(200, 6);
  });

  it('nothing in its way: no largest, and nothing stops it', () => {
    const [room] = radiusRooms(track([line('free', [curve('left', 300, 90)])], { roadbed }));
    expect([room?.largest, room?.stop, room?.lines]).toEqual([null, null, []]);
  });

  it('a radius that is too large as written: the largest smaller one', () => {
    const [room] = radiusRooms(oval({ radius: 440 }));
    expect([room?.radius, room?.largest, room?.stop?.kind]).toEqual([440, 426.5, 'deck']);
  });

  it('ready-made pieces and found radii are left as they are', () => {
    const pieces = [curve('left', 300, 30, { times: 12 })];
    expect(radiusRooms(track([line('ring', pieces)], { roadbed }))).toEqual([]);
    expect(layOutLines(oval()).lines.find(({ id }) => id === 'main')?.unknowns).toHaveLength(2);
  });
});
