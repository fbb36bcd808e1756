/** Rounded to a thousandth, never -0; export keeps mm, kg and N to this. */
export function thousandth(value: number): number {
  const rounded = Math.round(value * 1000) / 1000;
  return rounded === 0 ? 0 : rounded;
}

/** Rounded to a millionth, never -0: angles in radians and parts of unit vectors, which move far ends. */
export function millionth(value: number): number {
  const rounded = Math.round(value * 1e6) / 1e6;
  return rounded === 0 ? 0 : rounded;
}

export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

function byCodeUnit(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Plain data with every length to a thousandth and its keys in the order of the alphabet; `leading` keys come first. */
export function plain(value: unknown, leading: readonly string[] = []): Json {
  if (typeof value === 'number') return thousandth(value);
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value;
  if (Array.isArray(value)) return value.map((item) => plain(item, leading));
  if (typeof value !== 'object') throw new Error(`no plain data: ${typeof value}`);
  const rank = (key: string) => (leading.includes(key) ? leading.indexOf(key) : leading.length);
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  const ordered = entries.sort(([a], [b]) => rank(a) - rank(b) || byCodeUnit(a, b));
  return Object.fromEntries(
    ordered.map(([key, item]) => [key, key === 'angle' || key === 'turn' ? angle(item) : plain(item, leading)]),
  );
}

function angle(value: unknown): Json {
  return typeof value === 'number' ? millionth(value) : plain(value);
}
