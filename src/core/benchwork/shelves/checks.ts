import type { Finding } from '../../finding.ts';
import type { Envelope } from '../../stock/part.ts';
import { atLeast, atMost, length, say } from '../../units/say.ts';
import { type Bay, baysBehind, standingIn } from '../drawers/bays.ts';
import { bayAcross, LEAST_LIGAMENT } from '../drawers/figures.ts';
import type { Site } from '../fitting.ts';
import { tidy } from '../machining.ts';
import { told } from '../told.ts';
import { HAND, handRoom } from './hand-room.ts';

/** A cleat's height, and the least a shelf is open and wide between its cleats; common practice, no source. mm. */
export const CLEAT = 20;
const LEAST_OPEN = 40;
const LEAST_WIDE = 100;

type Standing = { readonly where: string; readonly taken: readonly Envelope[]; readonly first: Envelope };

/** What stands where a shelf would lie, and the bays that are free. */
export function bayTaken({ grid }: Site, bay: Bay, { where, taken, first }: Standing): Finding {
  const free = baysBehind(grid, bay.side).filter((one) => standingIn(one, taken).length === 0);
  const choice = free.map(({ number }) => number).join(', ');
  const mend = free.length === 0 ? say`no bay of this side is free` : say`free bays of this side: ${choice}`;
  const what = say`${first.of} stands in bay ${String(bay.number)} of the ${bay.side}, where the shelf would lie`;
  return told('halt', { rule: 'bay-taken', where, what, figure: bay.number, limit: null, mend, unit: 'count' });
}

type Height = { readonly id: string; readonly top: number; readonly lowest: number };

/** A shelf lies on its cleats, and leaves an opening above it and wood above that. */
export function heightHalts({ grid }: Site, { id: where, top, lowest }: Height): readonly Finding[] {
  const most = tidy(grid.sideTop - lowest);
  const least = LEAST_LIGAMENT + LEAST_OPEN;
  const below = tidy(grid.sideTop - top);
  if (top >= lowest - 1e-9 && below >= least) return [];
  const what =
    below > 0
      ? say`a shelf ${length(below)} below the deck does not fit between its cleats and the wood above the opening`
      : say`a shelf and its cleats are taller than the struts of ${length(grid.strut)}`;
  const deeper = say`make the struts at least ${atLeast(grid.strut + least - most)} deep`;
  const mend = most < least ? deeper : say`put it ${atLeast(least)} to ${atMost(most)} below`;
  return [
    told('halt', { rule: 'shelf-height', where, what, figure: Math.max(0, below), limit: Math.max(0, most), mend }),
  ];
}

/** A shelf whose opening lets no hand in that holds something. */
export function handCares({ grid }: Site, { id: where, top, lowest }: Height): readonly Finding[] {
  const deck = tidy(grid.deckTop - grid.sideTop);
  const room = handRoom({ top: grid.deckTop, under: top, deck, hangs: LEAST_LIGAMENT });
  if (room >= HAND) return [];
  const most = tidy(grid.sideTop - lowest);
  const needs = tidy(HAND + LEAST_LIGAMENT);
  const what = say`${length(room)} are open above the shelf, too little for a hand with something in it`;
  const mend =
    most >= needs
      ? say`put it ${length(needs)} to ${length(most)} below the deck`
      : say`make the struts ${atLeast(tidy(needs - most))} deeper, or keep only flat things on it`;
  return [told('care', { rule: 'no-hand-room', where, what, figure: room, limit: HAND, mend })];
}

/** Cleats on both walls, and something between them. */
export function widthHalts(site: Site, bay: Bay, where: string): readonly Finding[] {
  const [u0, u1] = bayAcross(site, bay);
  const [wide, least] = [tidy(u1 - u0), tidy(2 * site.grid.t + LEAST_WIDE)];
  if (wide >= least) return [];
  const what = say`bay ${String(bay.number)} of the ${bay.side} is ${length(wide)} wide, too narrow for a shelf between its cleats`;
  const mend = say`choose a bay at least ${atLeast(least)} wide`;
  return [told('halt', { rule: 'bay-too-narrow', where, what, figure: wide, limit: least, mend })];
}
