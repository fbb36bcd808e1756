import type { DrawingUnit } from './drawing.ts';

/** The least difference a drawing prints: 0.1 mm, or 1/32 in. In mm. */
export const leastStep: Readonly<Record<DrawingUnit, number>> = { mm: 0.1, in: 25.4 / 32 };

/** An inch figure further than this from the true length carries a + or a - (1/128 in). In mm. */
const remainderThatMatters = 25.4 / 128;

/** What doubles lose in a division: a length typed as a half still rounds up. */
const halfSlack = 1e-9;

/** The ordinate as a whole number of least steps, so that differences of printed ordinates add up as printed. */
export function onGrid(mm: number, unit: DrawingUnit): number {
  const steps = Math.floor(mm / leastStep[unit] + 0.5 + halfSlack);
  return steps === 0 ? 0 : steps;
}

function millimetres(steps: number): string {
  return String(steps / 10);
}

function inches(steps: number): string {
  const whole = Math.floor(Math.abs(steps) / 32);
  let top = Math.abs(steps) % 32;
  let bottom = 32;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const fraction = top === 0 ? '' : `${top}/${bottom}`;
  const figure = whole === 0 ? fraction || '0' : [whole, fraction].filter((piece) => piece !== '').join(' ');
  return steps < 0 ? `-${figure}` : figure;
}

/** What is printed for so many least steps; `exact` (mm) adds the inch sign of a remainder that matters. */
export function stepsText(steps: number, unit: DrawingUnit, exact: number): string {
  if (unit === 'mm') return millimetres(steps);
  const over = exact - steps * leastStep.in;
  const sign = Math.abs(over) <= remainderThatMatters ? '' : over > 0 ? '+' : '-';
  return inches(steps) + sign;
}

/** A length printed on its own, rounded once. */
export function lengthText(mm: number, unit: DrawingUnit): string {
  return stepsText(onGrid(mm, unit), unit, mm);
}

/** A distance printed as the difference of its rounded ends; a chain of such figures adds up as printed. */
export function betweenText(from: number, to: number, unit: DrawingUnit): string {
  return stepsText(onGrid(to, unit) - onGrid(from, unit), unit, to - from);
}

/** The name of the unit as the title block gives it. */
export const unitNames: Readonly<Record<DrawingUnit, string>> = { mm: 'mm', in: 'inches' };

/** A length inside a sentence, with its unit; ~ says that an inch figure was rounded. */
export function saidLength(mm: number, unit: DrawingUnit): string {
  const text = lengthText(mm, unit);
  return /[+-]$/.test(text) ? `~${text.slice(0, -1)} ${unit}` : `${text} ${unit}`;
}
