import { union } from '../geometry/booleans.ts';
import { holds } from '../geometry/polygon.ts';
import { standing, toWorld } from '../geometry/pose.ts';
import type { Point, Polygon } from '../geometry/shapes.ts';
import { partOutline } from '../stock/outline.ts';
import { pointsOn } from './element.ts';
import type { Ground, Standing } from './input.ts';
import type { LineWay } from './line.ts';

/** A stretch of a line whose roadbed does not lie on the deck, and its worst place; mm. */
export type Leaving = {
  readonly line: string;
  readonly from: number;
  readonly to: number;
  readonly worst: number;
  readonly point: Point;
  /** how far the roadbed's edge stands out there */
  readonly beyond: number;
  readonly piece: number;
};

/** One deck under all benches, in notebook coordinates; empty where no bench has one. */
export function deckAreas({ benches, parts }: Ground): readonly Polygon[] {
  const loops = benches.flatMap((bench) =>
    parts
      .filter((part) => part.role === 'deck' && part.bench === bench.id)
      .flatMap((part) =>
        part.places.map(({ pose }) =>
          partOutline(part).outline.map(([x, y]) => ashore(bench, toWorld(pose, [x, y, 0]))),
        ),
      ),
  );
  return loops.length === 0 ? [] : union(loops, []);
}

function ashore(bench: Standing, point: readonly [number, number, number]): Point {
  const [x, y] = toWorld(standing([bench.place.x, bench.place.y], bench.place.turn), point);
  return [x, y];
}

/** How far a point lies outside every area; 0 inside, mm. */
export function outside(areas: readonly Polygon[], point: Point): number {
  if (areas.some((area) => holds(area, point))) return 0;
  return areas.reduce(
    (least, { outline, holes }) => Math.min(least, ...[outline, ...holes].map((loop) => edgeDistance(loop, point))),
    Number.POSITIVE_INFINITY,
  );
}

function edgeDistance(loop: readonly Point[], [x, y]: Point): number {
  return loop.reduce((least, [ax, ay], i) => {
    const [bx, by] = loop[(i + 1) % loop.length] ?? [ax, ay];
    const [ux, uy] = [bx - ax, by - ay];
    const size = ux * ux + uy * uy;
    const share = size === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * ux + (y - ay) * uy) / size));
    return Math.min(least, Math.hypot(ax + ux * share - x, ay + uy * share - y));
  }, Number.POSITIVE_INFINITY);
}

/** A roadbed's edge within this of the deck's edge lies on it, mm. */
const ON_EDGE = 1e-3;

/** Where a line's roadbed, `half` wide to each side, leaves the deck; stretch by stretch. */
export function leavings(line: LineWay, areas: readonly Polygon[], half: number): readonly Leaving[] {
  const spots = line.elements.flatMap((element) =>
    pointsOn(element, { within: 0.02, apart: 10 }).map(({ at, point, heading }) => {
      const beyond = beyondEdge(areas, { point, heading, half });
      return { line: line.id, from: at, to: at, worst: at, point, beyond, piece: element.piece };
    }),
  );
  const stretches: Leaving[] = [];
  spots.forEach((spot, i) => {
    if (spot.beyond <= ON_EDGE) return;
    const open = (spots[i - 1]?.beyond ?? 0) > ON_EDGE ? stretches.pop() : undefined;
    const worse = open === undefined || spot.beyond > open.beyond + 1e-9;
    stretches.push(worse ? { ...spot, from: open?.from ?? spot.from } : { ...open, to: spot.to });
  });
  return stretches;
}

type Spot = { readonly point: Point; readonly heading: number; readonly half: number };

function beyondEdge(areas: readonly Polygon[], { point: [x, y], heading, half }: Spot): number {
  const [nx, ny] = [-Math.sin(heading) * half, Math.cos(heading) * half];
  return Math.max(outside(areas, [x + nx, y + ny]), outside(areas, [x - nx, y - ny]));
}

/** The bench a point lies over, else the nearest. */
export function benchUnder({ benches }: Pick<Ground, 'benches'>, point: Point): Standing | null {
  const ranked = benches.map((bench) => {
    const [x, y] = onBench(bench, point);
    const off = Math.hypot(Math.max(0, -x, x - bench.length), Math.max(0, -y, y - bench.width));
    return { bench, off };
  });
  return (
    ranked.reduce<(typeof ranked)[number] | null>(
      (best, one) => (best === null || one.off < best.off ? one : best),
      null,
    )?.bench ?? null
  );
}

/** A point in a bench's own coordinates: from its left and front edges; mm. */
export function onBench({ place }: Standing, [x, y]: Point): Point {
  const [dx, dy] = [x - place.x, y - place.y];
  const [c, s] = [Math.cos(place.turn), Math.sin(place.turn)];
  return [c * dx + s * dy, c * dy - s * dx];
}
