import type { Point } from '../geometry/shapes.ts';
import { throughDeck } from './bundle.ts';
import { boardAt, deckBoards, fromLeftAndFront } from './deck-board.ts';
import type { WiringInput } from './input.ts';
import { type Wire, wiresOfPair } from './wire.ts';
import type { Wired } from './wired.ts';

/** A hole down through the deck for thin wires; mm. */
export type DeckHole = {
  /** the pair that goes through it, or the one wire of a frog */
  readonly drop: string;
  /** the number of its wires, which is written beside it */
  readonly label: string;
  /** the instance of the deck's board; null where no board lies */
  readonly part: string | null;
  /** its middle in the notebook's coordinates */
  readonly place: Point;
  /** from the board's left end and its front edge, as the board lies; null where no board lies */
  readonly at: Point | null;
  readonly diameter: number;
  readonly wires: number;
  /** where it is to what it feeds: right below, between the rails of a track; or beside it */
  readonly lies: 'below' | 'beside';
  /** how far along its line it was moved to find a clear place, mm; 0 for what stands where it is */
  readonly moved: number;
  readonly kind: 'feeder' | 'lead' | 'load' | 'frog';
};

type Down = Pick<DeckHole, 'drop' | 'place' | 'lies' | 'moved' | 'kind'>;

/** The widest hole that any thin wires need, mm. */
export function thinHole({ bus, feeders, show }: Pick<WiringInput, 'bus' | 'feeders' | 'show'>): number {
  return throughDeck(2, (feeders?.stock ?? bus?.stock)?.outside ?? 0, show);
}

/** A hole for each feeder, each load on the deck and each live frog, in the order of their numbers. */
export function deckHoles({ input, feeders, frogs, loads, taps }: Wired, wires: readonly Wire[]): readonly DeckHole[] {
  const boards = deckBoards(input.ground);
  const outside = (input.feeders?.stock ?? input.bus?.stock)?.outside ?? 0;
  const lies = (over: readonly Point[]) => (over.length === 0 ? 'below' : 'beside') as DeckHole['lies'];
  const downs: readonly Down[] = [
    ...feeders
      .filter(({ id }) => taps.has(id))
      .map(({ down, id, lead, moved, over }) => ({
        ...{ drop: id, place: down, lies: lies(over), moved },
        kind: lead ? ('lead' as const) : ('feeder' as const),
      })),
    ...loads
      .filter(({ drop, turnout }) => !turnout && taps.has(drop))
      .map(({ down, id, over }) => ({ drop: id, place: down, lies: lies(over), moved: 0, kind: 'load' as const })),
    ...frogs
      .filter(({ drop }) => taps.has(drop))
      .map(({ at, down, turnout }) => ({
        ...{ drop: `frog-${turnout}`, place: down, moved: 0, kind: 'frog' as const },
        lies: lies(down === at ? [] : [at]),
      })),
  ];
  return downs.map((down) => {
    const mine = down.kind === 'frog' ? wires.filter(({ id }) => id === down.drop) : wiresOfPair(wires, down.drop);
    const board = boardAt(boards, down.place);
    return {
      ...down,
      label: mine[0]?.label.replace(/[ab]$/, '') ?? down.drop,
      part: board?.id ?? null,
      at: board === null ? null : fromLeftAndFront(board, down.place),
      diameter: throughDeck(mine.length, outside, input.show),
      wires: mine.length,
    };
  });
}
