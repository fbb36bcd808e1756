/**
 * A dual-feasible function on sizes up to a capacity: whatever sizes fit together, their values fit into one. So the sum
 * of values is a bound on the number of capacities needed. Sizes are whole numbers.
 */
export type DualFeasible = (size: number) => number;

/** Sizes themselves. */
export function plain(capacity: number): DualFeasible {
  return (size) => size / capacity;
}

/** Small sizes count nothing, and what leaves only room for small ones counts whole (Martello and Toth 1990). */
export function threshold(capacity: number, k: number): DualFeasible {
  return (size) => (size > capacity - k ? 1 : size < k ? 0 : size / capacity);
}

/** Counts in steps of k, large sizes by what they leave (Carlier, Clautiaux and Moukrim 2007, f2). 0 < k <= capacity / 2. */
export function steps(capacity: number, k: number): DualFeasible {
  const whole = Math.floor(capacity / k);
  return (size) => {
    if (2 * size > capacity) return (whole - Math.floor((capacity - size) / k)) / whole;
    return 2 * size === capacity ? 1 / 2 : Math.floor(size / k) / whole;
  };
}

/** Rounds down to multiples of a (k + 1)th, except exact multiples (Fekete and Schepers 2001, u). k >= 1. */
export function rounded(capacity: number, k: number): DualFeasible {
  return (size) => {
    const scaled = (k + 1) * size;
    return scaled % capacity === 0 ? size / capacity : Math.floor(scaled / capacity) / k;
  };
}

/** The functions tried in one direction: plain, and the others for thresholds taken from the sizes, at most `most` of them. */
export function dualFeasible(capacity: number, sizes: Iterable<number>, most: number): readonly DualFeasible[] {
  const marks = [...new Set([...sizes].map((size) => Math.min(size, capacity - size)))];
  const fit = marks.filter((k) => k > 0 && 2 * k <= capacity).sort((a, b) => a - b);
  const every = Math.max(1, Math.ceil(fit.length / most));
  const chosen = fit.filter((_, index) => index % every === 0);
  const ks = Array.from({ length: 10 }, (_, i) => i + 1);
  return [
    plain(capacity),
    ...chosen.flatMap((k) => [threshold(capacity, k), steps(capacity, k)]),
    ...ks.map((k) => rounded(capacity, k)),
  ];
}
