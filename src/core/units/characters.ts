/** Characters copied from the web or a word processor, by the plain one they stand for. Each is one code unit. */
const PLAIN: Readonly<Record<string, string>> = {
  '‘': "'",
  '’': "'",
  '‛': "'",
  '′': "'",
  ʹ: "'",
  '´': "'",
  '`': "'",
  '“': '"',
  '”': '"',
  '‟': '"',
  '″': '"',
  ʺ: '"',
  '−': '-',
  '‐': '-',
  '‑': '-',
  '–': '-',
  '⁄': '/',
  '∕': '/',
  '÷': '/',
  '\u00a0': ' ',
  '\u2002': ' ',
  '\u2007': ' ',
  '\u2009': ' ',
  '\u202f': ' ',
  '\t': ' ',
  '\r': ' ',
  '\n': ' ',
};

const ODD = /[‘’‛′ʹ´`“”‟″ʺ−‐‑–⁄∕÷\u00a0\u2002\u2007\u2009\u202f\t\r\n]/g;

/** The text with curly quotes, primes, long dashes and odd spaces made plain; every offset stays where it was. */
export function plain(text: string): string {
  return text.replace(ODD, (character) => PLAIN[character] ?? character);
}

/** Fractions that are one character. */
export const VULGAR: Readonly<Record<string, readonly [number, number]>> = {
  '½': [1, 2],
  '⅓': [1, 3],
  '⅔': [2, 3],
  '¼': [1, 4],
  '¾': [3, 4],
  '⅕': [1, 5],
  '⅖': [2, 5],
  '⅗': [3, 5],
  '⅘': [4, 5],
  '⅙': [1, 6],
  '⅚': [5, 6],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
};
