/** Angle of a frog of number N: 2 atan(1 / 2N), the North American convention; radians, N > 0. */
export function frogAngle(number: number): number {
  return 2 * Math.atan(1 / (2 * number));
}

/** Number of a frog by its angle: N = cot(F / 2) / 2. */
export function frogNumber(angle: number): number {
  return 1 / (2 * Math.tan(angle / 2));
}

/** Along the straight from where the middle lines meet to the point of the frog: N times the gauge; mm. */
export function frogPoint({ number, gauge }: { readonly number: number; readonly gauge: number }): number {
  return number * gauge;
}

/**
 * Straight on the diverging way between the frog points of a crossover: s / sin F - 2 N g, for tracks `spacing` apart;
 * negative when the frogs overlap. mm.
 */
export function crossoverStraight(track: {
  readonly spacing: number;
  readonly number: number;
  readonly gauge: number;
}): number {
  return track.spacing / Math.sin(frogAngle(track.number)) - 2 * track.number * track.gauge;
}

/** Lengths of a frog-number turnout, mm: `lead` from the points' tips to the frog's point. */
export type FrogLengths = {
  readonly pointRail: number;
  readonly closure: number;
  readonly toe: number;
  readonly heel: number;
  readonly lead: number;
};

const INCH = 25.4;
const RP_GAUGE = 9;

/** NMRA RP-12.7, turnouts of 9 mm gauge: closure rail, toe and heel by frog number, inches. */
const RP_12_7 = [
  { number: 4, closure: 1.269, toe: 0.3, heel: 0.512 },
  { number: 5, closure: 1.546, toe: 0.337, heel: 0.581 },
  { number: 6, closure: 1.793, toe: 0.375, heel: 0.644 },
] as const;

/** NMRA RP-12.7: point rail of numbers 4 to 6, inches. */
const POINT_RAIL = 1.088;

/** Whether a gauge and number stand in RP-12.7 itself. */
export function isListedFrog({ number, gauge }: { readonly number: number; readonly gauge: number }): boolean {
  return gauge === RP_GAUGE && RP_12_7.some((row) => row.number === number);
}

/**
 * Lengths of a turnout by frog number: RP-12.7 for 9 mm gauge and numbers 4 to 6; other numbers on the straight line
 * through the nearest two rows, other gauges in proportion (ours, no standard). mm.
 */
export function frogLengths({ number, gauge }: { readonly number: number; readonly gauge: number }): FrogLengths {
  const [low, high] = number < 5 ? [RP_12_7[0], RP_12_7[1]] : [RP_12_7[1], RP_12_7[2]];
  const share = number - low.number;
  const at = (key: 'closure' | 'toe' | 'heel') => low[key] + share * (high[key] - low[key]);
  const scale = (INCH * gauge) / RP_GAUGE;
  const [pointRail, closure, toe, heel] = [POINT_RAIL, at('closure'), at('toe'), at('heel')].map((one) => one * scale);
  const lengths = { pointRail: pointRail ?? 0, closure: closure ?? 0, toe: toe ?? 0, heel: heel ?? 0 };
  return { ...lengths, lead: lengths.pointRail + lengths.closure + lengths.toe };
}
