import type { Joint, Part } from '../core/stock/part.ts';
import { both, type Html, line, listed, partLink, text } from './html.ts';
import { lengthPair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { partNamed, pieceLabel } from './parts.ts';

/** Joints of one kind, held in one way, with one clearance: which piece meets which. */
export type JointLine = { readonly name: Html; readonly meetings: Html };

function nameOf({ clearance, held, kind }: Joint): Html {
  const first = text(held === 'loose' ? `${kind}, loose` : `${kind}, ${held}`);
  return clearance > 0 ? line(first, text(', clearance '), both(lengthPair(clearance))) : first;
}

function meeting(book: Book, own: string, other: string): Html {
  return line(text(`${pieceLabel(book, own)} with `), partLink(book, other, pieceLabel(book, other)));
}

/** Joints by their names, in the order they were made; each with the piece to name first. */
function grouped(book: Book, joints: readonly { readonly joint: Joint; readonly own: string }[]): readonly JointLine[] {
  const groups = new Map<Html, Html[]>();
  for (const { joint, own } of joints) {
    const [a, b] = joint.between;
    const name = nameOf(joint);
    groups.set(name, [...(groups.get(name) ?? []), meeting(book, own, own === a ? b : a)]);
  }
  return [...groups].map(([name, meetings]) => ({ name, meetings: listed(meetings) }));
}

/** What the pieces of a part meet. */
export function jointLines(book: Book, part: Part): readonly JointLine[] {
  const pieces = new Set(part.places.map((place) => place.id));
  const own = book.notebook.joints.flatMap((joint) => {
    const piece = joint.between.find((id) => pieces.has(id));
    return piece === undefined ? [] : [{ joint, own: piece }];
  });
  return grouped(book, own);
}

/** All joints of a chapter. */
export function chapterJoints(book: Book, chapter: string): readonly JointLine[] {
  const joints = book.notebook.joints.filter(({ between: [first] }) => partNamed(book, first)?.chapter === chapter);
  return grouped(
    book,
    joints.map((joint) => ({ joint, own: joint.between[0] })),
  );
}
