import { holds } from '../../geometry/polygon.ts';
import { fromWorld } from '../../geometry/pose.ts';
import type { Vector } from '../../geometry/shapes.ts';
import { plus, times } from '../../geometry/vector.ts';
import type { Fastener, HardwareUse } from '../../stock/fastener.ts';
import { partOutline } from '../../stock/outline.ts';
import type { Part } from '../../stock/part.ts';
import type { BenchworkModel } from '../input.ts';
import { groupOf } from './count.ts';

/** A hole is a screw's own when their middles are nearer than this, mm. */
const OWN_HOLE = 0.1;

/** Whether a piece has wood at a point of the bench, seen on its face; a screw's own hole counts as wood. */
function hasWood({ part, id }: { readonly part: Part; readonly id: string }, point: Vector): boolean {
  const pose = part.places.find((place) => place.id === id)?.pose;
  if (pose === undefined) return true;
  const [x, y] = fromWorld(pose, point);
  const bored = part.features.some(
    (feature) => feature.kind === 'hole' && Math.hypot(feature.at[0] - x, feature.at[1] - y) < OWN_HOLE,
  );
  return bored || holds(partOutline(part), [x, y]);
}

/** The model without screws where other chapters have cut away what they go through, and with so many fewer counted. */
export function withoutCutAway(model: BenchworkModel, cut: ReadonlySet<string>): BenchworkModel {
  const parts = model.parts.flatMap((part) => part.places.map(({ id }) => ({ part, id })));
  const byId = new Map(parts.filter(({ id }) => cut.has(id)).map((one) => [one.id, one]));
  const lost = model.fasteners.filter(({ form, through, head, direction, length }) => {
    if (form !== 'screw') return false;
    const [first, last] = [byId.get(through[0] ?? ''), byId.get(through[through.length - 1] ?? '')];
    const tip = plus(head, times(direction, length));
    return (first !== undefined && !hasWood(first, head)) || (last !== undefined && !hasWood(last, tip));
  });
  if (lost.length === 0) return model;
  const fasteners = model.fasteners.filter((one) => !lost.includes(one));
  return { ...model, fasteners, hardware: model.hardware.flatMap((use) => fewer(use, lost)) };
}

function fewer(use: HardwareUse, lost: readonly Fastener[]): readonly HardwareUse[] {
  const own = lost.filter(({ item, holds: joint }) => item === use.item && isAt(joint, use.where));
  const quantity = use.quantity - own.length;
  return quantity > 0 ? [{ ...use, quantity }] : [];
}

/** Whether what a screw holds is counted at a place; both bear their bench's name where there are several. */
function isAt(joint: string, where: string): boolean {
  const group = groupOf(joint);
  return where === group || (where.endsWith(`.${group}`) && joint.startsWith(where.slice(0, -group.length)));
}
