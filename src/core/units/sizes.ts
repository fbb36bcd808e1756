import { firstLiteral, oneLength, oneNumber, shopText } from './one-length.ts';

/** A way a size lies, when the author says so. */
export type Axis = 'length' | 'width' | 'depth' | 'height' | 'thickness';

/** One of the sizes of a thing: its text without the axis word, and its length in mm. */
export type Size = { readonly text: string; readonly mm: number; readonly axis: Axis | null };

const AXES: Readonly<Record<string, Axis>> = {
  long: 'length',
  length: 'length',
  wide: 'width',
  width: 'width',
  deep: 'depth',
  depth: 'depth',
  tall: 'height',
  high: 'height',
  height: 'height',
  thick: 'thickness',
};

const AXIS = /^(.*[^ ]) +(long|length|wide|width|deep|depth|tall|high|height|thick)$/;
const BETWEEN = / *[x×] *| +(?:by|and) +|, +/;

/** A text parted from the axis word at its end: `44" wide`. */
export function withAxis(text: string): { readonly text: string; readonly axis: Axis | null } {
  const found = AXIS.exec(text);
  const [, value = text, word = ''] = found ?? [];
  return { text: value.trim(), axis: AXES[word] ?? null };
}

/** The unit at the end of the last size, which earlier sizes without one share: `1200 x 600 mm`. */
function sharedUnit(last: string): string {
  const literal = firstLiteral(last);
  const unit = /(?:[\p{L}.]+|["']+)$/u.exec(last);
  return literal === null || unit === null ? '' : unit[0];
}

function sizeOf(text: string, unit: string): Size | null {
  const { text: value, axis } = withAxis(text);
  const spelt = oneNumber(value) === null ? value : `${value}${/^["']/.test(unit) ? '' : ' '}${unit}`.trim();
  const mm = oneLength(spelt);
  return mm === null ? null : { text: spelt, mm, axis };
}

/**
 * Two or three lengths written at once: `3'x8'`, `5-inch by 3-foot-2-inch`, `44" wide by 26" deep and 35" tall`.
 * Lengths in mm; null when the text is anything else.
 */
export function readSizes(text: string): readonly Size[] | null {
  const pieces = shopText(text)?.split(BETWEEN) ?? [];
  if (pieces.length < 2 || pieces.length > 3) return null;
  const unit = sharedUnit(withAxis(pieces.at(-1) ?? '').text);
  const sizes = pieces.map((piece) => sizeOf(piece, unit)).filter((size) => size !== null);
  return sizes.length === pieces.length ? sizes : null;
}
