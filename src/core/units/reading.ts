import { type Misread, misread, quoted } from './misread.ts';
import { roundTo } from './round.ts';

/** A way to read a text that has two: the text it should have been, and the length it would mean. */
export type Reading = { readonly text: string; readonly mm: number };

/** A length in both units, inside parentheses of a fault: 1500 mm, 59.055 in. */
export function inBothUnits(mm: number): string {
  return `${roundTo(mm, 0.01)} mm, ${roundTo(mm / 25.4, 0.001)} in`;
}

/** A length in a sentence, the other unit in parentheses: 1500 mm (59.055 in). */
export function bothUnits(mm: number): string {
  return `${roundTo(mm, 0.001)} mm (${roundTo(mm / 25.4, 0.001)} in)`;
}

function told({ text, mm }: Reading): string {
  return `\`${text}\` (${inBothUnits(mm)})`;
}

function joined(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} or ${items.at(-1)}`;
}

/** The readings in words, each with its value in both units, and what to write instead. */
export function readingWords(readings: readonly Reading[]): readonly [readings: string, mend: string] {
  return [joined(readings.map(told)), `write ${joined([...new Set(readings.map(({ text }) => `\`${text}\``))])}`];
}

/** The fault of a text with two readings: both are named, each with its value in both units. */
export function twoReadings(offset: number, written: string, readings: readonly Reading[]): Misread {
  const [words, mend] = readingWords(readings);
  return misread(offset, 'two-readings', [`${quoted(written)} can be read as ${words}`, mend]);
}
