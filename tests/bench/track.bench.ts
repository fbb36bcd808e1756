import { expect, test } from 'vitest';
import type { TrackInput } from '../../src/core/track/input.ts';
import { layTrack } from '../../src/core/track/lay.ts';
import type { Piece } from '../../src/core/track/piece.ts';
import {
  COACH,
  curve,
  from,
  height,
  line,
  straight,
  tableGround,
  through,
  track,
  train,
  turnout,
} from '../core/track/example.ts';

/** Closed lines side by side, each of 2 turnouts and 10 pieces and more; nothing of one touches another. */
function yard(pieces: number): TrackInput {
  const each = 10;
  const count = Math.round(pieces / each);
  const turnouts = Array.from({ length: 2 * count }, (_, i) =>
    turnout(
      `W${i}`,
      { kind: 'frog', number: 6, hand: i % 2 === 0 ? 'left' : 'right' },
      { motor: { along: 40, across: 20, below: 45 } },
    ),
  );
  const lines = Array.from({ length: count }, (_, i) => {
    const half: readonly Piece[] = [
      straight(200 + i),
      through(`W${2 * i}`, 'points', 'straight'),
      straight(150),
      straight(80),
      curve('left', 300, 180, { easement: 60 }),
    ];
    const back: readonly Piece[] = [
      straight(120),
      straight(90),
      through(`W${2 * i + 1}`, 'points', 'straight'),
      straight('to close'),
      curve('left', 'to close', 180, { easement: 60 }),
    ];
    return line(`ring-${i}`, [...half, ...back], {
      from: from(400, 100 + 900 * i),
      heights: [height(400, 0), height(900, 10), height(1400, 10), height(1900, 0)],
      ends: `ring-${i}.start`,
    });
  });
  return track(lines, {
    turnouts,
    trains: [train('van'), COACH],
    roadbed: { stock: 'cork-3', width: 25, thickness: 3, sheet: { length: 1000, width: 500 } },
    ground: { ...tableGround() },
  });
}

/** Best of several runs, ms. */
function timed(input: TrackInput, runs: number): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    const { faults } = layTrack(input);
    if (faults.length > 0) throw new Error(faults[0]?.what ?? '');
    return performance.now() - start;
  });
  return Math.min(...times);
}

test('200 pieces and 40 turnouts, and how it grows', () => {
  const open = (pieces: number): TrackInput => ({ ...yard(pieces), ground: { benches: [], parts: [], envelopes: [] } });
  const rows = [50, 100, 200, 400, 800].map((pieces) => ({ pieces, turnouts: pieces / 5, ms: timed(open(pieces), 5) }));
  for (const { pieces, turnouts, ms } of rows)
    console.log(`${pieces} pieces, ${turnouts} turnouts: ${ms.toFixed(1)} ms`);
  const at = (pieces: number) => rows.find((row) => row.pieces === pieces)?.ms ?? Number.POSITIVE_INFINITY;
  console.log(`four times the pieces: ${(at(800) / at(200)).toFixed(1)} times the time`);
  // near to linear; a square law would give 16
  expect(at(800) / at(200)).toBeLessThan(10);
});

test('200 pieces over the demo table, its edges and motors held against them', () => {
  const ms = timed(yard(200), 3);
  console.log(`over a table: ${ms.toFixed(1)} ms`);
  expect(ms / timed(yard(50), 3)).toBeLessThan(16);
});
