import type { Point } from '../core/geometry/shapes.ts';
import type { MatingMark, Part, Placement } from '../core/stock/part.ts';
import { arrowhead } from './arrow.ts';
import { boxesOf, crosses, linesOf, overlap, padded } from './labels.ts';
import type { Extent, Mark, Spot } from './mark.ts';
import { onWood, type Stage } from './part-stage.ts';
import { lettering, smallText, textWidth } from './text.ts';
import { onPaper } from './view.ts';

/** Length of the arrow on paper, mm. */
const LONG = 5.5;
const WORD = 'up';

/** Which way a piece stands in its own plane: along its length or across it; null where its face looks up or down. */
function upOf({ pose }: Placement): Point | null {
  const [along, across] = [pose.x[2], pose.y[2]];
  if (Math.abs(along) > 0.9) return [Math.sign(along), 0];
  return Math.abs(across) > 0.9 ? [0, Math.sign(across)] : null;
}

/** Whether all pieces of a part lie: their way up is a side, which no arrow on the view can tell. */
export function liesFlat({ places }: Part): boolean {
  return places.every((place) => upOf(place) === null);
}

/** The way up of a part, if it bears a mark that says so and all its pieces stand alike. */
export function partUp({ places }: Part): (Pick<MatingMark, 'side' | 'at'> & { readonly way: Point }) | null {
  const marked = places.flatMap((place) =>
    place.marks.filter(({ kind }) => kind === 'up').map((mark) => ({ place, mark })),
  );
  const [first] = marked;
  const way = first === undefined ? null : upOf(first.place);
  if (first === undefined || way === null) return null;
  const alike = marked.every(({ place }) => {
    const other = upOf(place);
    return other !== null && other[0] === way[0] && other[1] === way[1];
  });
  return alike ? { way, at: first.mark.at, side: first.mark.side } : null;
}

/** The arrow with its word to the right of it or over it, and the box both take. */
function arrowAt(
  [x, y]: Spot,
  { way: [along, across], side }: NonNullable<ReturnType<typeof partUp>>,
): { readonly marks: readonly Mark[]; readonly box: Extent } {
  const half = LONG / 2;
  const [from, tip]: readonly [Spot, Spot] = [
    [x - along * half, y + across * half],
    [x + along * half, y - across * half],
  ];
  const wide = textWidth(WORD, smallText);
  const upright = across !== 0;
  const word: Spot = upright ? [x + 1.4, y + smallText / 2] : [x - wide / 2, y - 1.4];
  const box = upright
    ? { x0: x - 0.6, x1: x + 1.4 + wide, y0: y - half, y1: y + half }
    : { x0: x - half, x1: x + half, y0: y - 1.4 - smallText, y1: y + 0.6 };
  const marks: readonly Mark[] = [
    { kind: 'line', from, to: tip, pen: side === 'back' ? 'hidden' : 'feature', role: 'symbol' },
    arrowhead(tip, from),
    lettering(WORD, word, { role: 'label' }),
  ];
  return { marks, box };
}

/** A small arrow on the part that says which way is up, near where the mark is written and dashed when that is the back; none where there is no room. */
export function upMarks(stage: Stage, drawn: readonly Mark[]): readonly Mark[] {
  const { part, view, window } = stage;
  const up = partUp(part);
  if (up === null) return [];
  const shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.06, 0.94, 0.15, 0.85, 0.25, 0.75, 0.35, 0.65];
  const xs = [up.at[0], ...shares.map((share) => window.x0 + share * (window.x1 - window.x0))];
  const ys = [0.5, 0.4, 0.6, 0.3, 0.7].map((share) => window.y0 + share * (window.y1 - window.y0));
  const [left, foot] = onPaper(view, [window.x0, window.y0]);
  const [right, head] = onPaper(view, [window.x1, window.y1]);
  const [lines, boxes] = [linesOf(drawn), boxesOf(drawn)];
  const isWood = onWood(stage);
  const isFree = (box: Extent) =>
    isWood(box) &&
    box.x0 > left &&
    box.x1 < right &&
    box.y0 > head &&
    box.y1 < foot &&
    !boxes.some((other) => overlap(box, other)) &&
    !lines.some((line) => crosses(line, box));
  const found = xs
    .flatMap((x) => ys.map((y) => arrowAt(onPaper(view, [x, y]), up)))
    .find(({ box }) => isFree(padded(box, 0.8)));
  return found?.marks ?? [];
}
