import type { Block } from './block.ts';
import type { Dimension } from './dimension.ts';
import type { Mark } from './mark.ts';
import { lettering, smallText, textWidth, wrapped } from './text.ts';

const lineHeight = 4.4;
/** A column of notes, mm, and the most lines in it so that it fits the smallest paper. */
const width = 118;
const mostLines = 26;
/** A longer leading word stands on a line of its own, mm. */
const mostIndent = 32;

/** A note led by a bold word, with the figures that stand in it. */
export type Note = { readonly letter: string; readonly words: string; readonly dimensions: readonly Dimension[] };

type Line = {
  readonly letter: string;
  readonly words: string;
  readonly indent: number;
  readonly dimensions: readonly Dimension[];
};

const regular = { size: smallText, weight: 'regular' } as const;
const bold = { size: smallText, weight: 'bold' } as const;

function letterWidth({ letter }: Note): number {
  return letter === '' ? 0 : textWidth(letter, smallText, 'bold') + 2.5;
}

function linesOf(note: Note, indent: number): readonly Line[] {
  const words = wrapped(note.words, width - indent, regular).map((line) => ({
    letter: '',
    words: line,
    indent,
    dimensions: [],
  }));
  const [first, ...rest] = words;
  if (letterWidth(note) > mostIndent || first === undefined) {
    const leads = wrapped(note.letter, width, bold).map(
      (letter): Line => ({ letter, words: '', indent, dimensions: [] }),
    );
    return [...leads, ...words].map((line, i) => (i === 0 ? { ...line, dimensions: note.dimensions } : line));
  }
  return [{ ...first, letter: note.letter, dimensions: note.dimensions }, ...rest];
}

function pageBlock(heading: string, lines: readonly Line[]): Block {
  const marks = lines.flatMap(({ letter, words, indent }, i): readonly Mark[] => {
    const y = (i + 1) * lineHeight + 0.8;
    const both = [lettering(letter, [0, y], { weight: 'bold' }), lettering(words, [indent, y])];
    return both.filter(({ text }) => text !== '');
  });
  const dimensions = lines.flatMap((line) => line.dimensions);
  return { marks: [lettering(heading, [0, 0], { weight: 'bold' }), ...marks], views: [], dimensions };
}

/** Whole notes to a page; one that is longer than a page goes on in the next. */
function paged(notes: readonly (readonly Line[])[]): readonly (readonly Line[])[] {
  const pages: Line[][] = [];
  for (const lines of notes) {
    const last = pages.at(-1);
    if (last !== undefined && last.length + lines.length <= mostLines) last.push(...lines);
    else for (let from = 0; from < lines.length; from += mostLines) pages.push(lines.slice(from, from + mostLines));
  }
  return pages;
}

/** Notes one under the other, wrapped to a column; a block for each column that is full. */
export function noteBlocks(heading: string, notes: readonly Note[]): readonly Block[] {
  const widths = notes.map(letterWidth).filter((one) => one <= mostIndent);
  const indent = Math.max(0, ...widths);
  const pages = paged(notes.map((note) => linesOf(note, indent)));
  return pages.map((lines, i) => pageBlock(i === 0 ? heading : `${heading}, continued`, lines));
}
