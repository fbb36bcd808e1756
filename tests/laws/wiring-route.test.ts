import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestBay } from '../../src/core/wiring/routing/bays.ts';
import { passage } from '../../src/core/wiring/routing/crossing.ts';
import { cheapestTree, mendedTree } from '../../src/core/wiring/routing/joined-tree.ts';
import { lattice } from '../../src/core/wiring/routing/lattice.ts';
import { autoRoute, type Route } from '../../src/core/wiring/routing/route.ts';
import { COSTS, type Site } from '../../src/core/wiring/routing/site.ts';
import { placeNear, stopsFor } from '../../src/core/wiring/routing/stops.ts';
import { limbsOf } from '../../src/core/wiring/routing/to-limbs.ts';
import { bays, randomAsk, siteWith } from '../core/wiring/random-site.ts';

const SEED = 20261125;
const Z = 550;
const TAIL = 300;
const DECK = 609;

type Sample = {
  readonly site: Site;
  readonly from: readonly [number, number];
  readonly drops: readonly { readonly id: string; readonly at: readonly [number, number] }[];
};

const samples: readonly Sample[] = fc.sample(randomAsk, { numRuns: 60, seed: SEED }).map(({ from, drops, boxes }) => ({
  site: siteWith(boxes),
  from,
  drops: drops.map((at, i) => ({ id: `d${i}`, at })),
}));

function routed({ site, from, drops }: Sample): Route {
  return autoRoute(site, bays, { from, drops, heights: [Z], deckTop: DECK, underside: 600, tail: TAIL });
}

/** Costs from one place to all others by relaxing every step until nothing changes (Bellman and Ford), bends counted. */
function relaxed(net: ReturnType<typeof lattice>, from: number): readonly number[] {
  const cost = new Map<string, number>([
    [`${from} 0`, 0],
    [`${from} 1`, 0],
  ]);
  for (let changed = true; changed; ) {
    changed = false;
    for (const [key, here] of [...cost]) {
      const [place, direction] = key.split(' ').map(Number);
      for (const step of net.steps[place ?? 0] ?? []) {
        const next = here + step.cost + (step.direction === direction ? 0 : COSTS.bend);
        const to = `${step.to} ${step.direction}`;
        if (next < (cost.get(to) ?? Number.POSITIVE_INFINITY) - 1e-9) {
          cost.set(to, next);
          changed = true;
        }
      }
    }
  }
  return net.places.map((_, i) =>
    Math.min(cost.get(`${i} 0`) ?? Number.POSITIVE_INFINITY, cost.get(`${i} 1`) ?? Number.POSITIVE_INFINITY),
  );
}

/** All costs between all places, each found by relaxing. */
function allCosts(net: ReturnType<typeof lattice>): readonly (readonly number[])[] {
  return net.places.map((_, place) => relaxed(net, place));
}

/** The lattice of a sample with its start and its stops; null where one has no free place. */
function netOf({ site, from, drops }: Sample) {
  const start = nearestBay(bays, from);
  const stops = stopsFor(drops, bays, TAIL - (DECK - Z));
  if (start === null) return null;
  const net = lattice(site, bays, { wanted: [start.point, ...stops.map(({ at }) => at)], z: Z });
  const begin = placeNear(net, start.bay, start.point);
  const places = stops.flatMap(({ bay, at }) => placeNear(net, bay, at) ?? []);
  if (begin === null || places.length < stops.length) return null;
  return { net, ends: [...new Set([begin, ...places])] };
}

/**
 * The least that joins up to four ends, trying every place as a joint and every two places as two joints: a tree of four
 * ends has at most two (Gilbert and Pollak, Steiner minimal trees, 1968).
 */
function leastJoined(costs: readonly (readonly number[])[], ends: readonly number[]): number {
  const between = (a = 0, b = 0) => costs[a]?.[b] ?? Number.POSITIVE_INFINITY;
  const [a, b, c, d] = ends;
  if (ends.length === 1) return 0;
  if (ends.length === 2) return between(a, b);
  const places = costs.map((_, place) => place);
  if (ends.length === 3) return Math.min(...places.map((x) => between(a, x) + between(b, x) + between(c, x)));
  let least = Number.POSITIVE_INFINITY;
  for (const x of places) {
    for (const y of places) {
      const [ax, bx, cx, dx] = [between(a, x), between(b, x), between(c, x), between(d, x)];
      const [by, cy, dy] = [between(b, y), between(c, y), between(d, y)];
      const apart = Math.min(ax + bx + cy + dy, ax + cx + by + dy, ax + dx + by + cy);
      least = Math.min(least, apart + between(x, y));
    }
  }
  return least;
}

