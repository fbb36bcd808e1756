import { toWorld } from '../geometry/pose.ts';
import type { Vector } from '../geometry/shapes.ts';
import type { Part, Placement } from '../stock/part.ts';
import type { Fix } from './record.ts';

/** The ends an author measures from, and which way each lies in the bench. */
const ENDS: Readonly<Record<string, readonly [axis: 0 | 1 | 2, sign: 1 | -1]>> = {
  left: [0, -1],
  right: [0, 1],
  front: [1, -1],
  back: [1, 1],
  foot: [2, -1],
  bottom: [2, -1],
  floor: [2, -1],
  top: [2, 1],
  head: [2, 1],
};

/** The word of `from` that names an end: `the left end`, `foot`. */
function endNamed(from: string | null): readonly [0 | 1 | 2, 1 | -1] | null {
  const word = (from ?? '').split(/[\s,-]+/).find((one) => Object.hasOwn(ENDS, one));
  return word === undefined ? null : (ENDS[word] ?? null);
}

/** Whether `from` names the end at the far side of the piece's own x axis. */
function fromFarEnd(place: Placement, from: string | null): boolean {
  const end = endNamed(from);
  if (end === null) return false;
  const [axis, sign] = end;
  return place.pose.x[axis] * sign > 0.5;
}

/**
 * Where a fix is in the bench, mm: so far along the piece from the end named, in the middle of its width and thickness.
 * Null when the part is gone, the place unknown, or off the piece.
 */
export function fixPlace(parts: readonly Part[], fix: Pick<Fix, 'part' | 'at' | 'from'>): Vector | null {
  const part = parts.find((one) => one.places.some(({ id }) => id === fix.part));
  const place = part?.places.find(({ id }) => id === fix.part);
  if (part === undefined || place === undefined || fix.at === null) return null;
  const { length, width, thickness } = part.blank;
  const along = fromFarEnd(place, fix.from) ? length - fix.at : fix.at;
  if (along < 0 || along > length) return null;
  return toWorld(place.pose, [along, width / 2, thickness / 2]);
}
