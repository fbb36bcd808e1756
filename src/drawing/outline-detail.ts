import { bounds } from '../core/geometry/polygon.ts';
import type { Point } from '../core/geometry/shapes.ts';
import type { Patch } from '../core/stock/part.ts';
import type { Block } from './block.ts';
import { beside, clipWindow, type DetailAsk, detailScale, openSides, titled } from './detail-frame.ts';
import type { Mark } from './mark.ts';
import { clippedOutline, within } from './outline.ts';
import { cornerLetter } from './part-notes.ts';
import { outlineOf } from './scene.ts';
import { lettering, smallText } from './text.ts';
import { onPaper, type View } from './view.ts';

/** How far a corner's letter stands from the corner, mm on paper. */
const OFF = 3.2;

function cornerNames(view: View, points: readonly Point[]): readonly Mark[] {
  const { low, high } = bounds(points);
  const [mx, my] = onPaper(view, [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2]);
  return points.map((point, i) => {
    const [x, y] = onPaper(view, point);
    const far = Math.hypot(x - mx, y - my);
    const at = [x + ((x - mx) / far) * OFF, y + ((y - my) / far) * OFF + smallText / 2] as const;
    return lettering(cornerLetter(i), at, { weight: 'bold', role: 'label', anchor: 'middle' });
  });
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
  return titled({ marks: [...shape, ...cornerNames(view, points)], views: [view], dimensions: [] }, ask, scale);
}
