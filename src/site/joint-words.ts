import type { Joint, Part } from '../core/stock/part.ts';
import { type Html, line, listed, partLink, text } from './html.ts';
import type { Book } from './notebooks.ts';
import { pieceLabel } from './parts.ts';

/** Joints of one kind, held in one way, in a line: which piece meets which. */
export type JointLine = { readonly name: string; readonly meetings: Html };

function nameOf({ held, kind }: Joint): string {
  return held === 'loose' ? `${kind}, loose` : `${kind}, ${held}`;
}

function meeting(book: Book, own: string, other: string): Html {
  return line(text(`${pieceLabel(book, own)} with `), partLink(book, other, pieceLabel(book, other)));
}

/** What the pieces of a part meet, by kind of joint, in the order the joints were made. */
export function jointLines(book: Book, part: Part): readonly JointLine[] {
  const pieces = new Set(part.places.map((place) => place.id));
  const groups = new Map<string, Html[]>();
  for (const joint of book.notebook.joints) {
    const [a, b] = joint.between;
    const own = pieces.has(a) ? a : pieces.has(b) ? b : null;
    if (own === null) continue;
    const group = groups.get(nameOf(joint)) ?? [];
    groups.set(nameOf(joint), [...group, meeting(book, own, own === a ? b : a)]);
  }
  return [...groups].map(([name, meetings]) => ({ name, meetings: listed(meetings) }));
}
