import type { Dimension } from './dimension.ts';
import type { ArcMark, Extent, Mark, Spot } from './mark.ts';
import { onceFor } from './once.ts';
import { textBox } from './text.ts';
import { movedView, type View } from './view.ts';

/** Marks that belong together, with the views and figures in them; a block is placed on a sheet as a whole. */
export type Block = {
  readonly marks: readonly Mark[];
  readonly views: readonly View[];
  readonly dimensions: readonly Dimension[];
};

export const emptyBlock: Block = { marks: [], views: [], dimensions: [] };

function around(points: readonly Spot[]): Extent {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    x0 = Math.min(x0, x);
    y0 = Math.min(y0, y);
    x1 = Math.max(x1, x);
    y1 = Math.max(y1, y);
  }
  return { x0, y0, x1, y1 };
}

/** The ends of an arc and where it reaches farthest right, down, left or up. */
function arcSpots({ centre: [x, y], radius, from, to }: ArcMark): readonly Spot[] {
  const quarter = Math.PI / 2;
  const first = Math.ceil(from / quarter);
  const turns = Array.from(
    { length: Math.max(0, Math.floor(to / quarter) - first + 1) },
    (_, i) => (first + i) * quarter,
  );
  return [from, ...turns, to].map((turn): Spot => [x + radius * Math.cos(turn), y + radius * Math.sin(turn)]);
}

/** The box a mark takes on paper, its line width left out. */
export function markExtent(mark: Mark): Extent {
  switch (mark.kind) {
    case 'line': {
      const [[ax, ay], [bx, by]] = [mark.from, mark.to];
      return { x0: Math.min(ax, bx), y0: Math.min(ay, by), x1: Math.max(ax, bx), y1: Math.max(ay, by) };
    }
    case 'polyline':
      return around(mark.points);
    case 'polygon':
      return around(mark.rings.flat());
    case 'arc':
      return around(arcSpots(mark));
    case 'circle': {
      const [x, y] = mark.centre;
      return { x0: x - mark.radius, y0: y - mark.radius, x1: x + mark.radius, y1: y + mark.radius };
    }
    case 'text':
      return textBox(mark);
  }
}

/** The box of several marks, worked out once for each list of them; a point at the origin when there are none. */
export const extentOf = onceFor((marks: readonly Mark[]): Extent => {
  if (marks.length === 0) return { x0: 0, y0: 0, x1: 0, y1: 0 };
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const mark of marks) {
    const box = markExtent(mark);
    x0 = Math.min(x0, box.x0);
    y0 = Math.min(y0, box.y0);
    x1 = Math.max(x1, box.x1);
    y1 = Math.max(y1, box.y1);
  }
  return { x0, y0, x1, y1 };
});

function movedMark(mark: Mark, [dx, dy]: Spot): Mark {
  const moved = ([x, y]: Spot): Spot => [x + dx, y + dy];
  switch (mark.kind) {
    case 'line':
      return { ...mark, from: moved(mark.from), to: moved(mark.to) };
    case 'polyline':
      return { ...mark, points: mark.points.map(moved) };
    case 'polygon':
      return { ...mark, rings: mark.rings.map((ring) => ring.map(moved)) };
    case 'circle':
    case 'arc':
      return { ...mark, centre: moved(mark.centre) };
    case 'text':
      return { ...mark, at: moved(mark.at) };
  }
}

function movedDimension(dimension: Dimension, [dx, dy]: Spot): Dimension {
  if (dimension.ends === null) return dimension;
  const [[ax, ay], [bx, by]] = dimension.ends;
  const about = dimension.about;
  return {
    ...dimension,
    ends: [
      [ax + dx, ay + dy],
      [bx + dx, by + dy],
    ],
    ...(about === undefined ? {} : { about: [about[0] + dx, about[1] + dy] }),
  };
}

export function movedBlock(block: Block, by: Spot): Block {
  return {
    marks: block.marks.map((mark) => movedMark(mark, by)),
    views: block.views.map((view) => movedView(view, by)),
    dimensions: block.dimensions.map((dimension) => movedDimension(dimension, by)),
  };
}

export function joined(...blocks: readonly Block[]): Block {
  return {
    marks: blocks.flatMap((block) => block.marks),
    views: blocks.flatMap((block) => block.views),
    dimensions: blocks.flatMap((block) => block.dimensions),
  };
}
