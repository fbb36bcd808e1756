import { unitTag } from '../core/wiring/units.ts';
import { spaceName } from '../drawing/wiring/space-name.ts';
import { both, type Html, line, text } from './html.ts';
import { lengthPair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { plainName } from './words.ts';

function belowIn({ notebook }: Book, bay: string) {
  return notebook.wiring?.places.find((place) => place.bay === bay);
}

/** Wires, joints and motors of a bay with their heights above the floor; none where the wiring has nothing there. */
export function wiresBelow(book: Book, bay: string): readonly Html[] {
  const below = belowIn(book, bay);
  if (below === undefined) return [];
  const known = book.notebook.wiring?.units ?? [];
  const { busHeight, joints, loads, turnouts, units, wires } = below;
  return [
    ...(busHeight === null
      ? []
      : [line(text('The bus passes here, '), both(lengthPair(busHeight)), text(' above the floor.'))]),
    ...joints.map(({ at, drop, labels }) =>
      line(
        text(`Joint of ${labels.join(' and ')} (${plainName(drop.replace('load.', ''))}) to the bus, at `),
        both(lengthPair(at[0])),
        text(' along and '),
        both(lengthPair(at[1])),
        text(' across, '),
        both(lengthPair(at[2])),
        text(' above the floor.'),
      ),
    ),
    ...(wires.length === 0 ? [] : [text(`Wires of the numbers ${numbersOf(wires)} run or end here.`)]),
    ...units.map((id) =>
      text(`${unitTag(known, id)} (${plainName(id)}) is screwed to the underside of the deck here.`),
    ),
    ...loads.map((id) => text(`The wires of ${plainName(id)} go up here.`)),
    ...turnouts.map((id) => text(`Turnout ${id} is overhead; its motor and its wires are here.`)),
  ];
}

/** Numbers of wires by their labels, each once. */
function numbersOf(labels: readonly string[]): string {
  return [...new Set(labels.map((label) => label.replace(/[a-z]$/, '')))].join(', ');
}

/** From which to which height each space below a bay reaches, as far as the wiring has looked. */
export function heightsBelow(book: Book, bay: string): readonly Html[] {
  return (belowIn(book, bay)?.below ?? []).map(({ from, id, to }) =>
    line(
      text(`${spaceName(id)}: from `),
      both(lengthPair(from)),
      text(' to '),
      both(lengthPair(to)),
      text(' above the floor'),
    ),
  );
}
