import { extentOf, movedBlock } from './block.ts';
import type { DrawingSheet } from './drawing.ts';

/** Paper left round what is drawn, mm. */
const MARGIN = 4;

/** A drawing for a page that has its own title: frame, bar and title block left off, cut close round what is drawn. */
export function bareSheet(sheet: DrawingSheet): DrawingSheet {
  const { own, views, dimensions } = sheet;
  const { x0, y0, x1, y1 } = extentOf(own);
  const moved = movedBlock({ marks: own, views, dimensions }, [MARGIN - x0, MARGIN - y0]);
  return {
    ...sheet,
    ...moved,
    own: moved.marks,
    width: Math.ceil(x1 - x0 + 2 * MARGIN),
    height: Math.ceil(y1 - y0 + 2 * MARGIN),
  };
}
