import type { Point } from '../../geometry/shapes.ts';
import { tapFor } from '../bus-run.ts';
import { type Bay, nearestBay } from './bays.ts';
import { type Lattice, lattice } from './lattice.ts';
import { cheapestWays } from './shortest.ts';
import type { Site } from './site.ts';
import { type Drop, placeNear, type Stop, stopsFor } from './stops.ts';
import { cheapestTour } from './tour.ts';

/** What the bus joins: where it starts, what hangs on it, and the heights it may run at, the best first; mm. */
export type RouteAsk = {
  readonly from: Point;
  readonly drops: readonly Drop[];
  readonly heights: readonly number[];
  /** the deck's top, and the longest a tail may be down to the bus */
  readonly deckTop: number;
  readonly tail: number;
};

/** A route found or written: corners from above, and its height; mm. */
export type Route = {
  readonly path: readonly Point[];
  readonly z: number;
  readonly cost: number;
  /** drops that no way leads to */
  readonly unreached: readonly string[];
  /** drops that it passes, but farther off than a tail may be long */
  readonly far: readonly string[];
  /** whether no other order of the stops is cheaper */
  readonly proved: boolean;
};

/** The cheapest bus past all stops, at the first height that gets near them all, else at the one that leaves out fewest. */
export function autoRoute(site: Site, bays: readonly Bay[], ask: RouteAsk): Route {
  let best: Route | null = null;
  for (const z of ask.heights) {
    const route = routeAt(site, bays, { ...ask, z });
    if (route.unreached.length + route.far.length === 0) return route;
    if (best === null || misses(route) < misses(best)) best = route;
  }
  return best ?? nowhere(0, ask.drops);
}

/** One drop left out is worse than any number of long tails. */
function misses({ unreached, far }: Route): number {
  return unreached.length * 1000 + far.length;
}

function nowhere(z: number, drops: readonly Drop[]): Route {
  return { path: [], z, cost: 0, unreached: drops.map(({ id }) => id), far: [], proved: true };
}

function routeAt(site: Site, bays: readonly Bay[], ask: RouteAsk & { readonly z: number }): Route {
  const { from, drops, z } = ask;
  const start = nearestBay(bays, from);
  const span = Math.max(0, ask.tail - (ask.deckTop - z));
  const stops = stopsFor(drops, bays, span);
  const wanted = [...(start === null ? [] : [start.point]), ...stops.map(({ at }) => at)];
  const net = lattice(site, bays, { wanted, z });
  const begin = start === null ? null : placeNear(net, start.bay, start.point);
  if (begin === null) return nowhere(z, drops);
  const placed = stops.map((stop) => ({ stop, place: placeNear(net, stop.bay, stop.at) }));
  const route = joined(net, begin, { placed, z, missed: missedDrops(drops, stops) });
  const off = drops.filter(
    (drop) => !route.unreached.includes(drop.id) && tailAcross(route.path, bays, drop) > span + 1e-6,
  );
  return { ...route, far: off.map(({ id }) => id) };
}

/** How far a drop hangs from the bus in its bay. */
function tailAcross(path: readonly Point[], bays: readonly Bay[], drop: Drop): number {
  return tapFor(path, bays, drop)?.across ?? Number.POSITIVE_INFINITY;
}

function missedDrops(drops: readonly Drop[], stops: readonly Stop[]): readonly string[] {
  const met = new Set(stops.flatMap((stop) => stop.drops));
  return drops.flatMap(({ id }) => (met.has(id) ? [] : [id]));
}

type Placed = { readonly stop: Stop; readonly place: number | null };

function joined(
  net: Lattice,
  begin: number,
  { placed, z, missed }: { readonly placed: readonly Placed[]; readonly z: number; readonly missed: readonly string[] },
): Omit<Route, 'far'> {
  const fromStart = cheapestWays(net, begin);
  const open = placed.filter(({ place }) => place !== null && Number.isFinite(fromStart.cost(place)));
  const shut = placed.filter((one) => !open.includes(one));
  const places = [begin, ...open.map(({ place }) => place ?? begin)];
  const ways = places.map((place, i) => (i === 0 ? fromStart : cheapestWays(net, place)));
  const tour = cheapestTour(ways.map((way) => places.map((to) => way.cost(to))));
  const path = tour.order.flatMap((stop, i) => {
    const next = tour.order[i + 1];
    return next === undefined ? [places[stop] ?? begin] : (ways[stop]?.path(places[next] ?? begin).slice(0, -1) ?? []);
  });
  return {
    path: corners(path.map((place) => net.places[place]).filter((place) => place !== undefined)),
    z,
    cost: tour.cost,
    unreached: [...missed, ...shut.flatMap(({ stop }) => stop.drops)],
    proved: tour.proved,
  };
}

/** A path without the places it goes straight through; one that turns back keeps its end. */
export function corners(path: readonly Point[]): readonly Point[] {
  const points = path.filter((point, i) => i === 0 || point[0] !== path[i - 1]?.[0] || point[1] !== path[i - 1]?.[1]);
  return points.filter((point, i) => {
    const [before, after] = [points[i - 1], points[i + 1]];
    if (before === undefined || after === undefined) return true;
    const turn = (point[0] - before[0]) * (after[1] - point[1]) - (point[1] - before[1]) * (after[0] - point[0]);
    const onward = (point[0] - before[0]) * (after[0] - point[0]) + (point[1] - before[1]) * (after[1] - point[1]);
    return Math.abs(turn) > 1e-9 || onward < 0;
  });
}
