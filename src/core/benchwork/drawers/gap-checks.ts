import type { Finding } from '../../finding.ts';
import { atLeast, atMost, length, say } from '../../units/say.ts';
import type { Site } from '../fitting.ts';
import type { DrawersInput } from '../input.ts';
import { tidy } from '../machining.ts';
import { told } from '../told.ts';
import { gapsOf, openingHeights } from './figures.ts';

/** Less than this under a box drags on dust and sag, and a box with less above it cannot be tipped onto its slides; common practice, no source. mm. */
const LEAST_UNDER = 3;
const LEAST_LIFT = 10;
/** Kept between two overlaid faces, mm; common practice, no source. */
const BETWEEN_FACES = 3;

/** Overlaid faces that reach past their board or into the next face, with the most that can be had. */
export function overlapHalts(site: Site, input: DrawersInput, where: string): readonly Finding[] {
  if (input.faces !== 'overlaid') return [];
  const { grid } = site;
  const [low, high] = openingHeights(site, input);
  const wood = Math.min(tidy(low - grid.sideUnderside), tidy(grid.sideTop - high));
  // two openings lie a strut and two spacers apart, all of the frame's sheet
  const most = Math.max(0, Math.min(wood, tidy((3 * grid.t - BETWEEN_FACES) / 2)));
  const { overlap } = gapsOf(input);
  if (overlap <= most) return [];
  const what = say`faces reach ${length(overlap)} past their openings, into the next face or past the board`;
  const mend = say`write gaps: { overlap } of at most ${atMost(most)}`;
  return [told('halt', { rule: 'face-overlap', where, what, figure: overlap, limit: most, mend })];
}

/** Boxes that drag or cannot be lifted out. */
export function gapCares(input: DrawersInput, where: string): readonly Finding[] {
  const { below, above } = gapsOf(input);
  const drags = say`boxes stand ${length(below)} above the edges of their openings and will drag`;
  const stuck = say`boxes have ${length(above)} above them, too little to tip them onto their slides and out again`;
  return [
    ...(below >= LEAST_UNDER
      ? []
      : [
          told('care', {
            ...{ rule: 'box-drags', where, what: drags, figure: below, limit: LEAST_UNDER },
            mend: say`write gaps: { under } of at least ${atLeast(LEAST_UNDER)}`,
          }),
        ]),
    ...(above >= LEAST_LIFT
      ? []
      : [
          told('care', {
            ...{ rule: 'box-not-lifted-out', where, what: stuck, figure: above, limit: LEAST_LIFT },
            mend: say`write gaps: { lift-out } of at least ${atLeast(LEAST_LIFT)}`,
          }),
        ]),
  ];
}
