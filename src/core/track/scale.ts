/** What the standards say of a scale. Gauge mm; ratios 160 for 1:160; `foot` mm of model for a foot of prototype. */
export type ScaleFigures = {
  readonly gauge: number;
  /** 1:n as NMRA S-1 has it; OO by common practice */
  readonly ratio: number;
  /** 1:n as NEM 010 has it; null where it has none */
  readonly nem: number | null;
};

/** NEM 010 (2011) and the NMRA's scales; HO is 3.5 mm to the foot, O a quarter inch, OO 4 mm. */
const SCALES: Readonly<Record<string, ScaleFigures>> = {
  Z: { gauge: 6.5, ratio: 220, nem: 220 },
  N: { gauge: 9, ratio: 160, nem: 160 },
  TT: { gauge: 12, ratio: 120, nem: 120 },
  HO: { gauge: 16.5, ratio: 304.8 / 3.5, nem: 87 },
  OO: { gauge: 16.5, ratio: 304.8 / 4, nem: null },
  S: { gauge: 22.5, ratio: 64, nem: 64 },
  O: { gauge: 32, ratio: 48, nem: 45 },
  1: { gauge: 45, ratio: 32, nem: 32 },
};

const OTHER_NAMES: Readonly<Record<string, string>> = { H0: 'HO', '0': 'O' };

/** The figures of a scale by its letters; throws a RangeError for letters the schema does not take. */
export function scaleFigures(scale: string): ScaleFigures {
  const figures = SCALES[OTHER_NAMES[scale] ?? scale];
  if (figures === undefined) throw new RangeError(`no scale ${scale}`);
  return figures;
}

/** Gauge of a scale, mm. */
export function gaugeOf(scale: string): number {
  return scaleFigures(scale).gauge;
}

/** A length of the prototype in mm at a scale's ratio; mm. */
export function modelLength(prototype: number, scale: string): number {
  return prototype / scaleFigures(scale).ratio;
}

/** A speed of the prototype, miles an hour, in mm a second of the model. */
export function modelSpeed(milesAnHour: number, scale: string): number {
  return (milesAnHour * 1609344) / 3600 / scaleFigures(scale).ratio;
}
