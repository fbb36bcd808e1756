import type { Point, Vector } from '../geometry/shapes.ts';
import { benchJoints } from './bench-joints.ts';
import { type ComesDown, clearNear } from './clear-way.ts';
import { districtOf, districtsOf } from './districts.ts';
import type { Feeder } from './feeders.ts';
import { type BusHole, busHoles, crossings } from './holes.ts';
import type { WiringInput } from './input.ts';
import { type LaidUnit, layUnit } from './laid-unit.ts';
import { loadDistrict } from './layout-circuit.ts';
import { loadPoint } from './load-point.ts';
import { netsOf } from './nets.ts';
import { TAIL_LIMIT } from './protection.ts';
import { autoRoute, type Route } from './routing/route.ts';
import type { Drop } from './routing/stops.ts';
import { type Tap, tapFor } from './routing/tap.ts';
import { writtenLimbs } from './routing/written.ts';
import type { Tail } from './tail.ts';
import { inward, outward, type Under } from './under.ts';
import type { Units } from './units.ts';
import { spaceLength } from './wire.ts';
import { tailPath, upPath } from './wire-list.ts';
import type { Wired, WiredFrog, WiredLoad } from './wired.ts';

/** The bus as it runs; notebook coordinates, mm. */
export type BusRun = {
  /** from the supply to its farthest end */
  readonly path: readonly Vector[];
  /** what leaves it at T-joints, and what leaves those */
  readonly branches: readonly (readonly Vector[])[];
  readonly z: number;
  readonly stock: string;
  readonly found: 'auto' | 'written';
  /** whether no other tree past its stops is cheaper */
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

/** What is hung on the bus, and where wires may come down through the deck. */
export type ToHang = Units & { readonly comesDown: ComesDown };

/** The bus found or as written, with where everything meets it. Null without a bus. */
export function layBus(input: WiringInput, under: Under, hang: ToHang): LaidBus | null {
  const { bus } = input;
  if (bus === null) return null;
  const { feeders } = hang;
  const loads = input.loads.flatMap((load) => wiredLoad(input, load, hang.comesDown));
  const frogs = input.rails.turnouts.flatMap((turnout) => wiredFrog(input, turnout, hang.comesDown));
  const drops = dropsOf(under, hang, [...loads, ...frogs]);
  const route = routeOf(input, under, drops);
  const { limbs, z } = route;
  const taps = new Map(drops.flatMap((drop) => tapFor(under, route, drop) ?? []).map((tap) => [tap.drop, tap]));
  const units = hang.units.flatMap((unit): readonly LaidUnit[] | LaidUnit => {
    const near = drops.find(({ id }) => id === unit.id)?.at ?? null;
    const spots = feeders.filter(({ net }) => net === unit.id).flatMap(({ id }) => taps.get(id) ?? []);
    return layUnit(under, route, { unit, spots, near, benches: input.ground.benches }) ?? [];
  });
  const tails = tailsOf(input, { under, route, taps, feeders, loads, frogs });
  const districts = districtsOf(input).map(({ id }) => id);
  const nets = netsOf({ limbs, districts, units, tails });
  const { met, clashes } = crossings(under, limbs, z);
  const holes = busHoles(under, met, { z, nets, outside: bus.stock.outside, show: input.show });
  const joints = benchJoints(holes);
  return {
    run: runOf(bus, under, route),
    wired: { input, under, limbs, z, taps, feeders, loads, frogs, units, nets, joints },
    ...{ route, tails, holes, clashes },
  };
}

/** Everywhere that thin wires come down to the bus, and where a switch has to stand. */
function dropsOf(
  under: Under,
  { comesDown, feeders, units }: ToHang,
  loads: readonly Pick<WiredLoad, 'drop' | 'down'>[],
): readonly Drop[] {
  const standing = units.flatMap(({ at, id }) => (at === null ? [] : [{ id, at: clearNear(at, comesDown) ?? at }]));
  return [
    ...feeders.map(({ id, down }) => ({ id, at: inward(under, down) })),
    ...loads.map(({ drop, down }) => ({ id: drop, at: inward(under, down) })),
    ...standing.map(({ at, id }) => ({ id, at: inward(under, at) })),
  ];
}

function runOf(bus: NonNullable<WiringInput['bus']>, under: Under, { limbs, proved, z }: Route): BusRun {
  const [trunk = [], ...branches] = limbs.map(({ path }) => path.map((point) => outward(under, point, z)));
  return { path: trunk, branches, z, stock: bus.stock.id, found: bus.route === null ? 'auto' : 'written', proved };
}

/** A load with where its wires go up, or for a turnout end beside its motor; beside it where something is below. */
function wiredLoad(input: WiringInput, load: WiringInput['loads'][number], comesDown: ComesDown): readonly WiredLoad[] {
  const at = loadPoint(input, load.place);
  if (at === null) return [];
  const turnout = load.place.kind === 'turnout';
  const down = clearNear(at, comesDown) ?? at;
  const over = down === at ? [] : [at];
  return [{ drop: `load.${load.id}`, id: load.id, at, down, over, district: loadDistrict(input, load), turnout }];
}

function wiredFrog(
  { districts }: WiringInput,
  { at, frog, id, line }: WiringInput['rails']['turnouts'][number],
  comesDown: ComesDown,
): readonly WiredFrog[] {
  if (frog !== 'live') return [];
  const down = clearNear(at, comesDown) ?? at;
  return [{ drop: `frog-${id}-in`, turnout: id, at, down, district: districtOf(districts, line) }];
}

function routeOf({ bus }: WiringInput, under: Under, drops: readonly Drop[]): Route {
  const written = bus?.route ?? null;
  const { bays, bench, heights, site, underside } = under;
  if (bus === null || written === null) {
    const from = inward(under, bus?.from ?? [0, 0]);
    return autoRoute(site, bays, { from, drops, heights, deckTop: bench.deckTop, underside, tail: TAIL_LIMIT });
  }
  const own = (points: readonly Point[]) => points.map((point) => inward(under, point));
  const { limbs, loose } = writtenLimbs(own([bus.from, ...written]), (bus.branches ?? []).map(own));
  const clashing = heights.map((z) => ({ z, count: crossings(under, limbs, z).clashes.length }));
  const [first = { z: 0, count: 0 }] = clashing;
  const laid = { limbs, z: clashing.reduce((best, one) => (one.count < best.count ? one : best), first).z };
  const unreached = drops.filter((drop) => tapFor(under, laid, drop) === null).map(({ id }) => id);
  return { ...laid, cost: 0, unreached, far: [], proved: true, loose };
}

type Hung = {
  readonly under: Under;
  readonly route: Route;
  readonly taps: ReadonlyMap<string, Tap>;
  readonly feeders: readonly Feeder[];
  readonly loads: Wired['loads'];
  readonly frogs: Wired['frogs'];
};

function tailsOf(input: WiringInput, { under, route, taps, feeders, loads, frogs }: Hung): readonly Tail[] {
  const hang = (drop: string, pathOf: (tap: Tap) => readonly Vector[], rest: Omit<Tail, 'tap' | 'length'>) => {
    const tap = taps.get(drop);
    return tap === undefined ? [] : [{ ...rest, tap, length: spaceLength(pathOf(tap)) }];
  };
  const wired = { under, z: route.z };
  const steady = new Map(input.loads.map(({ id, kind, amps }) => [id, kind === 'steady' ? amps : 0]));
  return [
    ...feeders.flatMap((one) =>
      hang(one.id, (tap) => upPath(wired, tap, one), { district: one.district, net: one.net, amps: 0 }),
    ),
    ...loads.flatMap((one) =>
      hang(one.drop, (tap) => (one.turnout ? tailPath(wired, tap) : upPath(wired, tap, one)), {
        ...{ district: one.district, net: one.district, amps: steady.get(one.id) ?? 0 },
      }),
    ),
    ...frogs.flatMap(({ district, drop }) =>
      hang(drop, (tap) => tailPath(wired, tap), { district, net: district, amps: 0 }),
    ),
  ];
}
