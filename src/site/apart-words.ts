import type { Assembly, TakingOff } from '../core/assembly/assembly.ts';
import { wayIn } from './assembly-words.ts';
import { type Html, line, listed, partLink, text } from './html.ts';
import type { Book } from './notebooks.ts';
import { pieceLabel } from './parts.ts';
import { counted, plainName } from './words.ts';

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

/** A drawer or leg by its name, else the labels of what comes off. */
export function piecesOf(book: Book, parts: readonly string[]): Html {
  const links = listed(parts.map((id) => partLink(book, id, pieceLabel(book, id))));
  const whole = parts.length < 2 ? null : wholeName(parts);
  return whole === null ? links : line(text(`${plainName(whole)} (`), links, text(')'));
}

/** What all ids begin with up to a point: `leg.front-left`; null when they are of no one thing. */
function wholeName(parts: readonly string[]): string | null {
  const names = new Set(parts.map((id) => id.slice(0, Math.max(0, id.lastIndexOf('.')))));
  const [name = ''] = names;
  return names.size === 1 && name.includes('.') ? name : null;
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
