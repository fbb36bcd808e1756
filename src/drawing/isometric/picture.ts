import type { Body } from '../../core/assembly/body.ts';
import { boxRound } from '../../core/assembly/engagement.ts';
import { convex } from '../../core/geometry/convex.ts';
import type { Point, Polygon, Vector } from '../../core/geometry/shapes.ts';
import { plus, times } from '../../core/geometry/vector.ts';
import { arrowhead } from '../arrow.ts';
import type { Block } from '../block.ts';
import type { Mark, Spot } from '../mark.ts';
import { flat } from './gaze.ts';
import { type Seen, seenOf } from './hidden.ts';
import { pieceLabels } from './piece-labels.ts';

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
  const seenBy = (id: string) => seen.filter((one) => one.id === id).map(({ area }) => onPaper(area, paper));
  const labels = [...picture.labels].map(([id, text]) => ({ text, areas: seenBy(id) }));
  return { marks: [...drawn, ...pieceLabels(labels, drawn)], views: [], dimensions: [] };
}

function onPaper({ outline, holes }: Polygon, paper: (point: Point) => Spot): Polygon {
  return { outline: outline.map(paper), holes: holes.map((hole) => hole.map(paper)) };
}

function rank({ strong }: Picture, { id }: Seen): number {
  return strong.has(id) ? 1 : 0;
}

function areaMark({ id, area }: Seen, { strong }: Picture, paper: (point: Point) => Spot): Mark {
  const rings = [area.outline, ...area.holes].map((loop) => loop.map(paper));
  return { kind: 'polygon', rings, fill: 'wood', pen: strong.has(id) ? 'edge' : 'hatch', role: 'outline' };
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
