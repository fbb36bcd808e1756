import type { Part } from '../../core/stock/part.ts';
import type { Block } from '../block.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingUnit } from '../drawing.ts';
import { saidLength } from '../figures.ts';
import { noteBlocks } from '../notes.ts';

/** What was mended on the pieces of a part, by its number in the register. */
export function fixNotes({ state }: DrawingBook, part: Part, unit: DrawingUnit): readonly Block[] {
  const labels = new Map(part.places.map((place) => [place.id, place.label]));
  const notes = (state?.fixes ?? []).flatMap((fix, i) => {
    const label = labels.get(fix.part);
    // what befell a piece that is gone is no note on the one in its place
    if (label === undefined || !fix.stands) return [];
    const where = fix.at === null ? '' : `, ${saidLength(fix.at, unit)} from ${fix.from ?? 'its left end'}`;
    const words = `${label}${where}: ${fix.what}${fix.mend === null ? '' : `; ${fix.mend}`}`;
    return [{ letter: String(i + 1), words, dimensions: [] }];
  });
  return notes.length === 0 ? [] : noteBlocks('Fixes', notes);
}
