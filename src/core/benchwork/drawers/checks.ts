import type { Finding } from '../../finding.ts';
import type { Envelope } from '../../stock/part.ts';
import { atLeast, length, type Sentence, say } from '../../units/say.ts';
import { listedAs } from '../assumed.ts';
import type { Site } from '../fitting.ts';
import type { DrawersInput } from '../input.ts';
import { tidy } from '../machining.ts';
import { PRACTICE, told } from '../told.ts';
import { type Bay, baysBehind, standingIn } from './bays.ts';
import { longestSlide, slideLengths, takeOff } from './box.ts';
import { BEHIND_SLIDE, bayAcross, gapsOf, LEAST_LIGAMENT, openingHeights, SLIDE_TALL } from './figures.ts';
import { gapCares, overlapHalts } from './gap-checks.ts';
import { openingHalts } from './opening-checks.ts';

/** What keeps a drawer from being made in a bay; empty when it can be. `taken` is what stands in the bench already. */
export function drawerHalts(
  site: Site,
  input: DrawersInput,
  { bay, taken }: { readonly bay: Bay; readonly taken: readonly Envelope[] },
): readonly Finding[] {
  const where = `drawer.${bay.side}-${bay.number}`;
  return [
    ...openingHalts(site, input, where),
    ...overlapHalts(site, input, where),
    ...slideHalts(site, input, { bay, where }),
    ...behindHalts(site, bay, { where, taken }),
    ...narrowHalts(site, input, { bay, where }),
  ];
}

type Bayed = { readonly bay: Bay; readonly where: string };

function slideHalts({ goods }: Site, { slides }: DrawersInput, { bay, where }: Bayed): readonly Finding[] {
  const most = tidy(bay.deep - BEHIND_SLIDE);
  if (slides.length <= most) return [];
  const lengths = slideLengths(goods);
  const longest = longestSlide(most, lengths);
  const what = say`slides of ${length(slides.length)} are longer than the bay, which is ${length(bay.deep)} deep`;
  const listed = goods?.hardware.some(({ form }) => form === 'slide') === true;
  const mend =
    longest === null
      ? say`the shortest slide ${listed ? 'in the stock files' : 'sold'} is ${length(lengths[0] ?? 0)}; choose a bay at least ${atLeast(tidy((lengths[0] ?? 0) + BEHIND_SLIDE))} deep`
      : say`use slides of ${length(longest)}, the longest ${listed ? 'in the stock files that fit' : 'that fit'}`;
  return [told('halt', { rule: 'slides-longer-than-bay', where, what, figure: slides.length, limit: most, mend })];
}

function behindHalts(
  site: Site,
  bay: Bay,
  { where, taken }: { readonly where: string; readonly taken: readonly Envelope[] },
): readonly Finding[] {
  const [first] = standingIn(bay, taken);
  if (first === undefined) return [];
  const free = baysBehind(site.grid, bay.side).filter((one) => standingIn(one, taken).length === 0);
  const what = say`${first.of} stands in bay ${String(bay.number)} of the ${bay.side}, where the drawer would run`;
  const choice = free.map(({ number }) => number).join(', ');
  const mend =
    free.length === 0 ? say`no bay of this side is free; take ${first.of} out` : say`free bays of this side: ${choice}`;
  const rule = first.kind === 'leg' ? 'drawer-behind-leg' : 'bay-taken';
  return [told('halt', { rule, where, what, figure: bay.number, limit: null, mend, unit: 'count' })];
}

/** A face shorter than this has no room for a pull, mm. */
const LEAST_FACE = 60;

