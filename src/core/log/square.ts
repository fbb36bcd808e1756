/** A frame that should be a rectangle: its sides and the two diagonals measured, mm. */
export type Diagonals = {
  readonly length: number;
  readonly width: number;
  readonly readings: readonly [number, number];
};

/**
 * How far the corner is from square, radians, >= 0. From the law of cosines on both halves of a parallelogram:
 * d1^2 - d2^2 = 4 L W sin(skew). NaN never: a difference no frame can have counts as a quarter turn.
 */
export function skew({ length, width, readings }: Diagonals): number {
  const sine = Math.abs(readings[0] ** 2 - readings[1] ** 2) / (4 * length * width);
  return Math.asin(Math.min(1, sine));
}

/** Extra width a box `depth` deep needs when it is skewed, mm: W + D tan(skew). */
export function skewedWidth(width: number, depth: number, skewed: number): number {
  return width + depth * Math.tan(skewed);
}

/** What comes off each side of a box to go from one clearance (both sides together) to another, mm. */
export function offEachSide(clearance: number, wanted: number): number {
  return (wanted - clearance) / 2;
}
