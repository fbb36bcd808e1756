import type { Difference, Impact } from '../core/log/impact.ts';
import { both, type Html, line, listed, partLinks, text } from './html.ts';
import { lengthPair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { counted, plainName } from './words.ts';

/** One thing a change did, in words. */
export type Effect = { readonly name: string; readonly words: Html };

const SIZES: readonly string[] = ['length', 'width', 'thickness'];

function sizeWords({ after, before, what }: Difference): Html {
  const said = (value: string | number) => (typeof value === 'number' ? both(lengthPair(value)) : text(value));
  return line(text(`${what} `), said(before), text(' to '), said(after));
}

/** Sizes in full; slots, holes and the like by their number. */
function differenceWords(differences: readonly Difference[]): Html {
  const sizes = differences.filter(({ what }) => SIZES.includes(what)).map(sizeWords);
  const cuts = new Set(differences.filter(({ what }) => !SIZES.includes(what)).map(({ what }) => what.split('.')[0]));
  const moved = cuts.size === 0 ? [] : [text(`${counted(cuts.size, 'cut')} moved or new`)];
  return listed([...sizes, ...moved]);
}

function remade(book: Book, made: readonly string[]): Html {
  return made.length === 0 ? text('') : line(text('. Cut already, and no longer right: '), partLinks(book, made));
}

/** What a change did to parts and sheets: what changed, came, went, and what had been cut by then. */
export function impactEffects(book: Book, impact: Impact): readonly Effect[] {
  const { added, changed, removed, sheets } = impact;
  return [
    ...changed.map(({ alreadyMade, differences, instances }) => ({
      name: 'Changes',
      words: line(partLinks(book, instances), text(': '), differenceWords(differences), remade(book, alreadyMade)),
    })),
    ...(added.length > 0 ? [{ name: 'Comes', words: partLinks(book, added) }] : []),
    ...removed.map(({ alreadyMade, instances }) => ({
      name: 'Goes',
      words: line(partLinks(book, instances), remade(book, alreadyMade)),
    })),
    ...sheets.map(({ after, before, stock }) => ({
      name: 'Sheets',
      words: text(`${plainName(stock)}: ${before} before, ${after} after`),
    })),
  ];
}

/** What an entry's changes touched, in one line; null when it changed nothing or the comparison is not known. */
export function impactSummary(book: Book, entry: string): Html | null {
  const impact = book.impacts?.find((one) => one.entry === entry)?.impact ?? null;
  if (impact === null) return null;
  const { added, changed, removed } = impact;
  const made = [...changed, ...removed].flatMap(({ alreadyMade }) => alreadyMade);
  const counts = [
    ...(changed.length > 0 ? [`changes ${counted(changed.length, 'part')}`] : []),
    ...(added.length > 0 ? [`brings ${counted(added.length, 'piece')}`] : []),
    ...(removed.length > 0 ? [`takes out ${counted(removed.length, 'part')}`] : []),
  ];
  if (counts.length === 0) return text('The change leaves the benchwork as it was.');
  return line(text(`The change ${counts.join(', ')}`), remade(book, made), text('.'));
}
