import { z } from 'zod';
import { evaluate } from './evaluate.ts';
import type { Dimension, Quantity } from './quantity.ts';
import type { QuantityKit } from './schema.ts';

/** Values of files that know no named dimensions, evaluated at once, in the core's unit. */
export type LiteralKit = ReturnType<typeof literalKit>;

function literal<D extends Dimension>(quantity: z.ZodType<Quantity<D>, string>) {
  return quantity.transform((written, context): number => {
    const amount = evaluate(written, {});
    if (amount.ok) return amount.value.value;
    for (const fault of amount.faults) {
      context.issues.push({ code: 'custom', message: fault.what, input: written.text, params: { fault } });
    }
    return z.NEVER;
  });
}

/** A price, with its currency. */
function price(money: QuantityKit['money']) {
  return money.transform((written, context): { value: number; currency: string } => {
    const amount = evaluate(written, {});
    if (amount.ok) return { value: amount.value.value, currency: amount.value.currency ?? '' };
    for (const fault of amount.faults) {
      context.issues.push({ code: 'custom', message: fault.what, input: written.text, params: { fault } });
    }
    return z.NEVER;
  });
}

/** The kit's values as plain numbers: mm, g, kg/m3, N/mm2, mm2 by its side, A, ohm. */
export function literalKit(kit: QuantityKit) {
  return {
    number: literal(kit.number),
    length: literal(kit.length),
    mass: literal(kit.mass),
    density: literal(kit.density),
    stress: literal(kit.stress),
    volume: literal(kit.volume),
    current: literal(kit.current),
    resistance: literal(kit.resistance),
    price: price(kit.money),
  } as const;
}
