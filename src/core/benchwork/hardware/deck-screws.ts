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
    const others = boxes.filter(({ id, box }) => !joint.between.includes(id) && box.max[2] > low.max[2] - 1);
    const heads = along(low, deck).map((head) => clearOf(head, { low, others: others.map(({ box }) => box) }));
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

/** A screw keeps this far from a slot that a crossing strut stands in, mm. */
const FROM_SLOT = 10;

/** A head moved along its strut to the nearer side of whatever crosses there; one that has no such room stays. */
function clearOf(head: Vector, { low, others }: { readonly low: Box; readonly others: readonly Box[] }): Vector {
  const way = low.max[0] - low.min[0] >= low.max[1] - low.min[1] ? 0 : 1;
  const other = way === 0 ? 1 : 0;
  const crossing = others.find(
    ({ min, max }) =>
      min[other] < head[other] &&
      max[other] > head[other] &&
      min[2] < head[2] - FROM_SLOT &&
      min[way] - FROM_SLOT < head[way] &&
      max[way] + FROM_SLOT > head[way],
  );
  if (crossing === undefined) return head;
  const [before, after] = [tidy(crossing.min[way] - FROM_SLOT), tidy(crossing.max[way] + FROM_SLOT)];
  const nearer = head[way] - before < after - head[way] ? before : after;
  const place = nearer > low.min[way] && nearer < low.max[way] ? nearer : head[way];
  return way === 0 ? [place, head[1], head[2]] : [head[0], place, head[2]];
}

/** Places along a stretch, ends inset, at most a spacing apart; never fewer than two unless there is room for only one. */
export function spread(from: number, to: number): readonly number[] {
  const inset = Math.min(FROM_END, (to - from) / 4);
  const run = to - from - 2 * inset;
  if (to - from < FROM_END) return [tidy((from + to) / 2)];
  const gaps = Math.max(1, Math.ceil(tidy(run / DECK_SPACING)));
  return Array.from({ length: gaps + 1 }, (_, i) => tidy(from + inset + (i * run) / gaps));
}
