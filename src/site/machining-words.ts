import { type Operation, USUAL_MACHINES } from '../core/assembly/machining/operation.ts';
import type { Part } from '../core/stock/part.ts';
import { below, both, type Html, line, listed, partLink, text } from './html.ts';
import { cutPair, figurePair, lengthPair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { pieceLabel } from './parts.ts';
import type { Told } from './table.ts';
import { counted, plainName, UNIT_NAMES } from './words.ts';

const NONE = text('–');

/** The order in which a part is cut and how the machine stands for each cut; null for a part that nobody machines. */
export function machiningTable(book: Book, part: Part): Told | null {
  const machining = book.notebook.machining.find((one) => one.part === part.id);
  if (machining === undefined || part.from !== undefined) return null;
  const own = new Set(part.places.map(({ id }) => id));
  return {
    label: 'The order of the cuts',
    caption: line(
      text('In '),
      both(UNIT_NAMES),
      text(', from the left end, or along the part from the bottom edge. A guide is where the router’s base runs, '),
      both(lengthPair(USUAL_MACHINES.base)),
      text(' off the middle of the bit: measure your own base, and set the guide by the cut.'),
    ),
    columns: [
      ['Cut'],
      ['With'],
      ['Fence, stop or begin', 'right'],
      ['Guide', 'right'],
      ['Bit', 'right'],
      ['Depth', 'right'],
    ],
    rows: machining.operations.map((one) => [
      line(text(one.kind.replaceAll('-', ' ')), ...notesOn(book, one, own)),
      text(plainName(one.tool)),
      setting(one),
      figures(one.setUp.straightedge),
      figure(one.setUp.bit),
      line(cut(one.setUp.depth), ...passes(one)),
    ]),
  };
}

function notesOn(book: Book, { setUp }: Operation, own: ReadonlySet<string>): readonly Html[] {
  const others = setUp.together.filter((id) => !own.has(id));
  const ganged = setUp.together.length > 1 ? setUp.together : [];
  const links = listed((others.length > 0 ? ganged : []).map((id) => partLink(book, id, pieceLabel(book, id))));
  return [
    ...(setUp.scrapFirst ? [below(text('try it in scrap and log the fit first'))] : []),
    ...(others.length > 0 ? [below(line(text('clamped together, left ends flush: '), links))] : []),
    ...(others.length === 0 && ganged.length > 0
      ? [below(text(`all ${counted(ganged.length, 'piece')} clamped together`))]
      : []),
  ];
}

function setting({ tool, setUp: { fence, stop } }: Operation): Html {
  if (fence !== null) return line(text('fence '), figure(fence));
  return stop === null ? NONE : line(text(tool === 'router' ? 'begins at ' : 'stop '), figure(stop));
}

function passes({ setUp }: Operation): readonly Html[] {
  return setUp.passes > 1 ? [below(text(`${setUp.passes} passes`))] : [];
}

function figure(mm: number | null): Html {
  return mm === null ? NONE : both(figurePair(mm));
}

function cut(mm: number | null): Html {
  return mm === null ? NONE : both(cutPair(mm));
}

function figures(lengths: readonly number[]): Html {
  return lengths.length === 0 ? NONE : listed(lengths.map((mm) => both(figurePair(mm))));
}
