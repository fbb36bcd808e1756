import type { Point } from '../../geometry/shapes.ts';
import { type Bay, nearestBay } from './bays.ts';
import { cheapestTree } from './joined-tree.ts';
import { type Lattice, lattice } from './lattice.ts';
import type { Limb } from './limbs.ts';
import { cheapestWays } from './shortest.ts';
import type { Site } from './site.ts';
import { type Drop, placeNear, type Stop, stopsFor } from './stops.ts';
import { tapFor } from './tap.ts';
import { limbsOf } from './to-limbs.ts';
import type { Loose } from './written.ts';

/** What the bus joins: where it starts, what hangs on it, and the heights it may run at, the best first; mm. */
export type RouteAsk = {
  readonly from: Point;
  readonly drops: readonly Drop[];
  readonly heights: readonly number[];
  /** the deck's top and underside, and the longest a tail may be down to the bus */
  readonly deckTop: number;
  readonly underside: number;
  readonly tail: number;
};

/** A route found or written: its limbs from above, and its height; mm. */
export type Route = {
  readonly limbs: readonly Limb[];
  readonly z: number;
  readonly cost: number;
  /** drops that no way leads to */
  readonly unreached: readonly string[];
  /** drops that it passes, but farther off than a tail may be long */
  readonly far: readonly string[];
  /** whether no other tree past its stops is cheaper */
  readonly proved: boolean;
  /** branches as written that begin beside the bus; none of a bus that was found */
  readonly loose: readonly Loose[];
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
  return { limbs: [], z, cost: 0, unreached: drops.map(({ id }) => id), far: [], proved: true, loose: [] };
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
  const route = joined(net, begin, { placed, z });
  const reached = drops.flatMap((drop) => {
    const tap = tapFor({ site, bays, underside: ask.underside }, route, drop);
    return tap === null ? [] : [{ id: drop.id, across: tap.across }];
  });
  return {
    ...route,
    unreached: drops.flatMap(({ id }) => (reached.some((one) => one.id === id) ? [] : [id])),
    far: reached.filter(({ across }) => across > span + 1e-6).map(({ id }) => id),
    loose: [],
  };
}

type Placed = { readonly stop: Stop; readonly place: number | null };

function joined(
  net: Lattice,
  begin: number,
  { placed, z }: { readonly placed: readonly Placed[]; readonly z: number },
): Pick<Route, 'limbs' | 'z' | 'cost' | 'proved'> {
  const fromStart = cheapestWays(net, begin);
  const stops = placed.flatMap(({ place }) =>
    place !== null && Number.isFinite(fromStart.cost(place)) ? [place] : [],
  );
  const tree = cheapestTree(net, begin, stops);
  return { limbs: limbsOf(net.places, begin, { ways: tree.ways, stops }), z, cost: tree.cost, proved: tree.proved };
}
