import type { Point } from '../geometry/shapes.ts';
import { length, type Sentence, say } from '../units/say.ts';
import type { BenchJoint } from './bench-joints.ts';
import { busPieces } from './bus-pieces.ts';
import type { WiredBench } from './input.ts';
import type { Net } from './nets.ts';
import { onBench } from './on-bench.ts';
import { type BusSpot, type Limb, passing, pointAlong, spotAt } from './routing/limbs.ts';
import type { Under } from './under.ts';

/** A place where pairs of the bus leave others, one T-joint a wire; what is written there: `T1`. Frame coordinates, mm. */
export type Tee = { readonly tag: string; readonly spot: BusSpot; readonly at: Point };

type Bus = { readonly limbs: readonly Limb[]; readonly nets: readonly Net[]; readonly joints: readonly BenchJoint[] };

/** Every place where a length of bus leaves another of its own pair, each once, in the order of the pairs. */
export function teesOf({ joints, limbs, nets }: Bus): readonly Tee[] {
  const spots = nets.flatMap((net) => {
    const pieces = busPieces(net, joints);
    return pieces.flatMap((piece) => {
      const start = spotAt(limbs, { limb: piece.limb, along: piece.from });
      const others = pieces.filter((one) => one !== piece);
      return piece.begins === null && passing(others, start) !== null ? [start] : [];
    });
  });
  const once = spots.filter((spot, i) => spots.findIndex((one) => sameSpot(one, spot)) === i);
  return once.flatMap((spot, i) => {
    const limb = limbs[spot.limb];
    return limb === undefined ? [] : [{ tag: `T${i + 1}`, spot, at: pointAlong(limb, spot.along) }];
  });
}

export function sameSpot(one: BusSpot, other: BusSpot): boolean {
  return one.limb === other.limb && Math.abs(one.along - other.along) < 1e-5;
}

/** A place of the frame in words: along and across from its bench's front left corner, mm. */
export function placeSaid(under: Under, benches: readonly WiredBench[], at: Point): Sentence {
  const { bench, place } = onBench(under, benches, at);
  const words = say`${length(place[0])} along and ${length(place[1])} across`;
  return benches.length > 1 ? [...words, ` ${bench}`] : words;
}
