import { fromWorld } from '../core/geometry/pose.ts';
import type { Point } from '../core/geometry/shapes.ts';
import { dot } from '../core/geometry/vector.ts';
import type { Fastener } from '../core/stock/fastener.ts';
import type { FaceSide, Part, Placement } from '../core/stock/part.ts';
import type { DrawingBook } from './book.ts';
import { isBored, letterOf, same } from './part-groups.ts';

/** Screws at one spot of a part: those of all its pieces that have one there. */
export type ScrewSpot = {
  readonly at: Point;
  readonly side: FaceSide;
  readonly ids: readonly string[];
  readonly labels: readonly string[];
  readonly item: string;
  readonly diameter: number;
  readonly purpose: string;
  /** the joint or the metal they hold, of the first of them */
  readonly holds: string;
};

/** Screws of one kind and purpose, told in one note. */
export type ScrewKind = {
  readonly letter: string;
  readonly spots: readonly ScrewSpot[];
  readonly line: 'x' | 'y' | null;
};

/** Whether a screw holds metal: a slide, a bracket or a caster. */
export const METAL = /(?:^|\.)(slide|bracket|caster)\./;

function purposeOf({ parts }: DrawingBook, { holds, through }: Fastener): string {
  const metal = METAL.exec(holds)?.[1];
  if (metal !== undefined && through.length === 1) return `for the ${metal}`;
  const last = parts.flatMap(({ places }) => places).find(({ id }) => id === through[through.length - 1]);
  return `into ${last?.label ?? ''}`;
}

/** A screw's head in the coordinates of the piece it is driven into first; null where the piece has a hole for it. */
function spotOf(
  book: DrawingBook,
  fastener: Fastener,
  { part, place }: { part: Part; place: Placement },
): ScrewSpot | null {
  const { pose } = place;
  const [x, y] = fromWorld(pose, fastener.head);
  const at: Point = [x, y];
  const isHole = part.features.some((one) => isBored(one) && Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) < same);
  if (isHole) return null;
  const side = dot(fastener.direction, pose.z) < 0 ? 'face' : 'back';
  const { item, diameter, holds, id } = fastener;
  const purpose = purposeOf(book, fastener);
  return { at, side, ids: [id], labels: [place.label], item, diameter, purpose, holds };
}

function isAlike(a: ScrewSpot, b: ScrewSpot): boolean {
  const near = Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) < same;
  return near && a.side === b.side && a.item === b.item && METAL.test(a.holds) === METAL.test(b.holds);
}

/** Where screws go into a part that has no holes for them, from its left end and its bottom edge. */
export function spotsOf(book: DrawingBook, part: Part): readonly ScrewSpot[] {
  const spots: ScrewSpot[] = [];
  for (const place of part.places) {
    for (const fastener of (book.fasteners ?? []).filter(({ through }) => through[0] === place.id)) {
      const spot = spotOf(book, fastener, { part, place });
      if (spot === null) continue;
      const index = spots.findIndex((one) => isAlike(one, spot));
      const before = spots[index];
      if (before === undefined) spots.push(spot);
      else spots[index] = { ...before, ids: [...before.ids, ...spot.ids], labels: [...before.labels, ...spot.labels] };
    }
  }
  return spots;
}

/** Values in their order, those that are the same once. */
export function distinct(values: readonly number[]): readonly number[] {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted.filter((one, i) => i === 0 || one - (sorted[i - 1] ?? one) > same);
}

/** As many positions as can be read beside a view; more of them stand in rows, told in the notes. */
const mostFigures = 16;

function grouped<T>(all: readonly T[], keyOf: (one: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const one of all) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return [...groups.values()];
}

/** The line that screws of one joint stand on: along x or y; null where they stand apart. */
function lineOf(spots: readonly ScrewSpot[]): ScrewKind['line'] {
  if (distinct(spots.map(({ at }) => at[1])).length === 1) return 'x';
  return distinct(spots.map(({ at }) => at[0])).length === 1 ? 'y' : null;
}

/** Screws gathered by what they hold and how: few with their figures beside the view, many in lettered rows. */
export function kindsOf(spots: readonly ScrewSpot[]): readonly ScrewKind[] {
  const axes = ([0, 1] as const).map((axis) => distinct(spots.map(({ at }) => at[axis])).length);
  const few = axes.reduce((sum, one) => sum + one, 0) <= mostFigures;
  const groups = few
    ? grouped(spots, ({ purpose, side, item, labels }) => [purpose, side, item, ...labels].join(' '))
    : grouped(spots, ({ holds, side, item, labels }) => [holds, side, item, ...labels].join(' '));
  return groups.map((own, i) => ({
    letter: groups.length === 1 && few ? '' : letterOf(i).toLowerCase(),
    spots: own,
    line: few ? null : lineOf(own),
  }));
}
