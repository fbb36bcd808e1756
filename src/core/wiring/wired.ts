import type { Point } from '../geometry/shapes.ts';
import type { BenchJoint } from './bench-joints.ts';
import type { Feeder } from './feeders.ts';
import type { WiringInput } from './input.ts';
import type { LaidUnit } from './laid-unit.ts';
import type { Net } from './nets.ts';
import type { Limb } from './routing/limbs.ts';
import type { Tap } from './routing/tap.ts';
import type { Under } from './under.ts';

/** A load as its wires find it: where it is, where they go up or end, and whether they come up through the deck. */
export type WiredLoad = {
  readonly drop: string;
  readonly id: string;
  readonly at: Point;
  readonly down: Point;
  /** from there on over the deck to it */
  readonly over: readonly Point[];
  readonly district: string;
  readonly turnout: boolean;
};

/** A live frog, with the switch beside its motor that turns it: both rails go there, and one wire up to the frog. */
export type WiredFrog = {
  readonly drop: string;
  readonly turnout: string;
  readonly at: Point;
  readonly down: Point;
  readonly district: string;
};

/** Everything the wires are drawn between. */
export type Wired = {
  readonly input: WiringInput;
  readonly under: Under;
  readonly limbs: readonly Limb[];
  readonly z: number;
  readonly taps: ReadonlyMap<string, Tap>;
  readonly feeders: readonly Feeder[];
  readonly loads: readonly WiredLoad[];
  readonly frogs: readonly WiredFrog[];
  readonly units: readonly LaidUnit[];
  readonly nets: readonly Net[];
  /** where the bus goes from bench to bench */
  readonly joints: readonly BenchJoint[];
};
