const IN = 25.4;

/** Diameter of a wood screw by its number, mm: 0.060 in + 0.013 in a number (from memory; agrees with the table of holes). */
export function screwDiameter(number: number): number {
  return (0.06 + 0.013 * number) * IN;
}

/** Holes for a screw, mm: pilots for its thread in soft and hard wood, clearance for its shank. */
export type ScrewHoles = {
  readonly number: number;
  readonly softwood: number;
  readonly hardwood: number;
  readonly clearance: number;
};

/** Pilot and clearance holes by screw number, as woodworkers' tables that follow the American Wood Council print them. */
const TABLE: readonly ScrewHoles[] = [
  { number: 6, softwood: IN / 16, hardwood: (5 * IN) / 64, clearance: (9 * IN) / 64 },
  { number: 8, softwood: (5 * IN) / 64, hardwood: (3 * IN) / 32, clearance: (11 * IN) / 64 },
  { number: 10, softwood: (3 * IN) / 32, hardwood: (7 * IN) / 64, clearance: (3 * IN) / 16 },
];

/** A metric screw counts as the number nearest to it when it is no further off than this, mm. */
const NEAR = 0.4;

/** Holes for a screw of this diameter, mm; null outside the table. */
export function screwHoles(diameter: number): ScrewHoles | null {
  const off = ({ number }: ScrewHoles) => Math.abs(screwDiameter(number) - diameter);
  const nearest = TABLE.reduce<ScrewHoles | null>(
    (best, one) => (best === null || off(one) < off(best) ? one : best),
    null,
  );
  return nearest === null || off(nearest) > NEAR ? null : nearest;
}
