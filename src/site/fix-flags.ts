import type { Step } from '../core/steps/step.ts';
import { type Html, line, link, listed, text } from './html.ts';
import type { Book } from './notebooks.ts';
import { pieceLabel } from './parts.ts';
import { at } from './paths.ts';

/** Fixes on pieces a step makes or fits, by their numbers in the register; null when there are none. */
export function fixesOfStep(book: Book, step: Step): Html | null {
  const pieces = new Set([...step.makes, ...(step.fits ?? [])]);
  const flags = book.notebook.state.fixes.flatMap((fix, i) => {
    if (!pieces.has(fix.part) || fix.leaves === 'nothing') return [];
    const number = i + 1;
    const words = `fix ${number}, on ${pieceLabel(book, fix.part)}`;
    return [link(`${at(book.notebook.slug, 'fixes')}#fix-${number}`, words)];
  });
  return flags.length === 0 ? null : line(text('Mended here: '), listed(flags), text('.'));
}
