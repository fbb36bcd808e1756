import type { Part, Request } from '../../core/stock/part.ts';
import type { Block } from '../block.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingUnit } from '../drawing.ts';
import { saidLength } from '../figures.ts';
import { noteBlocks } from '../notes.ts';

/** What other chapters cut into a part; how much it should lose at most is the findings' to say. */
export function requestNotes({ requests = [] }: DrawingBook, part: Part, unit: DrawingUnit): readonly Block[] {
  const ids = part.places.map(({ id }) => id);
  const asked = requests.filter((request) => ids.includes(request.part));
  if (asked.length === 0) return [];
  return noteBlocks(
    'Cut for other chapters',
    asked.map((request) => ({ letter: request.by, words: wordsOf(request, unit), dimensions: [] })),
  );
}

function wordsOf({ kind, size: [along, across] }: Request, unit: DrawingUnit): string {
  const said = (mm: number) => saidLength(mm, unit);
  return kind === 'hole' ? `hole ${said(along)} across` : `${kind} ${said(along)} by ${said(across)}`;
}
