import { placedBox } from '../../geometry/solid.ts';
import type { Part } from '../../stock/part.ts';
import { partSolid } from '../../stock/solid.ts';
import { length, type Sentence, say } from '../../units/say.ts';
import type { Kit } from './assembling.ts';
import { grouped, tenth } from './words.ts';

/** Pieces at one height: their names, and their lower and upper edges above the underside of the frame's sides; mm. */
export type AtHeight = { readonly ids: readonly string[]; readonly low: number; readonly high: number };

/** Underside of the frame's sides above the floor, mm: what all heights in a bench are measured from. */
function undersideOf({ parts }: Kit): number {
  const sides = parts.filter((part) => part.role === 'side');
  const lows = sides.flatMap((part) => part.places.map(({ pose }) => placedBox(partSolid(part), pose).min[2]));
  return lows.length === 0 ? 0 : Math.min(...lows);
}

/** Pieces of these parts, those at one height together. */
export function heightsIn(kit: Kit, parts: readonly Part[]): readonly AtHeight[] {
  const datum = undersideOf(kit);
  const placed = parts.flatMap((part) =>
    part.places.map(({ id, pose }) => {
      const { min, max } = placedBox(partSolid(part), pose);
      return { id, low: min[2] - datum, high: max[2] - datum };
    }),
  );
  return grouped(placed, ({ low, high }) => `${tenth(low)} ${tenth(high)}`).flatMap((same) => {
    const [first] = same;
    return first === undefined ? [] : [{ ids: same.map(({ id }) => id), low: first.low, high: first.high }];
  });
}

/** Where spacers stand, measured up from the frame's underside. */
export function spacerHeights(kit: Kit): Sentence[] {
  const spacers = kit.parts.filter((part) => part.role === 'drawer-spacer');
  const long = spacers[0]?.blank.length ?? 0;
  return heightsIn(kit, spacers).map(
    ({ ids, low, high }) =>
      say`${ids.join(', ')}: from ${length(low)} to ${length(high)} above the underside of the side, ${length(long)} long, front end against the inside of the board with the opening.`,
  );
}

/** Where cleats stand and where the shelves on them come to. */
export function shelfHeights(kit: Kit): Sentence[] {
  const of = (role: string) => kit.parts.filter((part) => part.role === role);
  const cleats = heightsIn(kit, of('shelf-cleat')).map(
    ({ ids, low, high }) =>
      say`${ids.join(', ')}: from ${length(low)} to ${length(high)} above the underside of the side.`,
  );
  const tops = heightsIn(kit, of('shelf')).map(
    ({ ids, high }) =>
      say`${ids.join(', ')}: the top comes to ${length(high)} above it, level with the lower edge of the opening.`,
  );
  return [...cleats, ...tops];
}

/** The line that slides are screwed along, on the spacers and on the boxes. */
export function slideHeights(kit: Kit): Sentence[] {
  return heightsIn(
    kit,
    kit.parts.filter((part) => part.role === 'drawer-side'),
  ).map(({ ids, low, high }) => {
    const boxes = [...new Set(ids.map((id) => id.replace(/\.side-(?:left|right)$/, '')))];
    return say`${boxes.join(', ')}: the middle of the slides is ${length((low + high) / 2)} above the underside of the side; draw that line on both spacers, and on the box ${length((high - low) / 2)} above its lower edge, which is at ${length(low)}.`;
  });
}
