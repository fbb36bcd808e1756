/** A fraction of whole numbers, below it never 0. */
export type Fraction = { readonly n: bigint; readonly d: bigint };

const ZERO: Fraction = { n: 0n, d: 1n };

function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? (a < 0n ? -a : a) : gcd(b, a % b);
}

function fraction(n: bigint, d: bigint): Fraction {
  const by = gcd(n, d) * (d < 0n ? -1n : 1n);
  return by === 0n ? ZERO : { n: n / by, d: d / by };
}

/** A decimal number as a fraction, exactly as its digits say. */
export function exact(value: number): Fraction {
  const [whole = '0', decimals = ''] = value.toFixed(9).split('.');
  return fraction(BigInt(whole + decimals), 10n ** BigInt(decimals.length));
}

export function reciprocal({ n, d }: Fraction): Fraction {
  return fraction(d, n);
}

export function sum(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.d + b.n * a.d, a.d * b.d);
}

export function negative({ n, d }: Fraction): Fraction {
  return { n: -n, d };
}

function product(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.n, a.d * b.d);
}

/** The solution of A x = b by Gauss and Jordan over fractions: no rounding anywhere. */
export function exactSolution(matrix: readonly (readonly Fraction[])[], b: readonly Fraction[]): readonly number[] {
  const rows = matrix.map((row, i) => [...row, b[i] ?? ZERO]);
  rows.forEach((_, k) => {
    const at = rows.findIndex((row, i) => i >= k && (row[k] ?? ZERO).n !== 0n);
    const [pivot, here] = [rows[at], rows[k]];
    if (pivot === undefined || here === undefined) throw new RangeError('singular');
    rows[at] = here;
    const by = reciprocal(pivot[k] ?? ZERO);
    const scaled = pivot.map((value) => product(value, by));
    rows[k] = scaled;
    rows.forEach((row, i) => {
      const factor = row[k] ?? ZERO;
      if (i !== k && factor.n !== 0n)
        rows[i] = row.map((value, j) => sum(value, negative(product(factor, scaled[j] ?? ZERO))));
    });
  });
  return rows.map((row) => ratio(row[row.length - 1] ?? ZERO));
}

/** Seventeen digits are enough for a double. */
export function ratio({ n, d }: Fraction): number {
  const scale = 10n ** 20n;
  return Number((n * scale) / d) / 1e20;
}
