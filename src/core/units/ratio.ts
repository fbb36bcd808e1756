/** A number as it was written: numerator over denominator, so that 7 1/2 and 1.6 stay exact until the unit comes. */
export type Ratio = { readonly over: number; readonly under: number };

export function whole(value: number): Ratio {
  return { over: value, under: 1 };
}

export function sum(a: Ratio, b: Ratio): Ratio {
  if (a.under === b.under) return { over: a.over + b.over, under: a.under };
  return { over: a.over * b.under + b.over * a.under, under: a.under * b.under };
}

export function product(a: Ratio, b: Ratio): Ratio {
  return { over: a.over * b.over, under: a.under * b.under };
}

/** The nearest double: one division of two whole numbers. */
export function quotient(ratio: Ratio): number {
  return ratio.over / ratio.under;
}

/** Digits with at most one point, `1.6` as 16/10. */
export function decimal(digits: string): Ratio {
  const point = digits.indexOf('.');
  if (point < 0) return whole(Number(digits));
  const under = 10 ** (digits.length - point - 1);
  const over = Number(digits.slice(0, point) + digits.slice(point + 1));
  return Number.isSafeInteger(over) && under <= 1e15 ? { over, under } : whole(Number(digits));
}
