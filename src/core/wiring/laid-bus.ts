import type { Point, Vector } from '../geometry/shapes.ts';
import { type Tap, tapFor } from './bus-run.ts';
import { districtsOf } from './districts.ts';
import type { Feeder } from './feeders.ts';
import { type BusHole, busHoles, crossings } from './holes.ts';
import type { WiringInput } from './input.ts';
import { loadDistrict, type Tail } from './layout-circuit.ts';
import { loadPoint } from './load-point.ts';
import { TAIL_LIMIT } from './protection.ts';
import { autoRoute, corners, type Route } from './routing/route.ts';
import type { Drop } from './routing/stops.ts';
import { inward, outward, type Under } from './under.ts';
import { spaceLength, tailPath, type Wired } from './wire-list.ts';

/** The bus as it runs; notebook coordinates, mm. */
export type BusRun = {
  readonly path: readonly Vector[];
  readonly z: number;
  readonly stock: string;
  readonly found: 'auto' | 'written';
  /** whether no other order of its stops is cheaper */
  readonly proved: boolean;
};

/** A bus in its place, with all that hangs on it. */
export type LaidBus = {
  readonly run: BusRun;
  readonly route: Route;
  readonly wired: Wired;
  readonly tails: readonly Tail[];
  readonly holes: readonly BusHole[];
  readonly clashes: readonly { readonly with: string; readonly at: Point }[];
};

/** The bus found or as written, with where everything meets it. Null without a bus. */
export function layBus(input: WiringInput, under: Under, feeders: readonly Feeder[]): LaidBus | null {
  const { bus } = input;
  if (bus === null) return null;
  const loads = input.loads.flatMap((load) => {
    const at = loadPoint(input, load.place);
    return at === null
      ? []
      : [
          {
            drop: `load.${load.id}`,
            id: load.id,
            at,
            district: loadDistrict(input, load),
            turnout: load.place.kind === 'turnout',
          },
        ];
  });
  const drops: readonly Drop[] = [
    ...feeders.map(({ id, down }) => ({ id, at: inward(under, down) })),
    ...loads.map(({ drop, at }) => ({ id: drop, at: inward(under, at) })),
  ];
  const route = routeOf(input, under, drops);
  const taps = new Map(
    drops.flatMap((drop) => tapFor(route.path, under.bays, drop) ?? []).map((tap) => [tap.drop, tap]),
  );
  const tails = tailsOf(input, { under, route, taps, feeders, loads });
  const pairs = districtsOf(input).flatMap(({ id }) => {
    const reach = tails
      .filter(({ district }) => district === id)
      .reduce((most, { tap }) => Math.max(most, tap.along), 0);
    return reach > 0 ? [{ district: id, reach }] : [];
  });
  const { met, clashes } = crossings(under, route.path, route.z);
  const holes = busHoles(under, met, { z: route.z, pairs, outside: bus.stock.outside });
  return {
    run: {
      path: route.path.map((point) => outward(under, point, route.z)),
      z: route.z,
      stock: bus.stock.id,
      found: bus.route === null ? 'auto' : 'written',
      proved: route.proved,
    },
    wired: { input, under, path: route.path, z: route.z, taps, feeders, loads, pairs },
    ...{ route, tails, holes, clashes },
  };
}

function routeOf({ bus }: WiringInput, under: Under, drops: readonly Drop[]): Route {
  const written = bus?.route ?? null;
  if (bus === null || written === null) {
    const from = inward(under, bus?.from ?? [0, 0]);
    return autoRoute(under.site, under.bays, {
      from,
      drops,
      heights: under.heights,
      deckTop: under.bench.deckTop,
      tail: TAIL_LIMIT,
    });
  }
  const path = corners([bus.from, ...written].map((point) => inward(under, point)));
  const unreached = drops.filter((drop) => tapFor(path, under.bays, drop) === null).map(({ id }) => id);
  return { path, z: under.heights[0] ?? 0, cost: 0, unreached, far: [], proved: true };
}

type Hung = {
  readonly under: Under;
  readonly route: Route;
  readonly taps: ReadonlyMap<string, Tap>;
  readonly feeders: readonly Feeder[];
  readonly loads: Wired['loads'];
};

function tailsOf(input: WiringInput, { under, route, taps, feeders, loads }: Hung): readonly Tail[] {
  const hang = (
    drop: string,
    down: Point,
    rest: { readonly district: string; readonly amps: number; readonly more: number },
  ): readonly Tail[] => {
    const tap = taps.get(drop);
    if (tap === undefined) return [];
    const length = spaceLength(tailPath({ under, z: route.z }, tap, down)) + rest.more;
    return [{ tap, length, district: rest.district, amps: rest.amps }];
  };
  const steady = new Map(input.loads.map(({ id, kind, amps }) => [id, kind === 'steady' ? amps : 0]));
  return [
    ...feeders.flatMap(({ id, down, point, district }) =>
      hang(id, down, { district, amps: 0, more: Math.hypot(point[0] - down[0], point[1] - down[1]) }),
    ),
    ...loads.flatMap(({ drop, id, at, district }) => hang(drop, at, { district, amps: steady.get(id) ?? 0, more: 0 })),
  ];
}
