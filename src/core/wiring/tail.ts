import type { Tap } from './routing/tap.ts';

/** A feeder or a load with where it meets its pair and the length of its wires, one of the two; mm. */
export type Tail = {
  readonly tap: Tap;
  readonly district: string;
  /** the pair it hangs on */
  readonly net: string;
  readonly length: number;
  readonly amps: number;
};
