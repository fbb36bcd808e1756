import { describe, expect, test } from 'vitest';
import { insideLoop } from '../../../src/core/scenery/distance.ts';
import type { Edge, Path } from '../../../src/core/scenery/land.ts';
import { sceneryModel } from '../../../src/core/scenery/scenery.ts';
import { partOutline } from '../../../src/core/stock/outline.ts';
import type { Part } from '../../../src/core/stock/part.ts';
import { around, bare, bench, foam, hill } from './table.ts';

const stock = { ...foam, id: 'ply-9', thickness: { ...foam.thickness, listed: 9 } };
const ask = (edge: Edge, on = 'table') => ({ id: `${on}-${edge}`, at: '', bench: on, edge, stock });
const boardsOf = ({ parts }: { readonly parts: readonly Part[] }) =>
  parts.filter(({ role }) => role === 'profile-board');

/** Height of a board over its lower edge, mm. */
function heightAt(part: Part, x: number): number {
  const loop = partOutline(part).outline;
  return loop.reduce((most, [ax, ay], i) => {
    const [bx, by] = loop[(i + 1) % loop.length] ?? [ax, ay];
    return ax > x === bx > x ? most : Math.max(most, ay + ((by - ay) * (x - ax)) / (bx - ax));
  }, 0);
}

describe('boards at the seam of two benches', () => {
  const right = { ...bench, id: 'right', place: { x: 1000, y: 0, turn: 0 } };
  const land = {
    ...bare,
    forms: [{ ...hill, top: [980, 300] as const, height: 90 }],
    boards: [ask('right'), ask('left', 'right')],
  };
  const benches = [bench, right];
  const pair = boardsOf(sceneryModel(land, { ...around, benches }));

  test('have one profile, each flush with its own bench, back to back', () => {
    expect(pair.map(({ id, bench: on }) => [id, on])).toEqual([
      ['board.table-right', 'table'],
      ['board.right-left', 'right'],
    ]);
    const [here, there] = pair;
    if (here === undefined || there === undefined) throw new Error('two boards stand at the seam');
    expect(there.blank).toEqual(here.blank);
    for (let x = 1; x < here.blank.length; x += 7) expect(heightAt(there, x)).toBeCloseTo(heightAt(here, x), 9);
    // faces meet in the seam: 991 to 1000 on one bench, 0 to 9 on the other
    expect([here.places[0]?.pose.origin[0], there.places[0]?.pose.origin[0]]).toEqual([991, 0]);
    expect(here.places[0]?.pose.origin[1]).toBe(there.places[0]?.pose.origin[1]);
  });

  test('with one of them missing, the other side is told by bench and edge', () => {
    const one = sceneryModel({ ...land, boards: [ask('right')] }, { ...around, benches });
    const told = one.findings.filter(({ rule }) => rule === 'hill-past-edge');
    expect(told).toHaveLength(1);
    const words = JSON.stringify([told[0]?.what, told[0]?.mend]);
    expect(words).toContain('high at the ","left"," edge of ","right"');
    expect(words).toContain('bench: right');
  });
});

describe('a line through a board', () => {
  const line: Path = {
    ...{ id: 'main', half: 20, slope: 2 / 3, free: [[0, 200]] },
    points: Array.from({ length: 51 }, (_, i) => ({ at: i * 20, x: i * 20, y: 300, z: 10 })),
  };
  const land = {
    ...bare,
    forms: [{ ...hill, top: [60, 300] as const, height: 120 }],
    boards: [ask('left')],
    tunnels: [{ id: 'bore', line: 'main', from: 0, to: 200, at: '' }],
  };
  const [board] = boardsOf(sceneryModel(land, { ...around, lines: [line] }));

  test('gets a mouth as wide as its formation and as high as a train', () => {
    const start = board?.places[0]?.pose.origin[1] ?? 0;
    const { outline, holes } = partOutline(
      board ?? { blank: { length: 1, width: 1, thickness: 1, grain: 'any' }, features: [] },
    );
    const solid = (y: number, z: number) =>
      insideLoop(outline, [y - start, z]) && !holes.some((hole) => insideLoop(hole, [y - start, z]));
    // free from 10 to 50 mm over the deck, 20 mm to both sides
    expect([solid(300, 5), solid(300, 11), solid(300, 49), solid(300, 52)]).toEqual([true, false, false, true]);
    expect([solid(281, 30), solid(319, 30), solid(279, 30), solid(321, 30)]).toEqual([false, false, true, true]);
  });

  test('is let alone where the ground is cut down to it', () => {
    const open = sceneryModel({ ...land, tunnels: [] }, { ...around, lines: [{ ...line, free: [] }] });
    expect(boardsOf(open).flatMap(({ features }) => features.filter(({ id }) => id.startsWith('mouth')))).toEqual([]);
  });
});
