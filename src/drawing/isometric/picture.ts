import type { Body } from '../../core/assembly/body.ts';
import { boxRound } from '../../core/assembly/engagement.ts';
import { convex } from '../../core/geometry/convex.ts';
import type { Point, Vector } from '../../core/geometry/shapes.ts';
import { plus, times } from '../../core/geometry/vector.ts';
import { arrowhead } from '../arrow.ts';
import { type Block, extentOf } from '../block.ts';
import { boxesOf, labelAll, linesOf } from '../labels.ts';
import type { Extent, Mark, Spot } from '../mark.ts';
import { flat } from './gaze.ts';
import { type Seen, seenOf } from './hidden.ts';

/** An arrow along the last stretch of a path; it ends where it meets the body, in the picture's space, mm. */
export type PathArrow = { readonly body: string; readonly direction: Vector };

/** What an isometric picture shows: bodies where they stand, those that are new drawn strong and labelled. */
export type Picture = {
  readonly bodies: readonly Body[];
  readonly strong: ReadonlySet<string>;
  /** what is written beside a body; none for those left out */
  readonly labels: ReadonlyMap<string, string>;
  readonly arrows: readonly PathArrow[];
  /** the frame turned over for the reader */
  readonly lies: 'upright' | 'upside-down';
};

/** Length of an arrow on paper, mm, and how far off the body its tip stands. */
const ARROW = { length: 14, off: 2 };

/** A picture at a scale (10 for 1:10), its upper left corner anywhere: hidden faces are gone, not drawn over. */
export function isometric(picture: Picture, scale: number): Block {
  const bodies = picture.lies === 'upright' ? picture.bodies : picture.bodies.map(turnedOver);
  const seen = seenOf(bodies);
  const paper = ([x, y]: Point): Spot => [x / scale, -y / scale];
  const areas = [...seen]
    .sort((a, b) => rank(picture, a) - rank(picture, b))
    .map((one) => areaMark(one, picture, paper));
  const arrows = picture.arrows.flatMap((arrow) => arrowMarks(arrow, { bodies, picture, paper }));
  const drawn = [...areas, ...arrows];
  const labels = [...picture.labels].flatMap(([id, text]) => {
    const box = extentOfSeen(seen, id, paper);
    return box === null ? [] : [{ text, box }];
  });
  const within = labels.length === 0 ? null : grown(extentOf(drawn), 14);
  const written = within === null ? [] : labelAll(labels, { lines: linesOf(drawn), boxes: boxesOf(drawn) }, within);
  return { marks: [...drawn, ...written], views: [], dimensions: [] };
}

function rank({ strong }: Picture, { id }: Seen): number {
  return strong.has(id) ? 1 : 0;
}

function areaMark({ id, area }: Seen, { strong }: Picture, paper: (point: Point) => Spot): Mark {
  const rings = [area.outline, ...area.holes].map((loop) => loop.map(paper));
  return { kind: 'polygon', rings, fill: 'wood', pen: strong.has(id) ? 'cut-edge' : 'hatch', role: 'outline' };
}

/** A body turned over about the bench's length, as its builders turn it. */
function turnedOver(one: Body): Body {
  const over = ([x, y, z]: Vector): Vector => [x, 0 - y, 0 - z];
  const pieces = one.pieces.map((piece) => convex(piece.faces.map((face) => face.map(over))));
  const box = boxRound(pieces.map((piece) => ({ ...one, box: piece.box })));
  return { ...one, pieces, box };
}

type Ground = { readonly bodies: readonly Body[]; readonly picture: Picture; readonly paper: (point: Point) => Spot };

/** An arrow that ends just off the face the body leads its tail from. */
function arrowMarks({ body, direction }: PathArrow, { bodies, picture, paper }: Ground): readonly Mark[] {
  const one = bodies.find(({ id }) => id === body);
  if (one === undefined) return [];
  const [x, y, z] = direction;
  const way: Vector = picture.lies === 'upright' ? direction : [x, 0 - y, 0 - z];
  const { min, max } = one.box;
  const middle: Vector = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
  const half =
    Math.abs(way[0]) * (max[0] - min[0]) + Math.abs(way[1]) * (max[1] - min[1]) + Math.abs(way[2]) * (max[2] - min[2]);
  const tail = paper(flat(plus(middle, times(way, -half / 2))));
  const [ux, uy] = onPaperWay(way, paper);
  const tip: Spot = [tail[0] - ux * ARROW.off, tail[1] - uy * ARROW.off];
  const from: Spot = [tip[0] - ux * ARROW.length, tip[1] - uy * ARROW.length];
  return [{ kind: 'line', from, to: tip, pen: 'edge', role: 'arrow' }, arrowhead(tip, from)];
}

function onPaperWay(way: Vector, paper: (point: Point) => Spot): Spot {
  const [x, y] = paper(flat(way));
  const size = Math.hypot(x, y) || 1;
  return [x / size, y / size];
}

function extentOfSeen(seen: readonly Seen[], id: string, paper: (point: Point) => Spot): Extent | null {
  const spots = seen.filter((one) => one.id === id).flatMap(({ area }) => area.outline.map(paper));
  if (spots.length === 0) return null;
  const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
  return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
}

function grown({ x0, y0, x1, y1 }: Extent, by: number): Extent {
  return { x0: x0 - by, y0: y0 - by, x1: x1 + by, y1: y1 + by };
}
