import type { Point } from '../geometry/shapes.ts';
import { pointsOn } from './element.ts';
import type { Layout } from './laid.ts';
import type { LineWay } from './line.ts';

/** A place on a line. */
export type OnLine = { readonly line: string; readonly at: number };

/** Two places in plan so near that trains would meet there, unless one runs high over the other; mm. */
export type Contact = {
  readonly a: OnLine;
  readonly b: OnLine;
  /** on one of the two */
  readonly point: Point;
  /** on the first and on the second */
  readonly places: readonly [Point, Point];
  readonly distance: number;
};

type Piece = {
  readonly line: LineWay;
  readonly from: number;
  readonly to: number;
  readonly a: Point;
  readonly b: Point;
};

const APART = 20;

/** Line pieces short enough to be compared as chords. */
function chords(line: LineWay, gauge: number): readonly Piece[] {
  return line.elements.flatMap((element) => {
    const points = pointsOn(element, { within: gauge / 50, apart: APART });
    return points.slice(1).flatMap((to, i): readonly Piece[] => {
      const from = points[i];
      return from === undefined ? [] : [{ line, from: from.at, to: to.at, a: from.point, b: to.point }];
    });
  });
}

/** Every pair of places nearer than a gauge in plan that are not neighbours along the track; the nearest of each meeting. */
export function contacts(layout: Layout, gauge: number): readonly Contact[] {
  return meetingsOf(nearPlaces(layout, gauge), gauge);
}

/** Every pair of short stretches that come nearer than `gauge` and are not neighbours along the track, each at its nearest. */
export function nearPlaces(layout: Layout, gauge: number): readonly Contact[] {
  const pieces = layout.lines.flatMap((line) => chords(line, gauge));
  const near = neighbours(layout, gauge);
  const found: Contact[] = [];
  for (const [one, other] of pairs(pieces, gauge)) {
    const touch = nearest(one, other);
    if (touch.distance >= gauge) continue;
    const a = placeOn(one, touch.s);
    const b = placeOn(other, touch.t);
    if (near(a, b)) continue;
    found.push(directed({ a, b, ...touched(one, other, touch) }));
  }
  return found;
}

/** Pairs of chords that share a cell of a grid, each pair once. */
function pairs(pieces: readonly Piece[], gauge: number): readonly (readonly [Piece, Piece])[] {
  const size = APART + gauge;
  const cells = new Map<string, number[]>();
  pieces.forEach(({ a, b }, i) => {
    const reach = (axis: 0 | 1) =>
      [
        Math.floor((Math.min(a[axis], b[axis]) - gauge / 2) / size),
        Math.floor((Math.max(a[axis], b[axis]) + gauge / 2) / size),
      ] as const;
    const [[x0, x1], [y0, y1]] = [reach(0), reach(1)];
    for (let x = x0; x <= x1; x += 1) {
      for (let y = y0; y <= y1; y += 1) {
        const key = `${x},${y}`;
        const cell = cells.get(key);
        if (cell === undefined) cells.set(key, [i]);
        else cell.push(i);
      }
    }
  });
  const seen = new Set<number>();
  const all: (readonly [Piece, Piece])[] = [];
  for (const cell of cells.values()) {
    for (const [k, i] of cell.entries()) {
      for (const j of cell.slice(k + 1)) {
        const key = i * pieces.length + j;
        const [one, other] = [pieces[i], pieces[j]];
        if (seen.has(key) || one === undefined || other === undefined) continue;
        seen.add(key);
        all.push([one, other]);
      }
    }
  }
  return all;
}

function placeOn({ line, from, to }: Piece, share: number): OnLine {
  return { line: line.id, at: from + share * (to - from) };
}

function touched(
  one: Piece,
  other: Piece,
  { s, t, point, distance }: Touch,
): Pick<Contact, 'point' | 'places' | 'distance'> {
  return { point, places: [along(one.a, one.b, s), along(other.a, other.b, t)], distance };
}

type Touch = { readonly s: number; readonly t: number; readonly point: Point; readonly distance: number };

function along(a: Point, b: Point, s: number): Point {
  return [a[0] + (b[0] - a[0]) * s, a[1] + (b[1] - a[1]) * s];
}

