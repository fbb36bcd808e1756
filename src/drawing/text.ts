import { bold, type FontFace, regular } from './font-widths.data.ts';
import type { Extent, Spot, TextMark } from './mark.ts';

/** Least height of capitals on paper, mm (ISO 3098-1: 2.5 3.5 5 7). */
export const smallText = 2.5;
export const middleText = 3.5;
export const largeText = 5;

type Weight = TextMark['weight'];

function widthsOf(face: FontFace): ReadonlyMap<string, number> {
  return new Map(face.widths.flatMap(([width, letters]) => [...letters].map((letter) => [letter, width] as const)));
}

const faces: Readonly<Record<Weight, FontFace>> = { regular, bold };
const tables: Readonly<Record<Weight, ReadonlyMap<string, number>>> = {
  regular: widthsOf(regular),
  bold: widthsOf(bold),
};

/** The font size (em) whose capitals are `size` mm high. */
export function emOf(size: number): number {
  return (size * regular.unitsPerEm) / regular.capHeight;
}

/** A letter the shipped font lacks is counted a full em wide, as CJK letters are. */
function advance(letter: string, weight: Weight): number {
  return (tables[weight].get(letter) ?? faces[weight].unitsPerEm) / faces[weight].unitsPerEm;
}

/** Width of one line of text on paper, mm; `size` is the height of its capitals, mm. */
export function textWidth(text: string, size: number, weight: Weight = 'regular'): number {
  let ems = 0;
  for (const letter of text) ems += advance(letter, weight);
  return ems * emOf(size);
}

/** Whether every letter is in the shipped font, so that its width is exact. */
export function isInFont(text: string, weight: Weight): boolean {
  return [...text].every((letter) => tables[weight].has(letter));
}

/** The text cut to a width with an ellipsis; unchanged when it fits. */
export function shortened(text: string, width: number, style: Pick<TextMark, 'size' | 'weight'>): string {
  if (textWidth(text, style.size, style.weight) <= width) return text;
  const letters = [...text];
  while (letters.length > 0 && textWidth(`${letters.join('')}…`, style.size, style.weight) > width) letters.pop();
  return letters.length === 0 ? '' : `${letters.join('').trimEnd()}…`;
}

/** Lines of at most `width` mm, broken at spaces and, where a word is longer than a line, inside it. */
export function wrapped(text: string, width: number, style: Pick<TextMark, 'size' | 'weight'>): readonly string[] {
  const fits = (line: string) => textWidth(line, style.size, style.weight) <= width;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) line = longer;
    else {
      if (line !== '') lines.push(line);
      line = '';
      for (const letter of word) {
        if (line !== '' && !fits(line + letter)) {
          lines.push(line);
          line = '';
        }
        line += letter;
      }
    }
  }
  return line === '' ? lines : [...lines, line];
}

/** Share of the capitals' height that letters reach below the base line and accents above the capitals. */
const below = 0.34;
const above = 1.12;

function startOf(mark: TextMark, width: number): number {
  return mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? -width / 2 : -width;
}

/** The box a line of text takes on paper, accents and descenders included; its width may be known already, mm. */
export function textBox(mark: TextMark, width = textWidth(mark.text, mark.size, mark.weight)): Extent {
  const start = startOf(mark, width);
  const [x, y] = mark.at;
  if (mark.turn === 'right') {
    return { x0: x - above * mark.size, x1: x + below * mark.size, y0: y - start - width, y1: y - start };
  }
  return { x0: x + start, x1: x + start + width, y0: y - above * mark.size, y1: y + below * mark.size };
}

/** A line of small regular lettering, to be changed by `style`. */
export function lettering(
  text: string,
  at: Spot,
  style: Partial<Omit<TextMark, 'kind' | 'text' | 'at'>> = {},
): TextMark {
  return {
    kind: 'text',
    role: 'note',
    at,
    text,
    size: smallText,
    weight: 'regular',
    anchor: 'start',
    turn: 'none',
    ...style,
  };
}
