import type { Body } from '../../core/assembly/body.ts';
import { boxRound } from '../../core/assembly/engagement.ts';
import { convex } from '../../core/geometry/convex.ts';
import { area, holds } from '../../core/geometry/polygon.ts';
import type { Point, Polygon, Vector } from '../../core/geometry/shapes.ts';
import { plus, times } from '../../core/geometry/vector.ts';
import { arrowhead } from '../arrow.ts';
import { type Block, extentOf } from '../block.ts';
import { boxesOf, isClear, linesOf, padded, taken } from '../labels.ts';
import type { Extent, Mark, Spot } from '../mark.ts';
import { onceFor } from '../once.ts';
import { lettering, smallText, textBox } from '../text.ts';
import { flat } from './gaze.ts';
import { type Seen, type Shown, seenJoined, seenOf } from './hidden.ts';
import { hiddenEdges, silhouette } from './hidden-edges.ts';
import { pieceLabels } from './piece-labels.ts';
import { turnedFace } from './surface.ts';

/** An arrow along the last stretch of a path; it ends where it meets the body, in the picture's space, mm. */
export type PathArrow = { readonly body: string; readonly direction: Vector };

/** A label and the bodies it names. */
export type PictureLabel = { readonly text: string; readonly ids: readonly string[] };

/** A body with the faces that a picture may show. */
export type PictureBody = Body & Pick<Shown, 'faces'>;

/** What an isometric picture shows: bodies where they stand, those that are new drawn strong and labelled. */
export type Picture = {
  readonly bodies: readonly PictureBody[];
  readonly strong: ReadonlySet<string>;
  /** what is written on or beside bodies; several that go as one share a label */
  readonly labels: readonly PictureLabel[];
  readonly arrows: readonly PathArrow[];
  /** the frame turned over for the reader */
  readonly lies: 'upright' | 'upside-down';
};

/** Length of an arrow on paper, how far off the body its tip stands, and how far back that is looked for; mm. */
const ARROW = { length: 14, off: 1.5, farthest: 30 };

/** A picture at a scale (10 for 1:10), its upper left corner anywhere: hidden faces are gone, not drawn over. */
export function isometric(picture: Picture, scale: number): Block {
  return drawn(picture, seenIn(picture), scale);
}

/** What is seen in a picture, before any scale. */
export type Sight = { readonly bodies: readonly PictureBody[]; readonly seen: readonly Seen[] };

/** The bodies as they lie before the reader, and what is seen of them. */
export function seenIn(picture: Picture): Sight {
  const bodies = lying(picture);
  return { bodies, seen: seenOf(bodies) };
}

/** The same where the picture adds bodies to one that is known and lies alike; null where it does not. */
export function seenAfter(
  before: { readonly picture: Picture; readonly sight: Sight },
  picture: Picture,
): Sight | null {
  if (before.picture.lies !== picture.lies) return null;
  const there = new Set(before.sight.bodies.map(({ id }) => id));
  const bodies = lying(picture);
  const joining = bodies.filter(({ id }) => !there.has(id));
  if (bodies.length - joining.length < there.size) return null;
  return { bodies, seen: seenJoined(before.sight.seen, before.sight.bodies, joining) };
}

function lying({ lies, bodies }: Picture): readonly PictureBody[] {
  return lies === 'upright' ? bodies : bodies.map(turnedOver);
}

/** The marks of a picture whose hidden faces are known. */
export function drawn(picture: Picture, { bodies, seen }: Sight, scale: number): Block {
  const paper = ([x, y]: Point): Spot => [x / scale, -y / scale];
  const shown = [...seen]
    .sort((a, b) => rank(picture, a) - rank(picture, b))
    .map((one) => areaMark(one, picture, paper));
  const areas = (id: string) => seen.filter((one) => one.id === id).map(({ area }) => onPaper(area, paper));
  const arrows = picture.arrows.flatMap((arrow) => arrowMarks(arrow, { bodies, picture, paper, areas }));
  const labels = picture.labels.map(({ text, ids }) => {
    const found = bodies.find(({ id }) => ids.includes(id));
    return { text, areas: ids.flatMap(areas), middle: found === undefined ? null : paper(flat(middleOf(found))) };
  });
  const all = [...shown, ...hiddenLines(picture, { bodies, seen }, paper), ...arrows];
  const bare = [...all, ...pieceLabels(labels, all)];
  const named = [...bare, ...frontMark(picture, { bodies, paper, drawn: bare })];
  return {
    marks: [...named, ...lyingNote(picture, extentOf(named))],
    views: [],
    dimensions: [],
  };
}

/** Less than this of what goes in is seen: its outline behind the others is dashed. */
const SHOWN = 0.1;

/** The covered outline of every move that is nearly all covered, dashed narrow (ISO 128-2, line type 02.1). */
function hiddenLines(
  { labels, strong }: Picture,
  { bodies, seen }: Sight,
  paper: (point: Point) => Spot,
): readonly Mark[] {
  return labels.flatMap(({ ids }) => {
    const going = bodies.filter(({ id }) => ids.includes(id) && strong.has(id));
    const shown = seen.filter(({ id }) => ids.includes(id));
    if (areaOf(shown.map((one) => one.area)) >= SHOWN * areaOf(going.flatMap(silhouette))) return [];
    return going
      .flatMap((one) =>
        hiddenEdges(
          one,
          shown.filter(({ id }) => id === one.id),
        ),
      )
      .map(([from, to]): Mark => ({ kind: 'line', from: paper(from), to: paper(to), pen: 'hidden', role: 'hidden' }));
  });
}

