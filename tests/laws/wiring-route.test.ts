import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestBay } from '../../src/core/wiring/routing/bays.ts';
import { passage } from '../../src/core/wiring/routing/crossing.ts';
import { lattice } from '../../src/core/wiring/routing/lattice.ts';
import { autoRoute, type Route } from '../../src/core/wiring/routing/route.ts';
import { COSTS, type Site } from '../../src/core/wiring/routing/site.ts';
import { placeNear, stopsFor } from '../../src/core/wiring/routing/stops.ts';
import { type Costs, cheapestTour } from '../../src/core/wiring/routing/tour.ts';
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
  return autoRoute(site, bays, { from, drops, heights: [Z], deckTop: DECK, tail: TAIL });
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

function orders<T>(all: readonly T[]): readonly (readonly T[])[] {
  return all.length === 0
    ? [[]]
    : all.flatMap((one, i) => orders([...all.slice(0, i), ...all.slice(i + 1)]).map((rest) => [one, ...rest]));
}

/** What each order of the stops costs; null where a stop has no free place. */
function orderCosts({ site, from, drops }: Sample): readonly number[] | null {
  const start = nearestBay(bays, from);
  const stops = stopsFor(drops, bays, TAIL - (DECK - Z));
  if (start === null) return null;
  const net = lattice(site, bays, { wanted: [start.point, ...stops.map(({ at }) => at)], z: Z });
  const places = [placeNear(net, start.bay, start.point), ...stops.map(({ bay, at }) => placeNear(net, bay, at))];
  if (places.includes(null)) return null;
  const known = places.map((place) => relaxed(net, place ?? 0));
  const between = (i: number, j: number) => known[i]?.[places[j] ?? 0] ?? Number.POSITIVE_INFINITY;
  return orders(stops.map((_, i) => i + 1)).map((order) =>
    [0, ...order].reduce((sum, stop, i, all) => (i === 0 ? 0 : sum + between(all[i - 1] ?? 0, stop)), 0),
  );
}

/** The least cost over every order of the stops. */
function bruteForce(sample: Sample): number | null {
  const costs = orderCosts(sample);
  return costs === null ? null : Math.min(...costs);
}

describe('random tables', () => {
  const routes = samples.map((sample) => ({ sample, route: routed(sample) }));

  it('are routed in full in at least 70 %', () => {
    const whole = routes.filter(({ route }) => route.unreached.length === 0);
    console.log(`random tables: ${whole.length} of ${samples.length} routed in full`);
    expect(whole.length / samples.length).toBeGreaterThanOrEqual(0.7);
  });

  it('auto costs what trying every order and relaxing every step finds', () => {
    const compared = routes.flatMap(({ sample, route }) => {
      const least = route.unreached.length === 0 ? bruteForce(sample) : null;
      return least === null || !Number.isFinite(least) ? [] : [{ found: route.cost, least }];
    });
    expect(compared.length).toBeGreaterThan(samples.length / 2);
    expect(compared.filter(({ found, least }) => Math.abs(found - least) > 1e-6)).toEqual([]);
  });

  it('planted fault: stops taken in the order they are written cost more', () => {
    const written = samples.filter((sample) => {
      const [first = 0] = orderCosts(sample) ?? [];
      return first - (bruteForce(sample) ?? first) > 1e-6;
    });
    expect(written.length).toBeGreaterThan(0);
  });

  it('no route runs into anything', () => {
    const clashes = routes.flatMap(({ sample, route }) =>
      route.path.flatMap((to, i) => passage(sample.site, { from: route.path[i - 1] ?? to, to, z: Z }).clashes),
    );
    expect(clashes).toEqual([]);
  });

  it('planted fault: a box put on the route is run into', () => {
    const [hit] = routes.filter(({ route }) => route.path.length > 1);
    const [from, to] = hit?.route.path ?? [];
    if (from === undefined || to === undefined) throw new Error('no route');
    const middle = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
    const box = {
      id: 'planted',
      box: { min: [middle[0] - 5, middle[1] - 5, 500], max: [middle[0] + 5, middle[1] + 5, 600] },
    } as const;
    expect(passage(siteWith([box]), { from, to, z: Z }).clashes).toContain('planted');
  });
});

describe('the cheapest tour', () => {
  const matrix = fc.integer({ min: 2, max: 7 }).chain((n) =>
    fc.array(fc.array(fc.integer({ min: 1, max: 99 }), { minLength: n, maxLength: n }), {
      minLength: n,
      maxLength: n,
    }),
  );
  const costs: readonly Costs[] = fc.sample(matrix, { numRuns: 200, seed: SEED });
  const length = (all: Costs, order: readonly number[]) =>
    order.slice(1).reduce((sum, to, i) => sum + (all[order[i] ?? 0]?.[to] ?? Number.NaN), 0);

  it('is the best of all orders, and costs what its order costs', () => {
    const wrong = costs.filter((all) => {
      const tour = cheapestTour(all);
      const best = Math.min(...orders(all.slice(1).map((_, i) => i + 1)).map((order) => length(all, [0, ...order])));
      return tour.cost !== best || length(all, tour.order) !== best || !tour.proved;
    });
    expect(wrong).toEqual([]);
  });

  it('with many stops passes each once and says that it is not proved', () => {
    const n = 20;
    const many = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (__, j) => ((i * 7 + j * 13) % 31) + 1));
    const tour = cheapestTour(many);
    expect(tour.proved).toBe(false);
    expect(tour.order.toSorted((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, i) => i));
    expect(length(many, tour.order)).toBe(tour.cost);
  });
});
