import { expect, test } from 'vitest';
import type { Ground, TrackInput } from '../../src/core/track/input.ts';
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
  const rows = [50, 100, 200, 400, 800].map((pieces) => ({ pieces, turnouts: pieces / 5, ms: timed(yard(pieces), 5) }));
  for (const { pieces, turnouts, ms } of rows)
    console.log(`${pieces} pieces, ${turnouts} turnouts: ${ms.toFixed(1)} ms`);
  const at = (pieces: number) => rows.find((row) => row.pieces === pieces)?.ms ?? Number.POSITIVE_INFINITY;
  console.log(`four times the pieces: ${(at(800) / at(200)).toFixed(1)} times the time`);
  // near to linear; a square law would give 16
  expect(at(800) / at(200)).toBeLessThan(10);
});

/** The demo table's wood under one deck large enough for all rings. */
function hall(): Ground {
  const { benches, parts, envelopes } = tableGround();
  const [bench] = benches;
  const deck = parts.find(({ role }) => role === 'deck');
  if (bench === undefined || deck === undefined) throw new Error('no table');
  const large = {
    ...deck,
    features: [],
    blank: { ...deck.blank, length: 4000, width: 80_000 },
    places: deck.places
      .slice(0, 1)
      .map((place) => ({ ...place, pose: { ...place.pose, origin: [-1000, -1000, 690] as const } })),
  };
  return {
    benches: [{ ...bench, length: 4000, width: 80_000 }],
    parts: [...parts.filter(({ role }) => role !== 'deck'), large],
    envelopes,
  };
}

test('over a deck, its edges and motors held against it', () => {
  const ground = hall();
  const rows = [50, 200, 800].map((pieces) => ({ pieces, ms: timed({ ...yard(pieces), ground }, 3) }));
  for (const { pieces, ms } of rows) console.log(`${pieces} pieces over a deck: ${ms.toFixed(1)} ms`);
  expect((rows[2]?.ms ?? 0) / (rows[1]?.ms ?? 1)).toBeLessThan(10);
});

test('with most of it off a small table, the largest radius searched for every curve', () => {
  const ms = timed({ ...yard(200), ground: tableGround() }, 2);
  console.log(`200 pieces, most off the table: ${ms.toFixed(1)} ms`);
  expect(ms / timed({ ...yard(50), ground: tableGround() }, 2)).toBeLessThan(10);
});
