import type { Wire } from '../../core/wiring/wire.ts';
import { type Block, movedBlock } from '../block.ts';
import type { Mark, Spot } from '../mark.ts';
import { lettering, smallText, textWidth } from '../text.ts';
import { DOT } from './pair-numbers.ts';
import { crossedSquare, filledDot, oblong, WIRE_PENS, type WiringAsk } from './wiring-stage.ts';

/** Rows, the samples' width and the room between columns, mm of paper. */
const ROW = 5;
const SAMPLE = 12;
const GAP = 6;
/** Rows in a column. */
const MOST = 13;

type Entry = { readonly words: string; readonly sample: readonly Mark[] };

const KINDS: Readonly<Record<Wire['kind'], string>> = {
  bus: 'bus',
  unit: 'to and from a unit',
  feeder: 'feeder or live frog',
  frog: 'feeder or live frog',
  lead: 'load, or lead to a bridge',
  load: 'load, or lead to a bridge',
};

/** What the lines and signs of the wires' plans stand for: those that are there. */
export function keyBlock(ask: WiringAsk): Block {
  const entries = entriesOf(ask);
  const columns = Array.from({ length: Math.ceil(entries.length / MOST) }, (_, i) =>
    entries.slice(i * MOST, (i + 1) * MOST),
  );
  let x = 0;
  const marks = columns.flatMap((column) => {
    const from = x;
    x += SAMPLE + GAP + Math.max(...column.map(({ words }) => textWidth(words, smallText))) + 2;
    return column.flatMap(({ sample, words }, i) => [
      ...movedBlock({ marks: sample, views: [], dimensions: [] }, [from, (i + 1) * ROW]).marks,
      lettering(words, [from + SAMPLE + 2, (i + 1) * ROW + smallText / 2]),
    ]);
  });
  return { marks: [lettering('Key', [0, 0], { weight: 'bold' }), ...marks], views: [], dimensions: [] };
}

function entriesOf({ wiring }: WiringAsk): readonly Entry[] {
  const kinds = new Set(wiring.wires.map(({ kind }) => kind));
  const words = [...new Set([...kinds].map((kind) => KINDS[kind]))];
  const wires = words.flatMap((one): readonly Entry[] => {
    const kind = [...kinds].find((each) => KINDS[each] === one);
    return kind === undefined ? [] : [{ words: `${one}, in pairs`, sample: [stroke(WIRE_PENS[kind])] }];
  });
  const cut = wiring.gaps.some(({ rails }) => rails === 'both');
  const one = wiring.gaps.some(({ rails }) => rails !== 'both');
  return [
    { words: 'supply, its low-voltage lead', sample: crossedSquare([SAMPLE / 2, 0]) },
    ...wires,
    { words: 'end of a pair, at its number', sample: [filledDot([SAMPLE / 2, 0], DOT)] },
    { words: 'middle of a line of track', sample: [stroke('centre')] },
    ...(wiring.holes.length === 0 ? [] : [{ words: 'H: hole through a board', sample: [ring([SAMPLE / 2, 0])] }]),
    ...(wiring.units.length === 0
      ? []
      : [{ words: 'U: unit, screwed up', sample: [oblong([SAMPLE / 2, 0], [2.6, 1.8])] }]),
    ...(wiring.connectors.length === 0
      ? []
      : [{ words: 'P: plug and socket', sample: [oblong([SAMPLE / 2, 0], [1.5, 1])] }]),
    ...(cut ? [{ words: 'G: both rails cut', sample: cuts([-0.35, 0.35]) }] : []),
    ...(one ? [{ words: 'G: the rail of the frog cut', sample: cuts([0]) }] : []),
  ];
}

function stroke(pen: (typeof WIRE_PENS)[Wire['kind']]): Mark {
  return { kind: 'line', from: [0, 0], to: [SAMPLE, 0], pen, role: 'symbol' };
}

function ring(centre: Spot): Mark {
  return { kind: 'circle', centre, radius: 1.1, fill: 'paper', pen: 'feature', role: 'symbol' };
}

function cuts(offs: readonly number[]): readonly Mark[] {
  return offs.map((off): Mark => {
    const x = SAMPLE / 2 + off;
    return { kind: 'line', from: [x, -1.6], to: [x, 1.6], pen: 'feature', role: 'symbol' };
  });
}
