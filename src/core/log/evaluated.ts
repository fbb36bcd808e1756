import { evaluate } from '../units/evaluate.ts';
import type { Fault } from '../units/problem.ts';
import type { Amount, Quantity, Scope } from '../units/quantity.ts';

/** Values of an entry as they are worked out, with the faults met on the way. */
export type Worker = {
  readonly faults: Fault[];
  readonly amount: (quantity: Quantity | undefined) => Amount | null;
  readonly number: (quantity: Quantity | undefined) => number | null;
};

/** A worker that knows the names in `scope`; what is not written is null. */
export function worker(scope: Scope): Worker {
  const faults: Fault[] = [];
  const amount = (quantity: Quantity | undefined): Amount | null => {
    if (quantity === undefined) return null;
    const result = evaluate(quantity, scope);
    if (result.ok) return result.value;
    faults.push(...result.faults);
    return null;
  };
  return { faults, amount, number: (quantity) => amount(quantity)?.value ?? null };
}
