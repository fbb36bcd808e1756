import { z } from 'zod';
import { parseQuantity } from './parse.ts';
import type { Dimension, Quantity } from './quantity.ts';

/** Whether bare numbers mean millimetres in this notebook (`bare: mm`), or are problems. */
export type Bare = 'mm' | null;

/** The typed values an author may write, each kept as text and tree; the place is filled in by the reader. */
export type QuantityKit = ReturnType<typeof quantityKit>;

function quantity<D extends Dimension>(dimension: D, bare: Bare) {
  return z.string().transform((text, context): Quantity<D> => {
    const parsed = parseQuantity(text, dimension, { bare });
    if (parsed.ok) return { dimension, text, tree: parsed.value, at: '' };
    for (const fault of parsed.faults) {
      context.issues.push({ code: 'custom', message: fault.what, input: text, params: { fault } });
    }
    return z.NEVER;
  });
}

export function quantityKit(bare: Bare) {
  return {
    bare,
    number: quantity('number', bare),
    length: quantity('length', bare),
    angle: quantity('angle', bare),
    grade: quantity('grade', bare),
    duration: quantity('duration', bare),
    months: quantity('months', bare),
    money: quantity('money', bare),
    current: quantity('current', bare),
    voltage: quantity('voltage', bare),
    resistance: quantity('resistance', bare),
    power: quantity('power', bare),
    mass: quantity('mass', bare),
    density: quantity('density', bare),
    stress: quantity('stress', bare),
    volume: quantity('volume', bare),
  } as const;
}
