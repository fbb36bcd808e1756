import type { Block } from '../block.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingOptions } from '../drawing.ts';
import { sitesSize } from '../scenery/land-stage.ts';
import { gradeProfile, profileWords } from './grade-profile.ts';
import { setOutNotes } from './set-out-notes.ts';
import { planWords, trackPlan } from './track-plan.ts';
import { largestFitting } from './track-stage.ts';

/** A drawing of the track as the list of all drawings takes it. */
export type TrackEntry = {
  readonly id: string;
  readonly kind: 'plan' | 'elevation';
  readonly chapter: string;
  readonly of: null;
  readonly title: string;
};

const PLAN = 'track.plan';
const PROFILE = 'track.heights.';

/** The track's own drawings: its plan, and the heights of every line that is not level. */
export function trackEntries({ track }: DrawingBook): readonly TrackEntry[] {
  if (track === undefined || track === null || track.lines.length === 0) return [];
  const base = { chapter: 'track', of: null };
  const climbing = track.lines.filter(({ profile }) => profile.curves.length > 0);
  return [
    { ...base, id: PLAN, kind: 'plan', title: 'Track from above' },
    ...climbing.map(
      ({ id }): TrackEntry => ({ ...base, id: `${PROFILE}${id}`, kind: 'elevation', title: `Heights of ${id}` }),
    ),
  ];
}

/** A drawing of the track by its id; null when it is none of these. */
export function trackLayout(
  book: DrawingBook,
  id: string,
  options: DrawingOptions,
): { readonly blocks: readonly Block[]; readonly scale: number; readonly desc: string } | null {
  const track = book.track ?? null;
  if (track === null) return null;
  if (id === PLAN) {
    const { block, scale } = largestFitting(
      (at) => trackPlan({ book, track, options, scale: at }),
      options,
      sitesSize(book),
    );
    const table = setOutNotes(track, options.unit);
    return { blocks: [block, ...table], scale, desc: planWords({ track }, options.unit) };
  }
  const line = track.lines.find((one) => id === `${PROFILE}${one.id}`);
  if (line === undefined) return null;
  const { block, scale } = largestFitting((at) => gradeProfile({ book, track, options, scale: at }, line), options, {
    width: line.length,
    height: 0,
  });
  return { blocks: [block], scale, desc: profileWords(line, options.unit) };
}
