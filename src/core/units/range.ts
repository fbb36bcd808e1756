import { numeralAt } from './numeral.ts';
import { oneLength, shopText } from './one-length.ts';
import { quotient } from './ratio.ts';
import { type Axis, withAxis } from './sizes.ts';

/** From a length to a longer one, mm. */
export type Range = { readonly from: number; readonly to: number; readonly axis: Axis | null };

const PARTED = /^([\d./ ]+) *([^\d]*?)(?:-| - | to )([\d./ ]+) *(.+)$/;

/** A range of lengths: `40-43" wide`, `18 to 19 mm`; null when the text is anything else, `7-1/2"` among it. */
export function readRange(text: string): Range | null {
  const { text: value, axis } = withAxis(shopText(text) ?? '');
  const [, low = '', lowUnit = '', high = '', unit = ''] = PARTED.exec(value) ?? [];
  if (low === '') return null;
  const from = oneLength(`${low.trim()} ${lowUnit.trim() === '' ? unit : lowUnit.trim()}`);
  const to = oneLength(`${high.trim()} ${unit}`);
  return from !== null && to !== null && from < to ? { from, to, axis } : null;
}

/** Feet and inches that a range may have been meant as: `5-6"` as 5 ft 6 in; null when it can't be. */
export function asFeetAndInches(text: string): string | null {
  const found = /^(\d+)-(\d+(?: \d+\/\d+)?) *(?:"|in|inch|inches)$/.exec(shopText(text) ?? '');
  const inches = found === null ? null : numeralAt(found[2] ?? '', 0);
  if (found === null || inches === null || quotient(inches.ratio) >= 12) return null;
  return `${found[1]}' ${found[2]}"`;
}
