import { extentOf, movedBlock } from './block.ts';
import type { DrawingSheet } from './drawing.ts';

/** Paper left round what is drawn, mm. */
const MARGIN = 4;

/**
 * A drawing for a page that has its own title: frame, bar and title block left off, cut close round what is drawn, which
 * stands in the middle where it is not as wide as `atLeast`; mm.
 */
export function bareSheet(sheet: DrawingSheet, atLeast = 0): DrawingSheet {
  const { own, views, dimensions } = sheet;
  const { x0, y0, x1, y1 } = extentOf(own);
  const close = Math.ceil(x1 - x0 + 2 * MARGIN);
  const width = Math.max(atLeast, close);
  const aside = MARGIN + (width - close) / 2;
  const moved = movedBlock({ marks: own, views, dimensions }, [aside - x0, MARGIN - y0]);
  return {
    ...sheet,
    ...moved,
    own: moved.marks,
    width,
    height: Math.ceil(y1 - y0 + 2 * MARGIN),
  };
}
