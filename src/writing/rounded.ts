/** Rounded to a thousandth, never -0; export keeps mm, kg and N to this. */
export function thousandth(value: number): number {
  const rounded = Math.round(value * 1000) / 1000;
  return rounded === 0 ? 0 : rounded;
}

/** Rounded to a millionth, never -0: angles, grades and parts of unit vectors, which move far ends. */
export function millionth(value: number): number {
  const rounded = Math.round(value * 1e6) / 1e6;
  return rounded === 0 ? 0 : rounded;
}

export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

function byCodeUnit(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** A quantity to a thousandth if it is a length, else to a millionth: 1:150 is 0.006667. */
export function byDimension(dimension: unknown): (value: number) => number {
  return dimension === undefined || dimension === 'length' ? thousandth : millionth;
}

/** Plain data with its keys in the order of the alphabet, `leading` ones first; lengths to a thousandth. */
export function plain(value: unknown, leading: readonly string[] = []): Json {
  return plainly(value, leading, thousandth);
}

const turns = ['angle', 'turn'];

function plainly(value: unknown, leading: readonly string[], round: (value: number) => number): Json {
  if (typeof value === 'number') return round(value);
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value;
  if (Array.isArray(value)) return value.map((item) => plainly(item, leading, round));
  if (typeof value !== 'object') throw new Error(`no plain data: ${typeof value}`);
  const rank = (key: string) => (leading.includes(key) ? leading.indexOf(key) : leading.length);
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  const own = 'dimension' in value && typeof value.dimension === 'string' ? byDimension(value.dimension) : thousandth;
  const ordered = entries.sort(([a], [b]) => rank(a) - rank(b) || byCodeUnit(a, b));
  return Object.fromEntries(
    ordered.map(([key, item]) => [key, plainly(item, leading, turns.includes(key) ? millionth : own)]),
  );
}
