/** A climb: how far up, and the rule for its vertical curves in mm of curve for each 1 %; mm. */
type Climb = { readonly rise: number; readonly perPercent: number };

/**
 * Run of a ramp that climbs at a grade between two level stretches: rise / grade + one vertical curve, since half of each
 * curve lies outside its break. Grade as a ratio; mm.
 */
export function rampRun({ rise, perPercent, grade }: Climb & { readonly grade: number }): number {
  return rise / grade + perPercent * 100 * grade;
}

/** The shortest run that climbs so far at all, and its grade: both curves meet in the middle; mm and ratio. */
export function leastRamp({ rise, perPercent }: Climb): { readonly run: number; readonly grade: number } {
  const c = perPercent * 100;
  return { run: 2 * Math.sqrt(rise * c), grade: Math.sqrt(rise / c) };
}

/** The most a ramp can climb within a run, and its grade; mm and ratio. */
export function mostRise({ run, perPercent }: { readonly run: number; readonly perPercent: number }) {
  const c = perPercent * 100;
  return { rise: (run * run) / (4 * c), grade: run / (2 * c) };
}

/** The run that a rise needs at a steady grade, without curves; mm. */
export function plainRun({ rise, grade }: { readonly rise: number; readonly grade: number }): number {
  return rise / grade;
}

/** What a helix climbs in one turn; grade as a ratio, mm. */
export function helixRise({ radius, grade }: { readonly radius: number; readonly grade: number }): number {
  return 2 * Math.PI * radius * grade;
}

/** Grade of a helix that climbs so far in one turn, as a ratio. */
export function helixGrade({ radius, rise }: { readonly radius: number; readonly rise: number }): number {
  return rise / (2 * Math.PI * radius);
}
