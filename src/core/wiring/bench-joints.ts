import type { Vector } from '../geometry/shapes.ts';
import type { BusHole } from './holes.ts';
import type { BusSpot } from './routing/limbs.ts';

/** A place where the bus goes from one bench to the next and needs a plug. */
export type BenchJoint = BusSpot & {
  readonly id: string;
  readonly between: readonly [string, string];
  /** half-way between the holes of the two benches, notebook coordinates, mm */
  readonly at: Vector;
};

/** Every place where the bus leaves a bench through a hole and enters the next one, limb by limb. */
export function benchJoints(holes: readonly BusHole[]): readonly BenchJoint[] {
  const passes = holes
    .flatMap((hole) => hole.along.map((spot) => ({ hole, spot })))
    .toSorted((a, b) => a.spot.limb - b.spot.limb || a.spot.along - b.spot.along);
  const found = passes.flatMap(({ hole, spot }, i) => {
    const next = passes[i + 1];
    if (next === undefined || next.spot.limb !== spot.limb || next.hole.bench === hole.bench) return [];
    const half = (axis: 0 | 1 | 2) => (hole.at[axis] + next.hole.at[axis]) / 2;
    return [
      {
        ...{ limb: spot.limb, along: (spot.along + next.spot.along) / 2 },
        between: [hole.bench, next.hole.bench] as const,
        at: [half(0), half(1), half(2)] as const,
      },
    ];
  });
  return found.map((joint, i) => ({ id: `plug-${i + 1}`, ...joint }));
}

/** What is written on a plug: `P1` of `plug-1`. */
export function plugTag(id: string): string {
  return id.replace('plug-', 'P');
}
