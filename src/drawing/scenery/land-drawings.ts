import type { DrawingBook } from '../book.ts';
import type { DrawingOptions } from '../drawing.ts';
import { contourPlan, contourWords } from './contour-plan.ts';
import { type LandLayout, largest, sitesSize } from './land-stage.ts';
import { landSection } from './section-drawing.ts';
import { lengthOf, sectionWords, titleOf } from './section-words.ts';

/** A drawing of the land as the list of all drawings takes it. */
export type LandEntry = {
  readonly id: string;
  readonly kind: 'plan' | 'section';
  readonly chapter: string;
  readonly of: null;
  readonly title: string;
};

const CONTOURS = 'scenery.contours';
const SECTION = 'scenery.section.';

/** The land's own drawings: its plan, and the sections through its hills. Templates are listed as parts. */
export function landEntries({ scenery }: DrawingBook): readonly LandEntry[] {
  if (scenery === undefined || scenery === null) return [];
  if (scenery.highest <= 0 && scenery.water.length === 0) return [];
  const base = { chapter: 'scenery', of: null };
  return [
    { ...base, id: CONTOURS, kind: 'plan', title: 'Contours of the land' },
    ...scenery.sections.map(
      (section): LandEntry => ({ ...base, id: `${SECTION}${section.id}`, kind: 'section', title: titleOf(section) }),
    ),
  ];
}

/** A drawing of the land by its id; null when it is none of these. */
export function landLayout(book: DrawingBook, id: string, options: DrawingOptions): LandLayout | null {
  const land = book.scenery ?? null;
  if (land === null) return null;
  if (id === CONTOURS) {
    const { block, scale } = largest((at) => contourPlan({ book, land, options, scale: at }), options, sitesSize(book));
    return { blocks: [block], scale, desc: contourWords({ land }, options.unit) };
  }
  const section = land.sections.find((one) => id === `${SECTION}${one.id}`);
  if (section === undefined) return null;
  const { block, scale } = largest(landSection({ book, land, options }, section), options, {
    width: lengthOf(section),
    height: 0,
  });
  return { blocks: [block], scale, desc: sectionWords(section, options.unit) };
}
