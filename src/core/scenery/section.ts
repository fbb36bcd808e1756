import type { Point } from '../geometry/shapes.ts';
import { type Crossed, crossedBy } from './crossing.ts';
import { insideLoop } from './distance.ts';
import type { Field } from './field.ts';
import type { Path, Stretch, Water } from './land.ts';
import { simplifiedLine } from './simplified.ts';
import { piecesOf, placeOn, pointsBetween, type Way } from './way.ts';

/** A roadbed a section runs along or crosses: distance along the section and height of its underside; mm. */
export type SectionBed = { readonly line: string; readonly points: readonly Point[] };

/** Water a section crosses, from and to along it; mm. */
export type SectionWater = { readonly id: string; readonly from: number; readonly to: number };

/** A place of a section in plan; mm. */
export type SectionPlace = { readonly s: number; readonly x: number; readonly y: number };

/** A section through the ground: heights from deck top over the distance along it; mm. */
export type Section = {
  readonly id: string;
  /** the line of track it runs along; null for a straight cut */
  readonly line: string | null;
  readonly from: Point;
  readonly to: Point;
  /** the way it takes in plan, each place with its distance along the section */
  readonly way: readonly SectionPlace[];
  readonly heights: readonly Point[];
  readonly beds: readonly SectionBed[];
  /** loops of the room that trains keep free in tunnels */
  readonly bores: readonly (readonly Point[])[];
  readonly water: readonly SectionWater[];
};

/** What a section can meet; `train` is the height a tunnel keeps free over a roadbed, mm. */
export type Ground = {
  readonly field: Field;
  readonly paths: readonly Path[];
  readonly tunnels: readonly Stretch[];
  readonly water: readonly Pick<Water, 'id' | 'outline'>[];
  readonly train: number;
};

/** Points along a section are this far apart, mm, and its lines are drawn within this much of true. */
const STEP = 5;
const BY_EYE = 0.2;

/** The section along a way: its ground, the roadbeds and tunnels it meets, and the water it crosses. */
export function sectionAlong(way: Way, ground: Ground): Section {
  const start = way.points[0]?.at ?? 0;
  const places = way.points.map(({ at, x, y }) => ({ s: at - start, x, y }));
  const crossed = crossedBy(way, ground.paths);
  return {
    ...{ id: way.id, line: way.line, way: places, from: planeOf(places[0]), to: planeOf(places[places.length - 1]) },
    heights: groundAlong(way, ground.field),
    beds: [...ownBed(way), ...crossed.map(bedOf)],
    bores: ground.tunnels.flatMap((tunnel) => [
      ...ownBore(way, tunnel, ground.train),
      ...crossed.flatMap((one) => boreAcross(one, tunnel, ground.train)),
    ]),
    water: ground.water.flatMap((one) => waterSpans(way, one)),
  };
}

function planeOf(place: SectionPlace | undefined): Point {
  return place === undefined ? [0, 0] : [place.x, place.y];
}

/** The highest place stays when the line of the ground is thinned. */
function groundAlong(way: Way, field: Field): readonly Point[] {
  const heights = sampled(way).map(({ s, at: [x, y] }): Point => [s, Math.max(0, field(x, y))]);
  const peak = heights.reduce((best, [, h], i) => (h > (heights[best]?.[1] ?? 0) ? i : best), 0);
  const [rise, fall] = [heights.slice(0, peak + 1), heights.slice(peak)];
  return [...simplifiedLine(rise, BY_EYE), ...simplifiedLine(fall, BY_EYE).slice(1)];
}

function sampled(way: Way): readonly { readonly s: number; readonly at: Point }[] {
  return piecesOf(way).flatMap((piece, i) => {
    const count = Math.max(1, Math.ceil(piece.length / STEP));
    const stops = Array.from({ length: count + 1 }, (_, k) => k / count);
    return stops
      .slice(i === 0 ? 0 : 1)
      .map((share) => ({ s: piece.s + piece.length * share, at: placeOn(piece, share) }));
  });
}

function ownBed(way: Way): readonly SectionBed[] {
  if (way.line === null) return [];
  const start = way.points[0]?.at ?? 0;
  const points = way.points.map(({ at, z }): Point => [at - start, z]);
  return [{ line: way.line, points: simplifiedLine(points, BY_EYE / 10) }];
}

function bedOf({ path, s, z, half }: Crossed): SectionBed {
  return {
    line: path.id,
    points: [
      [s - half, z],
      [s + half, z],
    ],
  };
}

/** The room trains keep free where the section runs along their tunnel. */
function ownBore(way: Way, { line, from, to }: Stretch, train: number): readonly (readonly Point[])[] {
  if (way.line !== line) return [];
  const start = way.points[0]?.at ?? 0;
  const stretch = pointsBetween(way.points, [Math.min(from, to), Math.max(from, to)]);
  const floor = stretch.map(({ at, z }): Point => [at - start, z]);
  return floor.length < 2 ? [] : [[...floor, ...floor.toReversed().map(([s, z]): Point => [s, z + train])]];
}

function boreAcross({ path, at, s, z, half }: Crossed, { line, from, to }: Stretch, train: number) {
  if (path.id !== line || at < Math.min(from, to) || at > Math.max(from, to)) return [];
  const loop: readonly Point[] = [
    [s - half, z],
    [s + half, z],
    [s + half, z + train],
    [s - half, z + train],
  ];
  return [loop];
}

/** Where a way runs inside an outline, from and to along it. */
export function waterSpans(way: Way, { id, outline }: Pick<Water, 'id' | 'outline'>): readonly SectionWater[] {
  const loop = outline.map(([x, y], i) => ({ at: i, x, y, z: 0 }));
  const [first] = loop;
  if (first === undefined) return [];
  const bank = { id, points: [...loop, { ...first, at: loop.length }], half: 0, slope: 1, free: [] };
  const end = (way.points[way.points.length - 1]?.at ?? 0) - (way.points[0]?.at ?? 0);
  const stops = [0, ...crossedBy(way, [bank]).map(({ s }) => s), end].sort((a, b) => a - b);
  return stops.slice(1).flatMap((to, i) => {
    const from = stops[i] ?? to;
    return to - from > 1e-6 && insideLoop(outline, atDistance(way, (from + to) / 2)) ? [{ id, from, to }] : [];
  });
}

function atDistance(way: Way, s: number): Point {
  const piece = piecesOf(way).findLast((one) => one.s <= s);
  return piece === undefined ? [0, 0] : placeOn(piece, (s - piece.s) / piece.length);
}
