import { evaluate } from '../../../src/core/units/evaluate.ts';
import { parseQuantity } from '../../../src/core/units/parse.ts';
import type { Fault } from '../../../src/core/units/problem.ts';
import type { Amount, Dimension, Quantity, Scope } from '../../../src/core/units/quantity.ts';

/** A quantity read from a text that must be readable. */
export function quantity(text: string, dimension: Dimension = 'length', at = 'here'): Quantity {
  const tree = parseQuantity(text, dimension, { bare: null });
  if (!tree.ok) throw new Error(`${text}: ${tree.faults.map(({ what }) => what).join('; ')}`);
  return { dimension, text, tree: tree.value, at };
}

/** The amount a text comes to; the text must be sound. */
export function amount(text: string, dimension: Dimension = 'length', scope: Scope = {}): Amount {
  const found = evaluate(quantity(text, dimension), scope);
  if (!found.ok) throw new Error(`${text}: ${found.faults.map(({ what }) => what).join('; ')}`);
  return found.value;
}

/** The value of a text in the core's unit. */
export function value(text: string, dimension: Dimension = 'length', scope: Scope = {}): number {
  return amount(text, dimension, scope).value;
}

/** The first fault of a text that must have one, from reading or evaluating. */
export function fault(text: string, dimension: Dimension = 'length', scope: Scope = {}): Fault {
  const tree = parseQuantity(text, dimension, { bare: null });
  const found = tree.ok ? evaluate({ dimension, text, tree: tree.value, at: 'here' }, scope) : tree;
  const first = found.ok ? undefined : found.faults[0];
  if (first === undefined) throw new Error(`${text} has no fault`);
  return first;
}

/** A length as an amount, mm. */
export function mm(length: number): Amount {
  return { value: length, dimension: 'length' };
}
