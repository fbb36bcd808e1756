import type { Box, Pose, Vector } from '../../geometry/shapes.ts';
import type { Joint } from '../../stock/part.ts';
import type { Goods } from '../goods.ts';
import { tidy } from '../machining.ts';
import { type Driven, screwed } from './driven.ts';

/** At most this far apart, and this far from an end; common practice, no source. mm. */
export const DECK_SPACING = 150;
const FROM_END = 40;

const BENCH: Pose = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

type Placed = { readonly id: string; readonly box: Box };

/** Screws down through a deck piece along what bears it, for every joint of the deck that screws hold. */
export function deckScrews(goods: Goods | null, joints: readonly Joint[], boxes: readonly Placed[]): readonly Driven[] {
  const by = new Map(boxes.map(({ id, box }) => [id, box]));
  return joints.flatMap((joint) => {
    const [low, deck] = joint.between.map((id) => by.get(id));
    if (joint.kind !== 'bearing' || joint.held !== 'screws' || low === undefined || deck === undefined) return [];
    const heads = along(low, deck);
    const wood = { through: tidy(deck.max[2] - deck.min[2]), into: tidy(low.max[2] - low.min[2]) };
    const through = [joint.between[1], joint.between[0]];
    return [screwed(goods, { view: BENCH, holds: joint.id, heads, direction: [0, 0, -1], through }, wood)];
  });
}

/** Heads along the middle of the contact, from one end to the other. */
function along(a: Box, b: Box): readonly Vector[] {
  const low = (i: 0 | 1) => Math.max(a.min[i], b.min[i]);
  const high = (i: 0 | 1) => Math.min(a.max[i], b.max[i]);
  const sizes = [high(0) - low(0), high(1) - low(1)] as const;
  const way = sizes[0] >= sizes[1] ? 0 : 1;
  const other = way === 0 ? 1 : 0;
  const middle = tidy((low(other) + high(other)) / 2);
  return spread(low(way), high(way)).map((at): Vector => (way === 0 ? [at, middle, b.max[2]] : [middle, at, b.max[2]]));
}

/** Places along a stretch, ends inset, at most a spacing apart; never fewer than two unless there is room for only one. */
export function spread(from: number, to: number): readonly number[] {
  const inset = Math.min(FROM_END, (to - from) / 4);
  const run = to - from - 2 * inset;
  if (to - from < FROM_END) return [tidy((from + to) / 2)];
  const gaps = Math.max(1, Math.ceil(tidy(run / DECK_SPACING)));
  return Array.from({ length: gaps + 1 }, (_, i) => tidy(from + inset + (i * run) / gaps));
}
