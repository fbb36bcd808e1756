import type { Finding } from '../../finding.ts';
import { atLeast, atMost, length, type Sentence, say } from '../../units/say.ts';
import type { Site } from '../fitting.ts';
import type { DrawersInput } from '../input.ts';
import { tidy } from '../machining.ts';
import { told } from '../told.ts';
import { gapsOf, LEAST_LIGAMENT, openingHeights, SLIDE_TALL } from './figures.ts';

/** Less wood than this beside an opening is no ligament at all, mm; common practice, no source. */
const NO_LIGAMENT = 15;

/** An opening in its board: wood below and above it, its height, and the least that takes a box on slides; mm. */
type Opening = {
  readonly where: string;
  readonly side: number;
  readonly strut: number;
  readonly below: number;
  readonly above: number;
  readonly tall: number;
  readonly least: number;
};

/** What keeps an opening from being cut in its board; empty when it can be. */
export function openingHalts(site: Site, input: DrawersInput, where: string): readonly Finding[] {
  const { side, strut, sideUnderside, sideTop } = site.grid;
  const [low, high] = openingHeights(site, input);
  const gaps = gapsOf(input);
  const opening: Opening = {
    ...{ where, side, strut },
    below: tidy(low - sideUnderside),
    above: tidy(sideTop - high),
    tall: tidy(high - low),
    least: tidy(SLIDE_TALL + gaps.below + gaps.above),
  };
  return input.opening === null ? leftHalts(opening, input.ligament) : writtenHalts(opening);
}

/** The tallest opening above the struts' undersides that leaves ligaments; mm, 0 when there is none. */
function tallest({ side, strut }: Opening): number {
  return Math.max(0, tidy(Math.min(strut, side - LEAST_LIGAMENT) - LEAST_LIGAMENT));
}

/** How deep struts and sides are for an opening of a height; what is deep enough already is not told. */
function deeper({ side, strut }: Opening, tall: number): Sentence {
  const [sides, struts] = [tidy(tall + 2 * LEAST_LIGAMENT), tidy(tall + LEAST_LIGAMENT)];
  if (side >= sides) return say`the struts at least ${atLeast(struts)}`;
  if (strut >= struts) return say`the sides at least ${atLeast(sides)}`;
  return say`the sides at least ${atLeast(sides)} and the struts at least ${atLeast(struts)}`;
}

/** At most how tall, where a drawer still fits, or how deep the frame would be. */
function lower(opening: Opening): Sentence {
  const [most, { tall, least }] = [tallest(opening), opening];
  if (most < least)
    return [...say`make `, ...deeper(opening, least), ...say`, for an opening of ${length(least)} that a drawer needs`];
  const less = say`make the opening at most ${atMost(most)}, which leaves ${length(LEAST_LIGAMENT)}`;
  return [...less, ...say`, or `, ...deeper(opening, tall)];
}

function writtenHalts(opening: Opening): readonly Finding[] {
  const { where, side, strut, below, above, tall, least } = opening;
  if (above < 0) {
    const what =
      tall > side
        ? say`an opening ${length(tall)} tall is taller than the side of ${length(side)}`
        : say`an opening ${length(tall)} tall does not fit above the undersides of the struts, where the side is ${length(strut)} tall`;
    const limit = tallest(opening);
    return [told('halt', { rule: 'opening-taller-than-side', where, what, figure: tall, limit, mend: lower(opening) })];
  }
  if (Math.min(below, above) < NO_LIGAMENT) return [noLigament(opening, lower(opening))];
  if (tall >= least) return [];
  const mend =
    tallest(opening) >= least
      ? say`make the opening at least ${atLeast(least)}`
      : [...say`make `, ...deeper(opening, least)];
  return [tooLow(opening, mend)];
}

function leftHalts(opening: Opening, ligament: number | null): readonly Finding[] {
  const { side, strut, below, above, tall, least } = opening;
  if (Math.min(below, above) < NO_LIGAMENT)
    return [noLigament(opening, say`write a ligament of at least ${atLeast(LEAST_LIGAMENT)}`)];
  if (tall >= least) return [];
  const thinner = tidy(Math.min(strut - least, (side - least) / 2));
  if (ligament !== null && thinner >= NO_LIGAMENT)
    return [tooLow(opening, say`write a ligament of at most ${atMost(thinner)}`)];
  const isTall = side >= least + 2 * LEAST_LIGAMENT;
  // unwritten, the wood above an opening is what struts leave below it
  const struts = say`the struts at least ${atLeast(tidy((side + least) / 2))}`;
  return [tooLow(opening, [...say`make `, ...(isTall ? struts : deeper(opening, least))])];
}

function noLigament({ where, below, above }: Opening, mend: Sentence): Finding {
  const what = say`the opening leaves ${length(below)} of the side below it and ${length(above)} above`;
  return told('halt', { rule: 'no-ligament', where, what, figure: Math.min(below, above), limit: NO_LIGAMENT, mend });
}

function tooLow({ where, side, below, above, tall, least }: Opening, mend: Sentence): Finding {
  const what =
    tall > 0
      ? say`an opening ${length(tall)} tall leaves no height for a slide of ${length(SLIDE_TALL)}`
      : say`${length(below)} of wood below and ${length(above)} above leave no opening in a side of ${length(side)}`;
  return told('halt', { rule: 'opening-too-low', where, what, figure: Math.max(0, tall), limit: least, mend });
}