function areaOf(polygons: readonly Polygon[]): number {
  return polygons.reduce((sum, one) => sum + area(one), 0);
}

/** How far beyond the front its name is looked for at most, and in which steps; mm on paper. */
const FRONT = { farthest: 200, step: 2, room: 1 };

type Fronted = {
  readonly bodies: readonly Body[];
  readonly paper: (point: Point) => Spot;
  readonly drawn: readonly Mark[];
};

/** Which side is the bench's front: named beside it, turned over or not. */
function frontMark({ lies }: Picture, { bodies, paper, drawn: marks }: Fronted): readonly Mark[] {
  const { min, max } = boxRound(bodies);
  const upright = lies === 'upright';
  const way: Vector = [0, upright ? -1 : 1, 0];
  const [x, y] = paper(flat([(min[0] + max[0]) / 2, upright ? min[1] : max[1], upright ? min[2] : max[2]]));
  const [ux, uy] = onPaperWay(way, paper);
  const at = (far: number) =>
    lettering('bench’s front', [x + ux * far, y + uy * far + smallText / 2], { role: 'note', anchor: 'middle' });
  const others = taken({ lines: linesOf(marks), boxes: boxesOf(marks) });
  const areas = marks.flatMap((mark) => (mark.kind === 'polygon' ? [mark.rings] : []));
  for (let far = 6; far < FRONT.farthest; far += FRONT.step) {
    const mark = at(far);
    const box = padded(textBox(mark), FRONT.room);
    const middle: Spot = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
    const covered = areas.some(([outline = [], ...holes]) => holds({ outline, holes }, middle));
    if (!covered && isClear(box, others)) return [mark];
  }
  return [];
}

/** How the frame lies, over the picture when it is not on its feet. */
function lyingNote({ lies }: Picture, { x0, y0 }: Extent): readonly Mark[] {
  return lies === 'upright' ? [] : [lettering('The frame lies upside down.', [x0, y0 - 3], { role: 'note' })];
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

/** A body turned over about the bench's length, as its builders turn it; the same in every picture. */
const turnedOver = onceFor((one: PictureBody): PictureBody => {
  const over = ([x, y, z]: Vector): Vector => [x, 0 - y, 0 - z];
  const pieces = one.pieces.map((piece) => convex(piece.faces.map((face) => face.map(over))));
  const box = boxRound(pieces.map((piece) => ({ ...one, box: piece.box })));
  return { ...one, pieces, box, faces: one.faces.map((face) => turnedFace(face, over)) };
});

type Ground = {
  readonly bodies: readonly Body[];
  readonly picture: Picture;
  readonly paper: (point: Point) => Spot;
  /** what is seen of a body, on paper */
  readonly areas: (id: string) => readonly Polygon[];
};

/** An arrow that ends just off the face the body leads its tail from. */
function arrowMarks({ body, direction }: PathArrow, { bodies, picture, paper, areas }: Ground): readonly Mark[] {
  const one = bodies.find(({ id }) => id === body);
  if (one === undefined) return [];
  const [x, y, z] = direction;
  const way: Vector = picture.lies === 'upright' ? direction : [x, 0 - y, 0 - z];
  const { min, max } = one.box;
  const middle = middleOf(one);
  const half =
    Math.abs(way[0]) * (max[0] - min[0]) + Math.abs(way[1]) * (max[1] - min[1]) + Math.abs(way[2]) * (max[2] - min[2]);
  const tail = paper(flat(plus(middle, times(way, -half / 2))));
  const tip = offBody(tail, onPaperWay(way, paper), areas(body));
  const [ux, uy] = onPaperWay(way, paper);
  const from: Spot = [tip[0] - ux * ARROW.length, tip[1] - uy * ARROW.length];
  return [{ kind: 'line', from, to: tip, pen: 'edge', role: 'arrow' }, arrowhead(tip, from)];
}

function middleOf({ box: { min, max } }: Body): Vector {
  return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
}

/** Back along the way until nothing of the body is under the tip: the face a path comes from may be turned away. */
function offBody([x, y]: Spot, [ux, uy]: Spot, areas: readonly Polygon[]): Spot {
  const stops = Array.from({ length: ARROW.farthest }, (_, i): Spot => [x - ux * (i + 1), y - uy * (i + 1)]);
  const near: Spot = [x - ux * ARROW.off, y - uy * ARROW.off];
  if (!areas.some((area) => holds(area, near))) return near;
  const free = stops.find((spot) => !areas.some((area) => holds(area, spot)));
  return free === undefined ? near : [free[0] - ux * ARROW.off, free[1] - uy * ARROW.off];
}

function onPaperWay(way: Vector, paper: (point: Point) => Spot): Spot {
  const [x, y] = paper(flat(way));
  const size = Math.hypot(x, y) || 1;
  return [x / size, y / size];
}
