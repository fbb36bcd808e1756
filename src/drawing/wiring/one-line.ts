import type { Wire } from '../../core/wiring/wire-list.ts';
import { headedBlock } from '../bench-view.ts';
import type { Block } from '../block.ts';
import { saidLength } from '../figures.ts';
import type { Mark, Spot } from '../mark.ts';
import { lettering } from '../text.ts';
import { pairNumber, pairsOf, type WiringAsk } from './wiring-stage.ts';

/** Paper between rows, and where the columns begin, mm. */
const ROW = 6;
const BUS = 8;
const WORDS = 20;
/** Rows of one district that fit the smallest paper. */
const MOST = 18;

/** Everything on one line: a breaker, its bus, and what hangs on it in the order it is met; a block for each district. */
export function oneLineBlocks(ask: WiringAsk): readonly Block[] {
  return ask.wiring.districts.flatMap((district) => {
    const hung = pairsOf(ask.wiring)
      .filter(({ kind, district: of }) => of === district.id && kind !== 'bus' && kind !== 'frog')
      .toSorted((a, b) => metAt(ask, a) - metAt(ask, b));
    const bus = pairsOf(ask.wiring).find(({ kind, district: of }) => of === district.id && kind === 'bus');
    if (bus === undefined) return [];
    const pages = Array.from({ length: Math.max(1, Math.ceil(hung.length / MOST)) }, (_, i) =>
      hung.slice(i * MOST, (i + 1) * MOST),
    );
    return pages.map((page, i) =>
      headedBlock(districtBlock(ask, { bus, page }), `${district.id}${i === 0 ? '' : ', continued'}`, [
        `trips at ${Math.round(district.tripsAt * 100) / 100} A, pair ${pairNumber(bus)} of ${bus.stock}`,
      ]),
    );
  });
}

/** How far along the bus a pair leaves it, mm. */
function metAt({ wiring }: WiringAsk, { path }: Wire): number {
  const [tap] = path;
  const run = wiring.bus?.path ?? [];
  if (tap === undefined) return 0;
  let [along, best, nearest] = [0, 0, Number.POSITIVE_INFINITY];
  for (const [i, to] of run.entries()) {
    const from = run[i - 1] ?? to;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const square = dx * dx + dy * dy;
    const share = square === 0 ? 0 : ((tap[0] - from[0]) * dx + (tap[1] - from[1]) * dy) / square;
    const within = Math.min(1, Math.max(0, share));
    const off = Math.hypot(from[0] + dx * within - tap[0], from[1] + dy * within - tap[1]);
    if (off < nearest - 1e-6) [nearest, best] = [off, along + within * Math.sqrt(square)];
    along += Math.sqrt(square);
  }
  return best;
}

function districtBlock(
  { options }: WiringAsk,
  { bus, page }: { readonly bus: Wire; readonly page: readonly Wire[] },
): Block {
  const foot = (page.length + 1) * ROW;
  const line = (from: Spot, to: Spot, pen: 'cut-edge' | 'feature' | 'hidden'): Mark => ({
    kind: 'line',
    from,
    to,
    pen,
    role: 'feature',
  });
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
  const rows = page.flatMap((wire, i): readonly Mark[] => {
    const y = (i + 1) * ROW + 2;
    const length = saidLength(wire.length, options.unit);
    return [
      line([BUS, y], [WORDS - 2, y], wire.kind === 'feeder' ? 'hidden' : 'feature'),
      { kind: 'circle', centre: [BUS, y], radius: 0.6, fill: 'ink', pen: 'feature', role: 'symbol' },
      lettering(`${pairNumber(wire)}  ${wire.to}, ${length} of ${wire.stock}`, [WORDS, y + 1.2]),
    ];
  });
  const wires = lettering(`${saidLength(bus.length, options.unit)} of bus`, [BUS + 4, 3]);
  return { marks: [breaker, line([BUS, 4], [BUS, foot + 2], 'cut-edge'), wires, ...rows], views: [], dimensions: [] };
}
