import type { BuiltStructure } from '../core/scenery/structure.ts';
import { showAngle } from '../core/units/show-amount.ts';
import { both, type Html, line, text } from './html.ts';
import { figurePair, lengthPair, sizePair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import type { Fact, Told } from './table.ts';
import { UNIT_NAMES } from './words.ts';

const CORNERS = ['front left', 'front right', 'back right', 'back left'];

function groundWords({ ground: { low, high } }: BuiltStructure): Html {
  if (high - low < 0.05) return line(both(lengthPair(low)), text(' over the deck, level'));
  return line(text('from '), both(lengthPair(low)), text(' to '), both(lengthPair(high)), text(' over the deck'));
}

/** One building in figures. */
export function structureFacts(structure: BuiltStructure): readonly Fact[] {
  const { length, width, height, turn } = structure;
  return [
    ['Length, width and height of the model', both(sizePair([length, width, height]))],
    ['Turned', text(turn === 0 ? 'not at all' : `${showAngle(turn)} anticlockwise, seen from above`)],
    ['Ground under it', groundWords(structure)],
  ];
}

function datum(bench: string | null): string {
  if (bench === null) return 'off every bench: measured from the zero of the plan, to the right and to the back';
  return `from the left and the front edge of the frame of ${bench}`;
}

/** The corners of the buildings on each bench, to mark them on its deck. */
export function cornerTables({ notebook }: Book): readonly Told[] {
  const structures = notebook.scenery?.structures ?? [];
  return [...new Set(structures.map(({ bench }) => bench))].map((bench) => ({
    label: `Corners of the buildings, ${bench ?? 'off every bench'}`,
    caption: line(text(`Corners of the buildings, ${datum(bench)}. In `), both(UNIT_NAMES)),
    columns: [['Corner'], ['From left', 'right'], ['From front', 'right']],
    rows: structures.filter((one) => one.bench === bench).flatMap(cornerRows),
  }));
}

function cornerRows({ id, marks }: BuiltStructure): readonly (readonly Html[])[] {
  return marks.map(([x, y], i) => [text(`${id}, ${CORNERS[i] ?? ''}`), both(figurePair(x)), both(figurePair(y))]);
}
