/** Lengths that come off one millimetre grid and one of 64ths alike, without the last bits of floating point; mm. */
export function tidy(value: number): number {
  return Math.round(value * 1e9) / 1e9 || 0;
}

/** The step a machine is set in when the author names none: 0.1 mm, or 1/64 in where pages show inches; mm. */
export function settingStep(show: 'mm' | 'in'): number {
  return show === 'mm' ? 0.1 : 25.4 / 64;
}

/** The nearest whole number of steps, mm. */
export function onStep(value: number, step: number): number {
  return tidy(Math.round(tidy(value / step)) * step);
}

/** Depth of dados and rabbets: a third of the sheet, common practice, no source; on the machine's step, mm. */
export function dadoDepth(thickness: number, step: number): number {
  return onStep(thickness / 3, step);
}

/** Depth of each half of a lap: half the strut and the relief, on the machine's step and never under half the strut; mm. */
export function lapDepth(strut: number, relief: number, step: number): number {
  const depth = onStep(strut / 2 + relief, step);
  return tidy(depth < strut / 2 ? depth + step : depth);
}

/** Width of a slot: the thickest reading of what enters, and its clearance; mm. */
export function slotWidth(thickest: number, clearance: number): number {
  return tidy(thickest + clearance);
}