/** Nearest places of two chords: their crossing, or an end of one over the other. */
function nearest(one: Piece, other: Piece): Touch {
  const [ux, uy] = [one.b[0] - one.a[0], one.b[1] - one.a[1]];
  const [vx, vy] = [other.b[0] - other.a[0], other.b[1] - other.a[1]];
  const cross = ux * vy - uy * vx;
  const [wx, wy] = [other.a[0] - one.a[0], other.a[1] - one.a[1]];
  if (Math.abs(cross) > 1e-12) {
    const [s, t] = [(wx * vy - wy * vx) / cross, (wx * uy - wy * ux) / cross];
    if (s >= 0 && s <= 1 && t >= 0 && t <= 1) return { s, t, point: along(one.a, one.b, s), distance: 0 };
  }
  const ends: readonly Touch[] = [
    foot(one, other.a, 0),
    foot(one, other.b, 1),
    swapped(foot(other, one.a, 0)),
    swapped(foot(other, one.b, 1)),
  ];
  return ends.reduce((best, end) => (end.distance < best.distance ? end : best));
}

function foot({ a, b }: Piece, p: Point, t: number): Touch {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const size = ux * ux + uy * uy;
  const s = size === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * ux + (p[1] - a[1]) * uy) / size));
  const point = along(a, b, s);
  return { s, t, point, distance: Math.hypot(point[0] - p[0], point[1] - p[1]) };
}

function swapped({ s, t, ...rest }: Touch): Touch {
  return { s: t, t: s, ...rest };
}

/** Where lines belong together: stretches of lines at one turnout or at a joined end; mm from the start. */
type Junction = { readonly name: string; readonly line: string; readonly from: number; readonly to: number };

function junctions({ lines }: Layout): readonly Junction[] {
  return lines.flatMap((line): readonly Junction[] => {
    const within = line.elements.flatMap(({ turnout, from, length }): readonly Junction[] =>
      turnout === null ? [] : [{ name: turnout, line: line.id, from, to: from + length }],
    );
    const owner = (name: string) => name.split('.')[0] ?? name;
    const joined = (name: string, at: number): readonly Junction[] => [
      { name: owner(name), line: line.id, from: at, to: at },
      { name, line: line.id, from: at, to: at },
    ];
    return [
      ...within,
      { name: `${line.id}.start`, line: line.id, from: 0, to: 0 },
      { name: `${line.id}.end`, line: line.id, from: line.length, to: line.length },
      ...(line.from === null ? [] : joined(line.from, 0)),
      ...(line.ends === 'open' || line.ends === 'buffer' ? [] : joined(line.ends, line.length)),
    ];
  });
}

/** Whether two places are neighbours along the track, where nearness is no clash. */
function neighbours(layout: Layout, gauge: number): (a: OnLine, b: OnLine) => boolean {
  const all = junctions(layout);
  const margin = 6 * gauge;
  const at = ({ line, at: where }: OnLine) =>
    all
      .filter((one) => one.line === line && where > one.from - margin && where < one.to + margin)
      .map(({ name }) => name);
  return (a, b) => {
    if (a.line === b.line && Math.abs(a.at - b.at) < 2 * gauge) return true;
    const names = at(b);
    return names.length > 0 && at(a).some((name) => names.includes(name));
  };
}

/** Contacts that run on into each other are one meeting, told at its nearest place. */
export function meetingsOf<Found extends Contact>(found: readonly Found[], gauge: number): readonly Found[] {
  const reach = APART + 4 * gauge;
  const ordered = found.toSorted((p, q) => order(p, q));
  const groups: Found[][] = [];
  for (const contact of ordered) {
    const group = groups.findLast((one) => {
      const last = one[one.length - 1];
      return (
        last !== undefined &&
        sameLines(last, contact) &&
        Math.abs(last.a.at - contact.a.at) < reach &&
        Math.abs(last.b.at - contact.b.at) < reach
      );
    });
    if (group === undefined) groups.push([contact]);
    else group.push(contact);
  }
  return groups.flatMap((group) => group.toSorted((p, q) => p.distance - q.distance).slice(0, 1));
}

function directed(contact: Contact): Contact {
  const { a, b } = contact;
  return a.line < b.line || (a.line === b.line && a.at <= b.at)
    ? contact
    : { ...contact, a: b, b: a, places: [contact.places[1], contact.places[0]] };
}

function sameLines(p: Contact, q: Contact): boolean {
  return p.a.line === q.a.line && p.b.line === q.b.line;
}

function order(p: Contact, q: Contact): number {
  if (p.a.line !== q.a.line) return p.a.line < q.a.line ? -1 : 1;
  if (p.b.line !== q.b.line) return p.b.line < q.b.line ? -1 : 1;
  return p.a.at - q.a.at || p.b.at - q.b.at;
}
