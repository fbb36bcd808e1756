import type { Vector } from '../geometry/shapes.ts';
import { busPair } from './bus-pair.ts';
import type { BusHole } from './holes.ts';
import { type Net, stretchAt } from './nets.ts';
import type { Wire } from './wire.ts';

/** A plug where the bus goes from one bench to the next, its pins with their wires. */
export type Connector = {
  readonly id: string;
  readonly between: readonly [string, string];
  readonly at: Vector;
  readonly pins: readonly { readonly pin: number; readonly wire: string; readonly colour: string }[];
};

/** A plug at every place where the bus leaves a bench through its end and enters the next one. */
export function connectors(
  holes: readonly BusHole[],
  wires: readonly Wire[],
  nets: readonly Net[],
): readonly Connector[] {
  const passes = holes
    .flatMap((hole) => hole.along.map((spot) => ({ hole, spot })))
    .toSorted((a, b) => a.spot.limb - b.spot.limb || a.spot.along - b.spot.along);
  const found = passes.flatMap(({ hole, spot }, i) => {
    const next = passes[i + 1];
    if (next === undefined || next.spot.limb !== spot.limb || next.hole.bench === hole.bench) return [];
    const through = nets.flatMap((net) => {
      const stretch = stretchAt(net, spot);
      return stretch === null ? [] : [busPair(net, stretch)];
    });
    const mine = wires.filter(({ id }) => through.some((pair) => id === `${pair}-a` || id === `${pair}-b`));
    return [{ hole, next: next.hole, mine }];
  });
  return found.map(({ hole, next, mine }, i) => ({
    id: `connector-${i + 1}`,
    between: [hole.bench, next.bench],
    at: hole.at,
    pins: mine.map(({ id, colour }, pin) => ({ pin: pin + 1, wire: id, colour })),
  }));
}
