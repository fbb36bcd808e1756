import { capital } from '../../core/units/say.ts';
import { showNumber } from '../../core/units/show.ts';
import { UNIT_NAMES, unitTag } from '../../core/wiring/units.ts';
import type { Wire } from '../../core/wiring/wire.ts';
import { headedBlock } from '../bench-view.ts';
import type { Block } from '../block.ts';
import type { Mark } from '../mark.ts';
import type { PenName } from '../pens.ts';
import { lettering, smallText, textWidth } from '../text.ts';
import { type BusBranch, hungAtSource, isBranch, netTree } from './net-tree.ts';
import { HALF, ROW, type Sign, STEP, signKey, signMarks, straight } from './one-line-signs.ts';
import { cutWords, netName } from './wire-notes.ts';
import { filledDot, pairNumber, pairsOf, saidWords, WIRE_PENS, type WiringAsk } from './wiring-stage.ts';

/** Paper from the last column to the signs, mm. */
const REACH = 11;
/** Half of the dot where lines are joined, mm. */
const JOINT = 0.6;
/** Rows that fit the smallest paper with a heading over them. */
const MOST = 21;

/** One row of a diagram and what hangs below it. `first` leads its words. */
export type Row = {
  readonly sign: Sign;
  readonly pen: PenName;
  readonly first: string;
  readonly words: string;
  readonly under: readonly Row[];
};

/** All on one line: the supply with every breaker and unit, then the bus of each with what is met on it. */
export function oneLineBlocks(ask: WiringAsk): readonly Block[] {
  const { wiring } = ask;
  const nets = [...wiring.districts.map(({ id }) => id), ...wiring.units.map(({ id }) => id)];
  const tops = nets.flatMap((net) => {
    const row = netRow(ask, net);
    return row.under.length === 0 ? [] : [{ row, heading: capital(netName(ask, net)) }];
  });
  const first = supplyRow(ask);
  return [
    ...diagram('From the supply', ['One line stands for the two wires of a pair.'], first),
    signKey(new Set([first, ...tops.map(({ row }) => row)].flatMap(stood).map(({ row }) => row.sign))),
    ...tops.flatMap(({ heading, row }) => diagram(heading, [], row)),
  ];
}

/** The supply, the breaker of every district, and the units that hang on each. */
export function supplyRow(ask: WiringAsk): Row {
  const { wiring } = ask;
  const { control, districts, tripsAt, volts } = wiring;
  return {
    sign: 'supply',
    pen: 'cut-edge',
    first: 'Supply',
    words: `${showNumber(volts, 2)} V, ${control === 'digital' ? 'digital' : 'direct current'}; trips at ${showNumber(tripsAt, 2)} A`,
    under: districts.map(
      ({ id, name, tripsAt: own }): Row => ({
        ...{ sign: 'breaker', pen: 'cut-edge', first: capital(name), under: unitRows(ask, id) },
        words: `trips at ${showNumber(own, 2)} A${busSaid(ask, id)}`,
      }),
    ),
  };
}

function unitRows(ask: WiringAsk, net: string): readonly Row[] {
  const { units } = ask.wiring;
  return units
    .filter(({ from }) => from === net)
    .map(
      ({ id, kind }): Row => ({
        sign: kind === 'reverser' ? 'unit' : 'switch',
        ...{ pen: WIRE_PENS.unit, first: unitTag(units, id), under: unitRows(ask, id) },
        words: `${UNIT_NAMES[kind]}${busSaid(ask, id)}`,
      }),
    );
}

/** `; bus of pairs 1 to 6`, as they are numbered. */
function busSaid({ wiring }: WiringAsk, net: string): string {
  const numbers = pairsOf(wiring).flatMap((wire) =>
    wire.kind === 'bus' && wire.net === net ? [pairNumber(wire)] : [],
  );
  if (numbers.length === 0) return '';
  const joined = numbers.length === 2 ? 'and' : 'to';
  return numbers.length === 1
    ? `; bus of pair ${numbers[0]}`
    : `; bus of pairs ${numbers[0]} ${joined} ${numbers.at(-1)}`;
}

/** A district from its breaker, or a unit, with its bus and all that hangs on it. */
export function netRow(ask: WiringAsk, net: string): Row {
  const { wiring } = ask;
  const unit = wiring.units.find(({ id }) => id === net);
  const district = wiring.districts.find(({ id }) => id === net);
  const fed = pairsOf(wiring).find(({ id }) => id === `${net}-out-a`);
  const under = [
    ...netTree(wiring, net).map((one) => branchRow(ask, one)),
    ...hungAtSource(wiring, net).map((wire) => hungRow(ask, wire)),
  ];
  const words =
    unit === undefined
      ? `trips at ${showNumber(district?.tripsAt ?? wiring.tripsAt, 2)} A`
      : [
          `from ${netName(ask, unit.from)}`,
          ...(fed === undefined ? [] : [`out by pair ${pairNumber(fed)}: ${cutWords(ask, fed)}`]),
        ].join('; ');
  return {
    sign: unit === undefined ? 'breaker' : unit.kind === 'reverser' ? 'unit' : 'switch',
    ...{ pen: 'cut-edge', first: unit === undefined ? 'Breaker' : UNIT_NAMES[unit.kind], words, under },
  };
}

