import { area } from '../../core/geometry/polygon.ts';
import { type Block, extentOf } from '../block.ts';
import {
  alsoTaken,
  around,
  boxesOf,
  type Labelled,
  labelMarks,
  ledLabelMarks,
  linesOf,
  padded,
  taken,
} from '../labels.ts';
import type { Extent, Mark } from '../mark.ts';
import { extentOfSeen, type Seen } from '../scene.ts';
import { onPaper, type View } from '../view.ts';

/** Round a leader's dot in a hatched piece, so that it is seen; mm. */
const HALO = 0.8;
/** How far a leader's dot keeps from the ends of its piece where there is room, mm. */
const FROM_END = 1.5;

/** Of a piece in several areas the largest, which a label beside it names without doubt. */
function largestOf(piece: Seen): Seen {
  const [first, ...more] = piece.areas;
  if (first === undefined) return piece;
  return { ...piece, areas: [more.reduce((best, one) => (area(one) > area(best) ? one : best), first)] };
}

function onSheet(view: View, piece: Seen): Extent {
  const { low, high } = extentOfSeen(piece);
  const [[x0, y1], [x1, y0]] = [onPaper(view, low), onPaper(view, high)];
  return { x0, y0, x1, y1 };
}

/** Where a leader may end: on a piece without its ends. */
function withoutEnds({ x0, x1, y0, y1 }: Extent): Extent {
  const [w, h] = [x1 - x0, y1 - y0];
  if (Math.max(w, h) < 3 * FROM_END) return { x0, x1, y0, y1 };
  return w >= h ? { x0: x0 + FROM_END, x1: x1 - FROM_END, y0, y1 } : { x0, x1, y0: y0 + FROM_END, y1: y1 - FROM_END };
}

/** A leader's dot on paper of its own, clear of the hatching. */
function haloed(marks: readonly Mark[]): readonly Mark[] {
  return marks.flatMap((mark): readonly Mark[] =>
    mark.kind === 'circle' ? [{ ...mark, radius: HALO, fill: 'paper', pen: 'none', role: 'symbol' }, mark] : [mark],
  );
}

/** Labels of a bay's pieces: those of `led` roles stand off with a leader, since other pieces lie close to either side. */
export function bayLabels(
  block: Block,
  view: View,
  { pieces, led }: { readonly pieces: readonly Seen[]; readonly led: readonly string[] },
): Block {
  const labels = pieces.map(largestOf).map((piece): Labelled & { readonly isLed: boolean } => {
    return { text: piece.label, box: onSheet(view, piece), isLed: led.includes(piece.role) };
  });
  const { x0, x1, y0, y1 } = extentOf(block.marks);
  const before = Math.min(...labels.map(({ box }) => box.x0));
  const beside = { x0, x1: before, y0, y1 };
  const outer = { x0: x0 - 6, x1: x1 + 14, y0: y0 - 8, y1: y1 + 6 };
  const rooms = [padded(around(labels.map(({ box }) => box)), 7.5), outer];
  const ledRooms = [beside, ...rooms];
  const marks: Mark[] = [];
  let crowd = taken({ lines: linesOf(block.marks), boxes: boxesOf(block.marks) });
  for (const { isLed, ...label } of labels.toSorted((a, b) => Number(a.isLed) - Number(b.isLed))) {
    const target = { ...label, box: withoutEnds(label.box) };
    const led = isLed
      ? ledRooms.map((room) => ledLabelMarks(target, crowd, room)).find((one) => one.length > 0)
      : undefined;
    const found = haloed(led ?? labelMarks(label, crowd, rooms));
    marks.push(...found);
    crowd = alsoTaken(crowd, found);
  }
  return { ...block, marks: [...block.marks, ...marks] };
}
