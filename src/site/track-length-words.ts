import { type FlexLength, PIN_EVERY, type Section, type TrackSupplies } from '../core/track/supplies.ts';
import { both, type Html, line, listed, text } from './html.ts';
import { figurePair, lengthPair } from './lengths.ts';
import { angleWords } from './measures.ts';
import type { Fact, Told } from './table.ts';
import { UNIT_NAMES } from './words.ts';

/** Stretches of flexible track with what their curves take from the inner rail. */
export function stretchTable({ stretches }: TrackSupplies): Told {
  return {
    label: 'Stretches of flexible track',
    caption: line(text('Stretches of flexible track, from the start of their line, in '), both(UNIT_NAMES)),
    columns: [['Line'], ['From', 'right'], ['Length', 'right'], ['One rail longer by', 'right']],
    rows: stretches.map(({ line: own, from, length, slip }) => [
      text(own),
      both(figurePair(from)),
      both(figurePair(length)),
      both(figurePair(slip)),
    ]),
  };
}

function cutsWords({ cuts }: FlexLength): Html {
  return listed(
    cuts.map((cut) => line(both(lengthPair(cut.length)), text(` for ${cut.line} at `), both(lengthPair(cut.from)))),
  );
}

/** Every length of flexible track as sold, and what is cut from it. */
export function lengthTable({ yard, yards, proved }: TrackSupplies): Told {
  const fewest = proved ? '; no fewer can do' : '';
  return {
    label: 'Lengths of flexible track',
    caption: line(
      text(`${yards.length} lengths of `),
      both(lengthPair(yard)),
      text(` and what is cut from each${fewest}, in `),
      both(UNIT_NAMES),
    ),
    columns: [['Length'], ['Cuts'], ['Left over', 'right']],
    rows: yards.map((one, i) => [text(`${i + 1}`), cutsWords(one), both(figurePair(one.left))]),
  };
}

function sectionWords({ kind, length, radius, through }: Section): Html {
  if (kind === 'straight')
    return length === null ? text('straight') : line(text('straight, '), both(lengthPair(length)));
  const turn = through === null ? '' : `, ${angleWords(through)}`;
  return radius === null ? text(`curve${turn}`) : line(text('curve, radius '), both(lengthPair(radius)), text(turn));
}

/** Ready-made pieces by kind. */
export function sectionTable({ sections }: TrackSupplies): Told {
  return {
    label: 'Ready-made pieces',
    caption: text('Ready-made pieces'),
    columns: [['Piece'], ['How many', 'right']],
    rows: sections.map((section) => [sectionWords(section), text(`${section.count}`)]),
  };
}

function roadbedWords({ roadbed }: TrackSupplies): Html {
  if (roadbed === null) return text('none');
  const { stock, width, length, strips, sheets } = roadbed;
  const strip = line(both(lengthPair(length)), text(` of ${stock}, `), both(lengthPair(width)), text(' wide'));
  if (strips === 0) return strip;
  return line(strip, text(`: ${strips} strips from ${sheets} ${sheets === 1 ? 'sheet' : 'sheets'}`));
}

/** What lies under, beside and in the sleepers. */
export function layingFacts(supplies: TrackSupplies): readonly Fact[] {
  return [
    ['Roadbed', roadbedWords(supplies)],
    ['Pins', line(text(`${supplies.pins}, one about every `), both(lengthPair(PIN_EVERY)))],
    ['Loose ballast', text(`about ${Math.ceil(supplies.ballast)} cm³`)],
  ];
}
