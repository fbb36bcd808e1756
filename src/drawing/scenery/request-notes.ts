import { cutLimits } from '../../core/stock/cut-limits.ts';
import type { Part, Request } from '../../core/stock/part.ts';
import type { Block } from '../block.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingUnit } from '../drawing.ts';
import { saidLength } from '../figures.ts';
import { noteBlocks } from '../notes.ts';

/** What other chapters cut into a part, with the rule of thumb for how much it should lose. */
export function requestNotes({ requests = [] }: DrawingBook, part: Part, unit: DrawingUnit): readonly Block[] {
  const ids = part.places.map(({ id }) => id);
  const asked = requests.filter((request) => ids.includes(request.part));
  if (asked.length === 0) return [];
  return noteBlocks(
    'Cut for other chapters',
    asked.map((request) => ({ letter: request.by, words: wordsOf(request, part, unit), dimensions: [] })),
  );
}

function wordsOf({ kind, size: [along, across], limit }: Request, part: Part, unit: DrawingUnit): string {
  const said = (mm: number) => saidLength(mm, unit);
  const size = kind === 'hole' ? `hole ${said(along)} across` : `${kind} ${said(along)} by ${said(across)}`;
  if (limit === null) return size;
  const long = kind === 'notch' ? ` and ${said(cutLimits(part.blank.width).notchLength)} long` : '';
  return `${size}; keep within ${said(limit)}${kind === 'notch' ? ' deep' : ''}${long} (IRC R502.8.1 as a proxy)`;
}
