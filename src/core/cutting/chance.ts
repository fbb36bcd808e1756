/** Numbers that look random and are always the same: xorshift, 32 bits, one word of state (Marsaglia 2003). */
export type Chance = { state: number };

export function chance(seed: number): Chance {
  return { state: (seed | 0) === 0 ? 1 : seed | 0 };
}

/** A whole number from 0 to below `limit`. */
export function draw(from: Chance, limit: number): number {
  return Math.floor(share(from) * limit);
}

/** A number from 0 to below 1. */
export function share(from: Chance): number {
  let x = from.state;
  x ^= x << 13;
  x ^= x >>> 17;
  x ^= x << 5;
  from.state = x;
  return (x >>> 0) / 4294967296;
}
