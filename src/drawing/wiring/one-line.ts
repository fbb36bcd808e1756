import type { Wire } from '../../core/wiring/wire.ts';
import { headedBlock } from '../bench-view.ts';
import type { Block } from '../block.ts';
import { saidLength } from '../figures.ts';
import type { Mark, Spot } from '../mark.ts';
import { lettering } from '../text.ts';
import { pairNumber, pairsOf, saidWords, type WiringAsk } from './wiring-stage.ts';

/** Paper between rows, and where the columns begin, mm. */
const ROW = 6;
const BUS = 8;
const WORDS = 20;
/** Rows of one pair of its own that fit the smallest paper. */
const MOST = 18;

/** Everything on one line: a breaker or a unit, its bus, and what hangs on it in the order it is met; a block for each. */
export function oneLineBlocks(ask: WiringAsk): readonly Block[] {
  const { wiring } = ask;
  const pairs = pairsOf(wiring);
  const owners = [
    ...wiring.districts.map(({ id, tripsAt }) => ({ net: id, says: `trips at ${Math.round(tripsAt * 100) / 100} A` })),
    ...wiring.units.map(({ from, id }) => ({ net: id, says: `fed from the bus of ${districtWord(ask, from)}` })),
  ];
  return owners.flatMap(({ net, says }) => {
    const buses = pairs.filter(({ kind, net: of }) => of === net && kind === 'bus');
    const hung = pairs
      .filter(
        ({ id, kind, net: of }) =>
          of === net && kind !== 'bus' && !id.endsWith('-out-a') && (kind !== 'frog' || id.endsWith('-in-a')),
      )
      .toSorted((a, b) => a.along - b.along);
    if (buses.length + hung.length === 0) return [];
    const pages = Array.from({ length: Math.max(1, Math.ceil(hung.length / MOST)) }, (_, i) =>
      hung.slice(i * MOST, (i + 1) * MOST),
    );
    return pages.map((page, i) =>
      headedBlock(netBlock(ask, { buses, page }), `${districtWord(ask, net)}${i === 0 ? '' : ', continued'}`, [
        says,
        ...(buses.length === 0 ? [] : [`bus: ${buses.map((bus) => busWords(ask, bus)).join(', ')}`]),
      ]),
    );
  });
}

/** What a district or a unit is called. */
function districtWord({ wiring }: WiringAsk, net: string): string {
  return wiring.districts.find(({ id }) => id === net)?.name ?? net;
}

function busWords({ options }: WiringAsk, bus: Wire): string {
  return `pair ${pairNumber(bus)} ${saidLength(bus.length, options.unit)}`;
}

function netBlock(
  ask: WiringAsk,
  { buses, page }: { readonly buses: readonly Wire[]; readonly page: readonly Wire[] },
): Block {
  const foot = (page.length + 1) * ROW;
  const breaker: Mark = {
    kind: 'polygon',
    rings: [
      [
        [BUS - 2, 0],
        [BUS + 2, 0],
        [BUS + 2, 4],
        [BUS - 2, 4],
      ],
    ],
    fill: 'none',
    pen: 'edge',
    role: 'symbol',
  };
  const rows = page.flatMap((wire, i) => rowMarks(ask, wire, (i + 1) * ROW + 2));
  const stock = buses[0]?.stock;
  const words = stock === undefined ? [] : [lettering(stock, [BUS + 4, 3])];
  return {
    marks: [breaker, straight([BUS, 4], [BUS, foot + 2], 'cut-edge'), ...words, ...rows],
    views: [],
    dimensions: [],
  };
}

function straight(from: Spot, to: Spot, pen: 'cut-edge' | 'feature' | 'hidden'): Mark {
  return { kind: 'line', from, to, pen, role: 'feature' };
}

/** One pair on its row: its branch from the bus, its number, where it goes and how long it is. */
function rowMarks(ask: WiringAsk, wire: Wire, y: number): readonly Mark[] {
  const length = saidLength(wire.length, ask.options.unit);
  return [
    straight([BUS, y], [WORDS - 2, y], wire.kind === 'feeder' ? 'hidden' : 'feature'),
    { kind: 'circle', centre: [BUS, y], radius: 0.6, fill: 'ink', pen: 'feature', role: 'symbol' },
    lettering(`${pairNumber(wire)}  ${saidWords(ask, wire.to)}, ${length} of ${wire.stock}`, [WORDS, y + 1.2]),
  ];
}