describe('random tables', () => {
  const routes = samples.map((sample) => ({ sample, route: routed(sample) }));

  it('are routed in full in at least 70 %', () => {
    const whole = routes.filter(({ route }) => route.unreached.length === 0);
    console.log(`random tables: ${whole.length} of ${samples.length} routed in full`);
    expect(whole.length / samples.length).toBeGreaterThanOrEqual(0.7);
  });

  const small = samples.flatMap((sample) => {
    const found = netOf(sample);
    return found === null || found.ends.length > 4 ? [] : [{ sample, ...found, costs: allCosts(found.net) }];
  });

  it('auto costs what trying every joint and relaxing every step finds', () => {
    const compared = small.flatMap(({ sample, costs, ends }) => {
      const least = leastJoined(costs, ends);
      return Number.isFinite(least) ? [{ found: routed(sample).cost, least }] : [];
    });
    expect(compared.length).toBeGreaterThan(samples.length / 3);
    expect(compared.filter(({ found, least }) => Math.abs(found - least) > 1e-6)).toEqual([]);
  });

  it('planted fault: stops joined one after another as they are written cost more', () => {
    const dearer = small.filter(({ costs, ends }) => {
      const chain = ends.slice(1).reduce((sum, end, i) => sum + (costs[ends[i] ?? 0]?.[end] ?? 0), 0);
      return chain - leastJoined(costs, ends) > 1e-6;
    });
    expect(dearer.length).toBeGreaterThan(0);
  });

  it('no stretch of a bus is run twice', () => {
    for (const { route } of routes) expect(runTwice(route)).toEqual([]);
  });

  it('planted fault: a bus that walks back along itself is seen', () => {
    const path = [
      [0, 0],
      [100, 0],
      [40, 0],
    ] as const;
    const back = { limbs: [{ path, of: null, from: 0 }] };
    expect(runTwice(back)).toHaveLength(1);
  });

  it('no route runs into anything', () => {
    const clashes = routes.flatMap(({ sample, route }) =>
      route.limbs.flatMap(({ path }) =>
        path.flatMap((to, i) => passage(sample.site, { from: path[i - 1] ?? to, to, z: Z }).clashes),
      ),
    );
    expect(clashes).toEqual([]);
  });

  it('planted fault: a box put on the route is run into', () => {
    const [hit] = routes.filter(({ route }) => (route.limbs[0]?.path.length ?? 0) > 1);
    const [from, to] = hit?.route.limbs[0]?.path ?? [];
    if (from === undefined || to === undefined) throw new Error('no route');
    const middle = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
    const box = {
      id: 'planted',
      box: { min: [middle[0] - 5, middle[1] - 5, 500], max: [middle[0] + 5, middle[1] + 5, 600] },
    } as const;
    expect(passage(siteWith([box]), { from, to, z: Z }).clashes).toContain('planted');
  });
});

/** Straights of a bus that share more than a point. */
function runTwice({ limbs }: Pick<Route, 'limbs'>): readonly string[] {
  const straights = limbs.flatMap(({ path }) => path.slice(1).map((to, i) => ({ from: path[i] ?? to, to })));
  return straights.flatMap((one, i) =>
    straights.slice(0, i).flatMap((other) => {
      const shared = ([0, 1] as const).map(
        (axis) =>
          Math.min(Math.max(one.from[axis], one.to[axis]), Math.max(other.from[axis], other.to[axis])) -
          Math.max(Math.min(one.from[axis], one.to[axis]), Math.min(other.from[axis], other.to[axis])),
      );
      const [x = -1, y = -1] = shared;
      return x >= 0 && y >= 0 && x + y > 1e-6 ? [`${one.from.join(' ')} ${other.from.join(' ')}`] : [];
    }),
  );
}

describe('a tree of many stops', () => {
  const asks = samples.flatMap((sample) => netOf(sample) ?? []);

  it('is never cheaper than the exact one, and seldom much dearer', () => {
    const pairs = asks.flatMap(({ net, ends: [start = 0, ...stops] }) => {
      const exact = cheapestTree(net, start, stops);
      return exact.proved && Number.isFinite(exact.cost) && stops.length > 0
        ? [{ exact: exact.cost, mended: mendedTree(net, [start, ...stops]).cost }]
        : [];
    });
    expect(pairs.length).toBeGreaterThan(20);
    for (const { exact, mended } of pairs) {
      expect(mended).toBeGreaterThanOrEqual(exact - 1e-6);
      expect(mended).toBeLessThanOrEqual(1.5 * exact + 1e-6);
    }
  });

  it('joins every stop and is said not to be proved', () => {
    const net = asks[0]?.net;
    if (net === undefined) throw new Error('no sample');
    const stops = net.places
      .map((_, place) => place)
      .filter((place) => place % 9 === 1)
      .slice(0, 8);
    const tree = cheapestTree(net, 0, stops);
    expect(tree.proved).toBe(false);
    const limbs = limbsOf(net.places, 0, { ways: tree.ways, stops });
    const on = stops.filter((stop) => {
      const [px, py] = net.places[stop] ?? [0, 0];
      return limbs.some(({ path }) =>
        path.some(([x, y], i) => {
          const [qx, qy] = path[i - 1] ?? [x, y];
          return (
            Math.abs(Math.hypot(x - px, y - py) + Math.hypot(qx - px, qy - py) - Math.hypot(x - qx, y - qy)) < 1e-6
          );
        }),
      );
    });
    expect(on).toEqual(stops);
  });
});
