/** A short trips a breaker at once when it draws this many times its trip current; common practice, no source. */
export const TRIP_FACTOR = 2;

/** A fuse carries its load for long at this many times the load: NEC 240 practice, as builders quote it. */
export const FUSE_OVER_LOAD = 1.25;

/** A tail shorter than this may carry what chassis wiring may; longer runs are planned with the cautious figure. mm */
export const TAIL_LIMIT = 300;

/** A supply of class 2: at most 30 V and 100 VA (NEC 725, as read). V, VA. */
export const CLASS_2 = { volts: 30, voltAmps: 100 } as const;

/** Extra-low voltage: at most 50 V alternating, which a digital signal is, or 120 V direct (IEC 61140, as read). V */
export const EXTRA_LOW = { digital: 50, dc: 120 } as const;

/** Current of a dead short at the end of a loop; ohm > 0. A. */
export function shortAmps(volts: number, loop: number): number {
  return volts / loop;
}

/** Whether a short through a loop resistance trips at once. */
export function trips({ volts, loop, tripsAt, factor = TRIP_FACTOR }: ShortTest): boolean {
  return loop === 0 || shortAmps(volts, loop) >= factor * tripsAt;
}

type ShortTest = {
  readonly volts: number;
  readonly loop: number;
  readonly tripsAt: number;
  readonly factor?: number;
};

/** The most a loop may resist so that a short in it trips at once: V / (factor x trip); ohm. */
export function mostLoop({ volts, tripsAt, factor = TRIP_FACTOR }: Omit<ShortTest, 'loop'>): number {
  return volts / (factor * tripsAt);
}

/** The fuses that carry a load and protect a wire, least and most; null when none does both. A. */
export function fuseRange(load: number, wire: number): { readonly least: number; readonly most: number } | null {
  const least = FUSE_OVER_LOAD * load;
  return least <= wire ? { least, most: wire } : null;
}

/** What a wire of these ratings may carry over a run of `length` mm. A. */
export function carries(amps: { readonly chassis: number; readonly cautious: number }, length: number): number {
  return length < TAIL_LIMIT ? amps.chassis : amps.cautious;
}

/** Whether a supply is within class 2. */
export function isClass2(volts: number, amps: number): boolean {
  return volts <= CLASS_2.volts && volts * amps <= CLASS_2.voltAmps;
}
