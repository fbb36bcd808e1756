import type { Block } from '../block.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingOptions, DrawingUnit } from '../drawing.ts';
import { saidLength } from '../figures.ts';
import { scales } from '../paper.ts';
import { largest, sitesSize } from '../scenery/land-stage.ts';
import { fitsSheet } from '../sheet.ts';
import { bayBlocks } from './bay-blocks.ts';
import { keyBlock } from './key-block.ts';
import { oneLineBlocks } from './one-line.ts';
import { voltageBlocks } from './voltage-graph.ts';
import { holeTable, wireNotes } from './wire-notes.ts';
import { wiresFromAbove, wiresFromBelow } from './wiring-plan.ts';
import { pairsOf, type WiringAsk } from './wiring-stage.ts';

/** A drawing of the wiring as the list of all drawings takes it. */
export type WiringEntry = {
  readonly id: string;
  readonly kind: 'wiring';
  readonly chapter: string;
  readonly of: null;
  readonly title: string;
};

type Content = { readonly blocks: readonly Block[]; readonly scale: number | null; readonly desc: string };

const TITLES = {
  'wiring.above': 'Wires from above',
  'wiring.below': 'Wires from below, mirrored',
  'wiring.bays': 'Wires bay by bay, from below',
  'wiring.one-line': 'One-line diagram of the wiring',
  'wiring.voltage': 'Voltage along the lines',
} as const;

type WiringDrawing = keyof typeof TITLES;

function isWiring(id: string): id is WiringDrawing {
  return Object.hasOwn(TITLES, id);
}

/** The drawings of the wiring; none without a bus. */
export function wiringEntries({ wiring }: DrawingBook): readonly WiringEntry[] {
  if (wiring === undefined || wiring === null || wiring.bus === null || wiring.bus.path.length < 2) return [];
  const ids = Object.keys(TITLES).filter(isWiring);
  return ids
    .filter((id) => id !== 'wiring.voltage' || wiring.voltage.some(({ points }) => points.length > 1))
    .map((id) => ({ id, kind: 'wiring', chapter: 'wiring', of: null, title: TITLES[id] }));
}

/** A drawing of the wiring by its id; null when it is none of these. */
export function wiringLayout(book: DrawingBook, id: string, options: DrawingOptions): Content | null {
  const wiring = book.wiring ?? null;
  if (wiring === null || !isWiring(id)) return null;
  const ask = (scale: number): WiringAsk => ({ book, wiring, options, scale });
  const desc = words(ask(1), id, options.unit);
  if (id === 'wiring.above' || id === 'wiring.below') {
    const draw = id === 'wiring.above' ? wiresFromAbove : wiresFromBelow;
    const { block, scale } = largest((at) => draw(ask(at)), options, sitesSize(book));
    const drawn = ask(scale);
    return { blocks: [block, keyBlock(drawn), ...holeTable(drawn), ...wireNotes(drawn)], scale, desc };
  }
  if (id === 'wiring.bays') {
    const scale =
      scales.find((at) => at >= 5 && bayBlocks(ask(at)).every((block) => fitsSheet(block, options.paper))) ?? 100;
    const drawn = ask(scale);
    return { blocks: [...bayBlocks(drawn), keyBlock(drawn), ...holeTable(drawn)], scale: drawn.scale, desc };
  }
  return { blocks: id === 'wiring.one-line' ? oneLineBlocks(ask(1)) : voltageBlocks(ask(1)), scale: null, desc };
}

/** What a drawing shows, in words. */
function words({ wiring }: WiringAsk, id: WiringDrawing, unit: DrawingUnit): string {
  const { holes, gaps, districts } = wiring;
  const pairs = `${pairsOf(wiring).length} pairs of wires`;
  const worst = districts.flatMap(({ name, worst: low }) =>
    low === null ? [] : [`${name} gives at least ${Math.round(low.volts * 100) / 100} V`],
  );
  switch (id) {
    case 'wiring.above':
      return `The bench from above with ${pairs}, ${holes.length} holes through its boards and ${gaps.length} places where both rails are cut; the bus runs ${saidLength(wiring.bus?.z ?? 0, unit)} above the floor.`;
    case 'wiring.below':
      return `The same from below, left and right changed, with ${pairs} and ${holes.length} holes; the supply's lead comes up where the bus begins.`;
    case 'wiring.bays':
      return `Each bay from below, left and right changed, with its wires' numbers and what is written on the boards round it.`;
    case 'wiring.one-line':
      return `${[...districts.map(({ name }) => name), ...wiring.units.map(({ id: of }) => of)].join(' and ')}, each with what hangs on its bus in the order it is met.`;
    case 'wiring.voltage':
      return `Voltage along each line while trains draw all that their district gives: ${worst.join('; ')}.`;
  }
}
