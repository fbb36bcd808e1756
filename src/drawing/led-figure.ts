import { arrowhead, arrowLength } from './arrow.ts';
import { type Block, extentOf } from './block.ts';
import { boxesOf, ledLabelMarks, linesOf, padded, taken } from './labels.ts';
import type { Straight } from './lines-near.ts';
import type { Mark, Spot } from './mark.ts';

/** A figure to be led to a spot, and lines besides those drawn that it keeps off. */
export type Led = { readonly text: string; readonly to: Spot; readonly clear: readonly Straight[] };

/** Lines about a spot that no figure crosses, so that the leader to it has room for its arrowhead. */
function star([x, y]: Spot): readonly Straight[] {
  const reach = arrowLength + 0.8;
  return [0, 1, 2, 3].map((i): Straight => {
    const [dx, dy] = [reach * Math.cos((i * Math.PI) / 4), reach * Math.sin((i * Math.PI) / 4)];
    return [
      [x - dx, y - dy],
      [x + dx, y + dy],
    ];
  });
}

/** The marks of a label led to a spot as a figure, ended with an arrowhead in place of a dot. */
function pointed(marks: readonly Mark[]): readonly Mark[] {
  const line = marks.find((mark) => mark.kind === 'line');
  return marks.map((mark): Mark => {
    if (mark.kind === 'text') return { ...mark, role: 'figure', weight: 'regular' };
    return mark.kind === 'circle' && line?.kind === 'line' ? arrowhead(line.to, line.from) : mark;
  });
}

/** A figure beside a drawing with a leader to its spot, clear of everything drawn; none where there is no room. */
export function ledFigure({ marks }: Block, { text, to: [x, y], clear }: Led): readonly Mark[] {
  const lines = [...linesOf(marks), ...clear, ...star([x, y])];
  const label = { text, box: { x0: x, x1: x, y0: y, y1: y } };
  return pointed(ledLabelMarks(label, taken({ lines, boxes: boxesOf(marks) }), padded(extentOf(marks), 10)));
}
