import type { Vector } from '../geometry/shapes.ts';
import type { BusHole, Pairs } from './holes.ts';
import type { Wire } from './wire-list.ts';

/** A plug where the bus goes from one bench to the next, its pins with their wires. */
export type Connector = {
  readonly id: string;
  readonly between: readonly [string, string];
  readonly at: Vector;
  readonly pins: readonly { readonly pin: number; readonly wire: string; readonly colour: string }[];
};

/** A plug at every place where the bus leaves a bench through its end and enters the next one. */
export function connectors(holes: readonly BusHole[], wires: readonly Wire[], pairs: Pairs): readonly Connector[] {
  const passes = holes
    .flatMap((hole) => hole.along.map((along) => ({ hole, along })))
    .toSorted((a, b) => a.along - b.along);
  const found = passes.flatMap(({ hole, along }, i) => {
    const next = passes[i + 1];
    if (next === undefined || next.hole.bench === hole.bench) return [];
    const through = pairs.filter(({ reach }) => reach > along).map(({ district }) => district);
    const mine = wires.filter(({ kind, district }) => kind === 'bus' && through.includes(district));
    return [{ hole, next: next.hole, mine }];
  });
  return found.map(({ hole, next, mine }, i) => ({
    id: `connector-${i + 1}`,
    between: [hole.bench, next.bench],
    at: hole.at,
    pins: mine.map(({ id, colour }, pin) => ({ pin: pin + 1, wire: id, colour })),
  }));
}
