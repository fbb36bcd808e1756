import { bounds } from '../core/geometry/polygon.ts';
import type { Point } from '../core/geometry/shapes.ts';
import type { Patch } from '../core/stock/part.ts';
import type { Block } from './block.ts';
import { beside, clipWindow, type DetailAsk, detailScale, openSides, titled } from './detail-frame.ts';
import { alsoTaken, boxesOf, isClear, linesOf, padded, taken } from './labels.ts';
import type { Mark } from './mark.ts';
import { clippedOutline, within } from './outline.ts';
import { cornerLetter } from './part-notes.ts';
import { outlineOf } from './scene.ts';
import { lettering, smallText, textBox } from './text.ts';
import { onPaper, type View } from './view.ts';

/** How far a corner's letter may stand from the corner, and how far round from straight outwards; mm on paper, radians. */
const OFF = [3.2, 4.5, 6, 8, 11, 15] as const;
const ROUND = [0, 0.4, -0.4, 0.8, -0.8, 1.3, -1.3, 2, -2, 2.7, -2.7, Math.PI] as const;

/** The corners' letters, each clear of the lines and of each other; a corner without room has its place in the list alone. */
function cornerNames(view: View, points: readonly Point[], shape: readonly Mark[]): readonly Mark[] {
  const { low, high } = bounds(points);
  const [mx, my] = onPaper(view, [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2]);
  const written: Mark[] = [];
  let crowd = taken({ lines: linesOf(shape), boxes: boxesOf(shape) });
  for (const [i, point] of points.entries()) {
    const [x, y] = onPaper(view, point);
    const out = Math.atan2(y - my, x - mx);
    const spots = OFF.flatMap((far) =>
      ROUND.map((by) => [x + far * Math.cos(out + by), y + far * Math.sin(out + by) + smallText / 2] as const),
    );
    const found = spots
      .map((at) => lettering(cornerLetter(i), at, { weight: 'bold', role: 'label', anchor: 'middle' }))
      .find((mark) => isClear(padded(textBox(mark), 0.4), crowd));
    if (found === undefined) continue;
    written.push(found);
    crowd = alsoTaken(crowd, [found]);
  }
  return written;
}

/** A small cut-out that stands askew, enlarged, with its corners' letters: their places stand in the notes. */
export function outlineDetail(ask: DetailAsk, box: Patch, points: readonly Point[]): Block {
  const { part, sizing } = ask;
  const scale = detailScale({ width: box.x1 - box.x0, height: box.y1 - box.y0 + 2 * beside }, ask);
  const limits = { u: part.blank.length, v: part.blank.width };
  const window = clipWindow(box, limits, beside * scale);
  const view: View = { name: `detail ${sizing.letter}`, scale, origin: [0, 0], breaks: [] };
  const style = { window, open: openSides(window, limits) };
  const shape = within(outlineOf(part), window).flatMap((piece) => clippedOutline(view, piece, style));
  return titled({ marks: [...shape, ...cornerNames(view, points, shape)], views: [view], dimensions: [] }, ask, scale);
}
