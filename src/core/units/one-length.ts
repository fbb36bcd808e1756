import { plain } from './characters.ts';
import { literalAt } from './literal.ts';
import { Misread } from './misread.ts';
import type { Expression } from './quantity.ts';

/** Longest text of shop notation read: a line in a list, not a page. */
const LONGEST = 400;

/** A text of shop notation made plain, trimmed, its spaces single; null when it is too long to be one. */
export function shopText(text: string): string | null {
  return text.length > LONGEST ? null : plain(text).trim().replace(/ +/g, ' ');
}

/** The literal that begins a text, or null when what stands there is no value with one reading. */
export function firstLiteral(text: string): Expression | null {
  try {
    return literalAt(text, 0, 'length');
  } catch (stop) {
    if (stop instanceof Misread) return null;
    throw stop;
  }
}

/** The length a whole text is, mm, or null when it is anything else. */
export function oneLength(text: string): number | null {
  const literal = firstLiteral(text);
  if (literal === null || literal.kind !== 'literal' || literal.dimension !== 'length') return null;
  return literal.to === text.length ? literal.value : null;
}

/** The plain number a whole text is, or null. */
export function oneNumber(text: string): number | null {
  const literal = firstLiteral(text);
  if (literal === null || literal.kind !== 'literal' || literal.dimension !== 'number') return null;
  return literal.to === text.length ? literal.value : null;
}