function narrowHalts(site: Site, input: DrawersInput, { bay, where }: Bayed): readonly Finding[] {
  const [u0, u1] = bayAcross(site, bay);
  const thick = site.materials[input.material]?.thickness.mean ?? 0;
  const clear = tidy(u1 - u0 - 2 * site.grid.t);
  const least = tidy(Math.max(LEAST_FACE + 2 * input.slides.clearance + 2 * thick, 5 * input.bit + LEAST_FACE));
  if (clear >= least) return [];
  const what =
    clear > 0
      ? say`between its spacers the bay is ${length(clear)} wide, too narrow for a drawer`
      : say`the bay is ${length(tidy(u1 - u0))} wide, which its spacers fill`;
  const mend = say`choose a bay at least ${atLeast(least + 2 * site.grid.t)} wide`;
  return [told('halt', { rule: 'bay-too-narrow', where, what, figure: Math.max(0, clear), limit: least, mend })];
}

/** What works at a cost; said once a set, at its first drawer. */
export function drawerCares(site: Site, input: DrawersInput, where: string): readonly Finding[] {
  const [low, high] = openingHeights(site, input);
  const thin = Math.min(tidy(low - site.grid.sideUnderside), tidy(site.grid.sideTop - high));
  const what = say`openings leave ${length(thin)} of the side above or below them`;
  const mend = say`keep at least ${atLeast(LEAST_LIGAMENT)}`;
  const ligament =
    thin < LEAST_LIGAMENT
      ? [told('care', { rule: 'thin-ligament', where, what, figure: thin, limit: LEAST_LIGAMENT, mend })]
      : [];
  return [...ligament, ...gapCares(input, where), ...clearanceCares(input, where), ...assumedNotes(site, input, where)];
}

/** What nobody wrote about a set of drawers, and what is used. */
function assumedNotes(site: Site, input: DrawersInput, where: string): readonly Finding[] {
  const [low, high] = openingHeights(site, input);
  const [below, above] = [tidy(low - site.grid.sideUnderside), tidy(site.grid.sideTop - high)];
  const unsaid = input.unsaid ?? [];
  const assumed: readonly Sentence[] = [
    ...(unsaid.includes('clearance') ? [say`slides take ${length(input.slides.clearance)} each side of a box`] : []),
    ...(unsaid.includes('bit') ? [say`openings are cut with a bit of ${length(input.bit)}`] : []),
    ...(input.opening === null && input.ligament === null
      ? [say`openings leave ${length(below)} of the side below and ${length(above)} above`]
      : []),
  ];
  const mend = say`write slides: { clearance }, bit, opening or ligament under drawers; boxes keep ${length(gapsOf(input).below)} below and ${length(gapsOf(input).above)} above in their openings, which gaps: { under, lift-out } changes`;
  return listedAs(assumed, { rule: 'drawers-assumed', where, mend });
}

/** Slides want half an inch and at most a thirty-second more; wood on wood wants a sixteenth a side. mm. */
const SLIDE_ROOM = { least: 12.7, most: 12.7 + 25.4 / 32 };
const WOOD_ROOM = 25.4 / 16;

function clearanceCares({ slides }: DrawersInput, where: string): readonly Finding[] {
  const { clearance } = slides;
  if (clearance < WOOD_ROOM - 1e-9) {
    const off = takeOff(2 * clearance, 2 * WOOD_ROOM);
    const what = say`boxes have ${length(clearance)} a side and will bind in a damp month`;
    const mend = say`take ${length(off)} more off each side, and try each box in its hole before it is finished`;
    return [
      told('care', { rule: 'drawer-binds', where, what, figure: clearance, limit: WOOD_ROOM, mend, source: PRACTICE }),
    ];
  }
  const { least, most } = SLIDE_ROOM;
  if (clearance < SLIDE_TALL / 5 || (clearance >= least - 0.05 && clearance <= most + 0.01)) return [];
  const what = say`slides are given ${length(clearance)} a side`;
  const mend = say`most slides need ${length(least)} and take up to ${length(most)}; measure yours closed`;
  return [
    told('care', {
      rule: 'slide-clearance-unusual',
      where,
      what,
      figure: clearance,
      limit: clearance < least ? least : most,
      mend,
    }),
  ];
}
