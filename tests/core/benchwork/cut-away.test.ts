import { describe, expect, it } from 'vitest';
import { withoutCutAway } from '../../../src/core/benchwork/hardware/cut-away.ts';
import type { BenchworkModel } from '../../../src/core/benchwork/input.ts';
import type { Feature } from '../../../src/core/stock/part.ts';
import { model, TABLE } from './example.ts';
import { fittedTable } from './fitted.ts';

/** The first screw of a deck piece, and the model with a square of 30 cut out of that piece about its head. */
function cutAt(built: BenchworkModel, deck: string) {
  const screw = built.fasteners.find(({ through }) => through[0] === deck);
  if (screw === undefined) throw new Error('no screw');
  const parts = built.parts.map((part) => {
    const place = part.places.find(({ id }) => id === deck);
    if (place === undefined) return part;
    // a deck lies as its bench does
    const [x, y] = [screw.head[0] - place.pose.origin[0], screw.head[1] - place.pose.origin[1]];
    const corners = [
      [-15, -15],
      [15, -15],
      [15, 15],
      [-15, 15],
    ] as const;
    const outline = corners.map(([a, b]) => [x + a, y + b] as const);
    const hole: Feature = { id: 'planted', kind: 'cut-out', outline };
    return { ...part, features: [...part.features, hole] };
  });
  return { screw, cut: { ...built, parts } };
}

const countedAt = (built: BenchworkModel, where: string) =>
  built.hardware.filter((use) => use.where === where).reduce((sum, { quantity }) => sum + quantity, 0);

describe('screws where other chapters cut their piece away', () => {
  const built = model(fittedTable());

  it('are left out and counted no more', () => {
    const { screw, cut } = cutAt(built, 'deck.1');
    const left = withoutCutAway(cut, new Set(['deck.1']));
    expect(left.fasteners).toEqual(built.fasteners.filter((one) => one !== screw));
    expect(countedAt(left, 'deck.1')).toBe(countedAt(built, 'deck.1') - 1);
    expect(countedAt(left, 'deck.2')).toBe(countedAt(built, 'deck.2'));
  });

  it('are looked for only in pieces that are cut: all others stay as they are', () => {
    const { cut } = cutAt(built, 'deck.1');
    expect(withoutCutAway(cut, new Set())).toBe(cut);
    expect(withoutCutAway(built, new Set(['deck.1', 'side.front']))).toBe(built);
  });

  it('of one of two benches are not taken off the other', () => {
    const two = fittedTable();
    const [bench = TABLE] = two.benches;
    const next = { ...bench, id: 'annexe', at: 'benchwork.benches.1', place: { x: 3000, y: 0, turn: 0 } };
    const both = model({ ...two, benches: [bench, next] });
    const { cut } = cutAt(both, 'annexe.deck.1');
    const left = withoutCutAway(cut, new Set(['annexe.deck.1']));
    expect(countedAt(left, 'annexe.deck.1')).toBe(countedAt(both, 'annexe.deck.1') - 1);
    expect(countedAt(left, 'table.deck.1')).toBe(countedAt(both, 'table.deck.1'));
  });
});
