import { type Element, placesHeading, stanceOn } from './element.ts';
import type { Stance } from './stretch.ts';

/** A named joint of a line: its distance from the start and where it lies; mm and radians. */
export type LineJoint = {
  readonly id: string;
  readonly at: number;
  readonly x: number;
  readonly y: number;
  readonly heading: number;
};

/** A value that closing found: the piece it belongs to, from 0. Lengths mm, turns radians. */
export type FoundValue = {
  readonly piece: number;
  readonly what: 'straight' | 'radius' | 'through';
  readonly value: number;
};

export type Extents = { readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number };

/** A line laid in plan; heights come after. */
export type LineWay = {
  readonly id: string;
  readonly at: string;
  readonly phase: 'now' | 'later';
  readonly elements: readonly Element[];
  readonly length: number;
  readonly joints: readonly LineJoint[];
  readonly unknowns: readonly FoundValue[];
  readonly start: Stance;
  readonly end: Stance;
  /** what its ends are joined to, as written: `main.start`, `W1.branch`, `open`, `buffer` */
  readonly from: string | null;
  readonly ends: string;
};

/** The element at a distance along the line, and how far into it. */
function elementAt({ elements }: Pick<LineWay, 'elements'>, at: number) {
  let [low, high] = [0, elements.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((elements[middle]?.from ?? 0) <= at) low = middle;
    else high = middle - 1;
  }
  const element = elements[low];
  return element === undefined ? null : { element, own: Math.min(element.length, Math.max(0, at - element.from)) };
}

/** Where a line is `at` mm from its start; before its start and beyond its end, those. Null for a line of nothing. */
export function stanceAlong(line: Pick<LineWay, 'elements'>, at: number): Stance | null {
  const found = elementAt(line, at);
  return found === null ? null : stanceOn(found.element, found.own);
}

/** The element a place along a line lies in. */
export function elementOf(line: Pick<LineWay, 'elements'>, at: number): Element | null {
  return elementAt(line, at)?.element ?? null;
}

/** Smallest and largest coordinates of a line's middle, mm; exact on arcs and easements. */
export function lineExtents({ elements }: Pick<LineWay, 'elements'>): Extents {
  const spots = elements.flatMap((element) =>
    [0, element.length, ...placesHeading(element, 0), ...placesHeading(element, Math.PI / 2)].map((own) =>
      stanceOn(element, own),
    ),
  );
  return spots.reduce<Extents>(
    ({ x0, x1, y0, y1 }, { x, y }) => ({
      x0: Math.min(x0, x),
      x1: Math.max(x1, x),
      y0: Math.min(y0, y),
      y1: Math.max(y1, y),
    }),
    {
      x0: Number.POSITIVE_INFINITY,
      x1: Number.NEGATIVE_INFINITY,
      y0: Number.POSITIVE_INFINITY,
      y1: Number.NEGATIVE_INFINITY,
    },
  );
}

/** A place on a line as a chapter writes it: from the start, or past a named joint; mm. */
export type PlaceOnLine = { readonly at: number } | { readonly past: string; readonly by: number };

/** Distance of a place from the line's start, mm; null where the line has no such joint or is shorter. */
export function distanceOf(line: Pick<LineWay, 'joints' | 'length'>, place: PlaceOnLine): number | null {
  const joint = 'past' in place ? line.joints.find(({ id }) => id === place.past) : undefined;
  const at = 'at' in place ? place.at : joint === undefined ? null : joint.at + place.by;
  return at === null || at < -1e-9 || at > line.length + 1e-9 ? null : at;
}
