import type { Assembly, TakingOff } from '../core/assembly/assembly.ts';
import { wayIn } from './assembly-words.ts';
import { type Html, line, piecesOf, text } from './html.ts';
import type { Book } from './notebooks.ts';
import { counted } from './words.ts';

/** What comes off, one line a piece, in the order it comes off. */
export function takingOff(book: Book, of: Assembly): readonly Html[] {
  return of.apart.off.map((one) =>
    line(
      ...(one.turn ? [text('Turn the frame over, two adults, no fingers between frame and bench. ')] : []),
      ...boltsOut(book, one),
      piecesOf(book, one.parts),
      text(`: ${wayOut(one)}.`),
    ),
  );
}

function boltsOut(book: Book, { loosened }: TakingOff): readonly Html[] {
  const bolts = book.notebook.fasteners.filter(({ holds }) => loosened.includes(holds)).length;
  return bolts === 0 ? [] : [text(`Draw ${counted(bolts, 'bolt')}: `)];
}

function wayOut({ direction, frame }: TakingOff): string {
  const up = frame === 'upright' ? 1 : -1;
  if (direction[2] * up > 0.9) return 'lifted off';
  if (direction[2] * up < -0.9) return 'lowered out';
  return wayIn({ direction, frame, path: 'straight' }).replace('pushed', 'drawn out');
}
