import { oneLength, oneNumber, shopText } from './one-length.ts';

/** A board's name in the trade: what it was before it was planed, in inches as named. */
export type NominalSize = {
  readonly thickness: number;
  readonly width: number;
  /** planed size in mm where the standard lists it */
  readonly dressed: { readonly thickness: number; readonly width: number } | null;
};

/** Boards named together, `1x3's and 4's`, with the length they are wanted in, mm. */
export type Nominal = { readonly sizes: readonly NominalSize[]; readonly length: number | null };

/** Dressed dry thickness by nominal, inches; PS 20 American Softwood Lumber Standard. */
const DRESSED_THICKNESS: Readonly<Record<number, number>> = { 1: 0.75, 2: 1.5, 4: 3.5 };

/** Dressed dry width by nominal, inches; PS 20 American Softwood Lumber Standard. */
const DRESSED_WIDTH: Readonly<Record<number, number>> = {
  2: 1.5,
  3: 2.5,
  4: 3.5,
  6: 5.5,
  8: 7.25,
  10: 9.25,
  12: 11.25,
};

const THICKNESSES = [0.5, 0.625, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4];
const WIDTHS = [2, 3, 4, 5, 6, 8, 10, 12];
const HEAD = /^(\d+(?:[ -]?\d*\/\d+)?)("?) *[x×] *(\d+)("?)('?s)?/;
const MORE = /^(?: *, *| +and +|\/)(\d+)'?s/;

function dressed(thickness: number, width: number): NominalSize['dressed'] {
  const [thick, wide] = [DRESSED_THICKNESS[thickness], DRESSED_WIDTH[width]];
  return thick === undefined || wide === undefined ? null : { thickness: (thick * 254) / 10, width: (wide * 254) / 10 };
}

function sizesOf(thickness: number, widths: readonly number[]): readonly NominalSize[] | null {
  if (!THICKNESSES.includes(thickness) || !widths.every((width) => WIDTHS.includes(width) && width >= thickness))
    return null;
  return widths.map((width) => ({ thickness, width, dressed: dressed(thickness, width) }));
}

/** Widths named after the first: `1x3's and 4's`. */
function moreWidths(text: string): { readonly widths: readonly number[]; readonly rest: string } {
  const widths: number[] = [];
  let rest = text;
  for (let found = MORE.exec(rest); found !== null; found = MORE.exec(rest)) {
    widths.push(Number(found[1]));
    rest = rest.slice(found[0].length);
  }
  return { widths, rest };
}

/** The length after the size: feet or inches, a board is longer than it is wide; undefined when it is something else. */
function lengthOf(rest: string, width: number): number | null | undefined {
  if (rest.trim() === '') return null;
  const mm = oneLength(rest.replace(/^ *[x×] */, '').trim());
  return mm !== null && /^ *[x×]/.test(rest) && mm > width * 2 * 25.4 ? mm : undefined;
}

/**
 * A nominal lumber size: `1x4`, `1" x 4" x 8'`, `1x3's and 4's`, `1/2 x 4s`; null when the text is anything else.
 * Inch marks on both numbers count as a nominal size only with a length after it.
 */
export function readNominal(text: string): Nominal | null {
  const plainText = shopText(text) ?? '';
  const found = HEAD.exec(plainText);
  if (found === null) return null;
  const [head, thick = '', firstMark, wide = '', secondMark, plural] = found;
  const { widths, rest } = moreWidths(plainText.slice(head.length));
  const sizes = sizesOf(oneNumber(thick) ?? 0, [Number(wide), ...widths]);
  const length = lengthOf(rest, Number(wide));
  if (sizes === null || length === undefined || firstMark !== secondMark) return null;
  if (firstMark === '"' && length === null && plural === undefined) return null;
  return { sizes, length };
}