function branchRow(ask: WiringAsk, { met, pair }: BusBranch): Row {
  const plug = pair.from.join('').startsWith('plug');
  return {
    ...{ sign: plug ? 'plug' : 'bus', pen: WIRE_PENS.bus, first: `pair ${pairNumber(pair)}` },
    words: `bus: ${cutWords(ask, pair)}`,
    under: met.map((one) => (isBranch(one) ? branchRow(ask, one) : hungRow(ask, one))),
  };
}

function hungRow(ask: WiringAsk, wire: Wire): Row {
  const { wiring } = ask;
  const own = wiring.units.find(({ id }) => wire.id === `${id}-in-a`);
  const sign: Record<Wire['kind'], Sign> = {
    ...{ bus: 'bus', feeder: 'rails', lead: 'rails', frog: 'switch', load: wire.use === 'turnout' ? 'motor' : 'load' },
    unit: own === undefined || own.kind === 'reverser' ? 'unit' : 'switch',
  };
  return {
    ...{ sign: sign[wire.kind], pen: WIRE_PENS[wire.kind], first: `pair ${pairNumber(wire)}`, under: [] },
    words: `${saidWords(ask, wire.to)}: ${cutWords(ask, wire)}`,
  };
}

/** A row where it stands: the column its line leaves, and the row of that column's head. */
type Stood = {
  readonly row: Row;
  readonly depth: number;
  readonly parent: number | null;
  /** whether its line leaves one that goes on or is soldered to it, and does not just turn a corner */
  readonly joint: boolean;
};

function stood(row: Row): readonly Stood[] {
  const all: Stood[] = [];
  const put = (one: Row, parent: number | null, at: Pick<Stood, 'depth' | 'joint'>): void => {
    const here = all.push({ row: one, parent, ...at }) - 1;
    const joint = one.under.length > 1 || one.sign === 'bus' || one.sign === 'plug';
    for (const under of one.under) put(under, here, { depth: at.depth + 1, joint });
  };
  put(row, null, { depth: 0, joint: false });
  return all;
}

/** A diagram of rows, parted into as many blocks as the paper needs; lines that go on are drawn on. */
function diagram(heading: string, words: readonly string[], top: Row): readonly Block[] {
  const all = stood(top);
  const deepest = all.reduce((most, { depth }) => Math.max(most, depth), 0);
  const pages = Array.from({ length: Math.ceil(all.length / MOST) }, (_, i) => i * MOST);
  return pages.map((from) => {
    const marks = [
      ...columnMarks(all, from),
      ...all.slice(from, from + MOST).flatMap((one, i) => rowMarks(one, i, deepest)),
    ];
    const name = from === 0 ? heading : `${heading}, continued`;
    return headedBlock({ marks, views: [], dimensions: [] }, name, from === 0 ? words : []);
  });
}

function columnX(depth: number): number {
  return depth * STEP + 2;
}

/** The upright lines: from each row that something hangs on to the last that hangs there. */
function columnMarks(all: readonly Stood[], from: number): readonly Mark[] {
  const to = Math.min(all.length, from + MOST);
  return all.flatMap(({ depth, row }, i): readonly Mark[] => {
    const hung = all.flatMap(({ parent }, k) => (parent === i ? [k] : []));
    const last = hung.at(-1);
    if (last === undefined || last < from || i >= to) return [];
    const [first, end] = [Math.max(i + HALF[row.sign][1] / ROW, from - 0.5), Math.min(last, to - 0.5)];
    const x = columnX(depth);
    return [straight([x, (first - from) * ROW], [x, (end - from) * ROW], row.pen)];
  });
}

/** A row's line from the column it hangs on, its sign and its words. */
function rowMarks({ depth, joint, parent, row }: Stood, i: number, deepest: number): readonly Mark[] {
  const y = i * ROW;
  const from = columnX(depth - 1);
  const ends = row.under.length > 0 ? columnX(depth) : columnX(deepest) + REACH - 5;
  const words = columnX(deepest) + REACH;
  const line =
    parent === null
      ? []
      : [straight([from, y], [ends - HALF[row.sign][0], y], row.pen), ...(joint ? [filledDot([from, y], JOINT)] : [])];
  const first = lettering(row.first, [words, y + smallText / 2], { weight: 'bold' });
  const after = words + textWidth(row.first, smallText, 'bold') + 2;
  return [...line, ...signMarks(row.sign, [ends, y]), first, lettering(row.words, [after, y + smallText / 2])];
}
