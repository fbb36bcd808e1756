import type { Fault } from '../units/problem.ts';
import type { Dimension, Quantity } from '../units/quantity.ts';

/** Gathers faults while values are read; a value that fails counts as `instead` and the whole is refused at the end. */
export type Reader = {
  readonly value: (quantity: Quantity<Dimension> | undefined, instead: number) => number;
  readonly faults: Fault[];
};
