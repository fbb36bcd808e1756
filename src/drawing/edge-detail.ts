import type { Point } from '../core/geometry/shapes.ts';
import type { EdgeSide, Feature } from '../core/stock/part.ts';
import { holdsFigure, type Wedge, wedgeRoom, withAngle } from './angle-figure.ts';
import { type Block, emptyBlock } from './block.ts';
import { beside, type DetailAsk, detailScale, titled } from './detail-frame.ts';
import { sizeText } from './figures.ts';
import type { Mark } from './mark.ts';
import { clippedOutline } from './outline.ts';
import { degrees } from './part-words.ts';
import { withRadius } from './radius-figure.ts';
import { lettering, smallText } from './text.ts';
import { onPaper, paperX, paperY, type View } from './view.ts';

type Mitre = Extract<Feature, { readonly kind: 'mitre' }>;
type Roundover = Extract<Feature, { readonly kind: 'roundover' }>;

/** Chords of a quarter of a circle. */
const CHORDS = 16;

/** An edge seen from its end, its face up: at the left of the paper for a left or bottom edge, else at the right. */
type Profile = {
  readonly ask: DetailAsk;
  readonly view: View;
  readonly way: 1 | -1;
  /** how much of the piece is shown, inwards from the edge, mm */
  readonly deep: number;
};

function wayOf(edge: EdgeSide): 1 | -1 {
  return edge === 'left' || edge === 'bottom' ? 1 : -1;
}

/** The profile's own points count inwards from the edge and up from the back. */
function laid({ way }: Profile, points: readonly Point[]): readonly Point[] {
  return points.map(([u, z]): Point => [way * u, z]);
}

function profileBlock(profile: Profile, points: readonly Point[]): Block {
  const { ask, view, way, deep } = profile;
  const { thickness } = ask.part.blank;
  const [x0, x1] = way > 0 ? [0, deep] : [-deep, 0];
  const window = { x0, x1, y0: 0, y1: thickness };
  const outline = laid(profile, points);
  const marks = clippedOutline(view, { outline, holes: [] }, { window, open: [way > 0 ? 'x1' : 'x0'] });
  return { marks: [...marks, ...sideWords(profile)], views: [view], dimensions: [] };
}

/** Which side is the face, beside the end that goes on. */
function sideWords({ ask, view, way, deep }: Profile): readonly Mark[] {
  const x = paperX(view, way * deep) + way * 2.5;
  const style = { role: 'label', anchor: way > 0 ? 'start' : 'end' } as const;
  return [lettering('face', [x, paperY(view, ask.part.blank.thickness) + smallText], style)];
}

function viewOf({ sizing }: DetailAsk, scale: number): View {
  return { name: `edge ${sizing.letter}`, scale, origin: [0, 0], breaks: [] };
}

function idsOf({ sizing }: DetailAsk): readonly string[] {
  return sizing.features.map(({ id }) => id);
}

/** The sharp corner of a mitre, on its long side, and the ways its face and its cut leave it. */
function wedgeOf({ view, way, ask }: Profile, { angle, long }: Mitre): Wedge {
  const at = onPaper(view, [0, long === 'back' ? 0 : ask.part.blank.thickness]);
  const inwards = way > 0 ? 0 : Math.PI;
  // on paper the cut turns from the back upwards, from the face downwards; mirrored for the other edges
  const turns = (long === 'back') === way > 0 ? -1 : 1;
  return turns < 0 ? { at, from: inwards - angle, to: inwards } : { at, from: inwards, to: inwards + angle };
}

/** A mitred edge from its end, with its angle to the face on its long side. */
function mitreDetail(ask: DetailAsk, mitre: Mitre): Block {
  const { thickness } = ask.part.blank;
  const inset = thickness / Math.tan(mitre.angle);
  const text = degrees(mitre.angle);
  const scale = detailScale({ width: inset, height: thickness }, ask);
  const within = thickness / scale;
  const reach = holdsFigure(text, mitre.angle, within) ? wedgeRoom(text, mitre.angle).reach + 3 : 0;
  const deep = Math.max(inset + beside * scale, reach * scale);
  const profile: Profile = { ask, view: viewOf(ask, scale), way: wayOf(mitre.edge), deep };
  const [low, high] = mitre.long === 'back' ? [0, inset] : [inset, 0];
  const shape = profileBlock(profile, [
    [low, 0],
    [deep, 0],
    [deep, thickness],
    [high, thickness],
  ]);
  const wedge = { ...wedgeOf(profile, mitre), within };
  return titled(withAngle(shape, wedge, { of: idsOf(ask), text, view: profile.view.name }), ask, scale);
}

/** A rounded edge from its end, with its radius. */
function roundoverDetail(ask: DetailAsk, { edge, side, radius }: Roundover): Block {
  const { thickness } = ask.part.blank;
  const scale = detailScale({ width: radius, height: thickness }, ask);
  const deep = radius + 1.5 * beside * scale;
  const profile: Profile = { ask, view: viewOf(ask, scale), way: wayOf(edge), deep };
  const flat = (z: number) => (side === 'face' ? z : thickness - z);
  const round = Array.from({ length: CHORDS + 1 }, (_, i): Point => {
    const turn = (Math.PI / 2) * (i / CHORDS);
    return [radius - radius * Math.sin(turn), flat(thickness - radius + radius * Math.cos(turn))];
  });
  const square: readonly Point[] = [
    [0, flat(0)],
    [deep, flat(0)],
    [deep, flat(thickness)],
  ];
  const shape = profileBlock(profile, [...square, ...round]);
  const spot = (point: Point) => laid(profile, [point]).map((one) => onPaper(profile.view, one))[0] ?? [0, 0];
  const half = radius * (1 - Math.SQRT1_2);
  const arc = { centre: spot([radius, flat(thickness - radius)]), on: spot([half, flat(thickness - half)]) };
  const fixes = { of: idsOf(ask), text: sizeText(radius, ask.unit), view: profile.view.name };
  return titled(withRadius(shape, arc, fixes), ask, scale);
}

/** A mitred or rounded edge, enlarged; empty for what is done elsewhere. */
export function edgeDetail(ask: DetailAsk): Block {
  const [first] = ask.sizing.features;
  if (first?.kind === 'mitre') return mitreDetail(ask, first);
  return first?.kind === 'roundover' ? roundoverDetail(ask, first) : emptyBlock;
}
