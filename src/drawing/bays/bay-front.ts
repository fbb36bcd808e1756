import { SLIDE_TALL } from '../../core/benchwork/drawers/figures.ts';
import type { Polygon } from '../../core/geometry/shapes.ts';
import { extents, viewNamed } from '../bench-stage.ts';
import { chainBlock, headedBlock, sightMarks, sightOf } from '../bench-view.ts';
import { type Block, emptyBlock, joined } from '../block.ts';
import type { DrawingUnit } from '../drawing.ts';
import { saidLength } from '../figures.ts';
import type { Mark } from '../mark.ts';
import { modelLine, polygonMark, type Window } from '../outline.ts';
import { scaleText } from '../paper.ts';
import { cutBy, extentOfSeen, type Placed, type Seen, seen } from '../scene.ts';
import { paperX, paperY, type View } from '../view.ts';
import { type Bay, gazeOf } from './bay.ts';
import { type Height, heightBlock } from './bay-figures.ts';
import { bayLabels } from './bay-labels.ts';
import { BEYOND, cutAwayFor, deckMarks, deckOver, goesOn } from './deck-over.ts';

/** The middle of the slides: of the box's side, or null where there is none. */
export function slideMiddle({ own }: Pick<Bay, 'own'>): number | null {
  const side = own.find(({ part }) => part.role === 'drawer-side');
  if (side === undefined) return null;
  const z = [side.place.pose.origin[2], side.place.pose.origin[2] + side.part.blank.width];
  return ((z[0] ?? 0) + (z[1] ?? 0)) / 2;
}

/** Where along spacers and cleats the plane lies. */
const BEFORE_SCREW = 0.3;

type Stage = {
  readonly bay: Bay;
  readonly cut: readonly Seen[];
  readonly plane: Parameters<typeof deckOver>[0];
  readonly face: Window | null;
  readonly window: Window;
};

function windowOf(pieces: readonly Seen[]): Window {
  const { u0, u1, v0, v1 } = extents(pieces);
  return { x0: u0, x1: u1, y0: v0, y1: v1 };
}

/** What a plane through the spacers or cleats cuts, as far as the bay and its walls. */
function stageOf(bay: Bay, deck: readonly Placed[]): Stage {
  const gaze = gazeOf(bay);
  const [holder] = bay.holders.map((one) => seen(one, gaze));
  // beside their screws, which stand in the middle and at the ends
  const at = holder === undefined ? 0 : holder.near - BEFORE_SCREW * (holder.near - holder.far);
  const walls = bay.walls.map((one) => seen(one, gaze));
  const reach = windowOf(walls);
  const through = [...bay.walls, ...bay.holders, ...bay.own].map((one) => cutBy(one, gaze, at));
  const cut = through.filter((piece) => piece !== null);
  const face = bay.own.find(({ part }) => part.role === 'drawer-face');
  return {
    bay,
    cut,
    plane: { deck, gaze, at },
    face: face === undefined ? null : windowOf([seen(face, gaze)]),
    window: reach,
  };
}

function rectangleOf({ x0, x1, y0, y1 }: Window): Polygon {
  return {
    outline: [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ],
    holes: [],
  };
}

/** The board's edges, its opening and the face in it, all before the plane that is drawn. */
function beforeMarks(view: View, { bay, face, window }: Stage): readonly Mark[] {
  const edge = (at: number) =>
    modelLine(
      view,
      [
        [window.x0, at],
        [window.x1, at],
      ],
      { pen: 'hidden', role: 'hidden' },
    );
  return [
    edge(bay.bench.sideUnderside),
    edge(bay.bench.sideTop),
    polygonMark(view, rectangleOf(bay.opening), { pen: 'hidden', fill: 'none' }),
    ...(face === null ? [] : [polygonMark(view, rectangleOf(face), { pen: 'phantom', fill: 'none' })]),
  ];
}

/** Slides between spacers and box, and their centre line. */
function slideMarks(view: View, { bay, window }: Stage): readonly Mark[] {
  const middle = slideMiddle(bay);
  if (middle === null) return [];
  const gaze = gazeOf(bay);
  const inner = (pieces: readonly Placed[]) => windowOf(pieces.map((one) => seen(one, gaze)));
  const sides = inner(bay.own.filter(({ part }) => part.role === 'drawer-side'));
  const half = Math.min(SLIDE_TALL, sides.y1 - sides.y0) / 2;
  const [y0, y1] = [middle - half, middle + half];
  const strips: readonly Window[] = [
    { x0: bay.opening.x0, x1: sides.x0, y0, y1 },
    { x0: sides.x1, x1: bay.opening.x1, y0, y1 },
  ];
  return [
    ...strips.map((strip) => polygonMark(view, rectangleOf(strip), { pen: 'feature', fill: 'shade' })),
    modelLine(
      view,
      [
        [window.x0, middle],
        [window.x1, middle],
      ],
      { pen: 'centre', role: 'centre' },
    ),
  ];
}

const both = (low: number, high: number, name: string): readonly Height[] => [
  { at: low, name },
  { at: high, name },
];

/** What is measured up the left: the board, its opening and what is screwed to the walls; and up the right: what moves. */
function heightsOf({ bay, face, cut }: Stage): readonly [readonly Height[], readonly Height[]] {
  const of = (role: string) => windowOf(cut.filter((piece) => piece.role === role));
  const { sideUnderside, sideTop } = bay.bench;
  const frame = both(sideUnderside, sideTop, 'side');
  const opening = both(bay.opening.y0, bay.opening.y1, 'opening');
  if (bay.kind === 'shelf') {
    const [cleat, panel] = [of('shelf-cleat'), of('shelf')];
    const right = [{ at: sideUnderside, name: 'side' }, ...both(panel.y0, panel.y1, 'shelf')];
    return [[...frame, ...opening, ...both(cleat.y0, cleat.y1, 'cleat')], right];
  }
  const [spacer, box, bottom] = [of('drawer-spacer'), of('drawer-side'), of('drawer-bottom')];
  const slide = slideMiddle(bay);
  const left = [
    ...frame,
    ...opening,
    ...both(spacer.y0, spacer.y1, 'spacer'),
    ...(slide === null ? [] : [{ at: slide, name: 'middle of slide' }]),
  ];
  const right = [
    { at: sideUnderside, name: 'side' },
    ...(face === null ? [] : both(face.y0, face.y1, 'face')),
    ...both(box.y0, box.y1, 'box'),
    { at: bottom.y0, name: 'bottom' },
  ];
  return [left, right];
}

/** The bay from before its side, cut through spacers and box: heights from the frame's underside, gaps across. */
export function bayFront(
  bay: Bay,
  { deck, unit }: { readonly deck: readonly Placed[]; readonly unit: DrawingUnit },
): (scale: number) => Block {
  const stage = stageOf(bay, deck);
  if (stage.cut.length === 0) return () => emptyBlock;
  const sight = sightOf({ pieces: [], cut: stage.cut, dashed: [] });
  const over = deckOver(stage.plane, stage.window);
  const open = goesOn(stage.plane, stage.window);
  const box = extents([...stage.cut, ...over]);
  // a shelf lies loose between the walls: its play is told in words
  const stops = stage.cut
    .filter(({ role }) => role !== 'shelf' && role !== 'drawer-bottom')
    .map(extentOfSeen)
    .flatMap(({ low, high }) => [low[0], high[0]]);
  const [left, right] = heightsOf(stage);
  const datum = bay.bench.sideUnderside;
  return (scale) => {
    const view = viewNamed(`bay ${bay.id}`, scale);
    const above = deckMarks(view, stage.plane, stage.window);
    const marks = [...above, ...sightMarks(view, sight), ...beforeMarks(view, stage), ...slideMarks(view, stage)];
    const [low, high] = [paperY(view, Math.min(box.v0, datum)), paperY(view, box.v1)];
    const across = { view, unit, v: 8, opposite: 0 } as const;
    const faces = stage.face === null ? [] : [stage.face.x0, stage.face.x1];
    const ends = [paperX(view, box.u0) - (open.left ? BEYOND : 0), paperX(view, box.u1) + (open.right ? BEYOND : 0)];
    const drawn = joined(
      { marks, views: [view], dimensions: [] },
      heightBlock({ view, unit, rule: { side: 'left', base: ends[0] ?? 0 }, datum, heights: left }),
      heightBlock({ view, unit, rule: { side: 'right', base: ends[1] ?? 0 }, datum, heights: right }),
      chainBlock({ ...across, name: 'gaps', side: 'below', stops, base: low }),
      chainBlock({
        ...across,
        name: 'face',
        side: 'above',
        stops: [bay.opening.x0, bay.opening.x1, ...faces],
        base: high,
      }),
    );
    const name = `From before the ${bay.side}, cut through ${bay.kind === 'drawer' ? 'spacers' : 'cleats'} ${scaleText(scale)}`;
    const named = bayLabels(drawn, view, { pieces: [...stage.cut, ...over], led: [] });
    return headedBlock(named, name, frontWords(stage, unit));
  };
}

/** What is figured and what the lines stand for; how much play a shelf has, and what the deck is cut away for. */
function frontWords({ bay, cut, plane, window }: Stage, unit: DrawingUnit): readonly string[] {
  const names = cutAwayFor(plane, window);
  const away = names.length === 0 ? [] : [`The deck over it is cut away for ${names.join(' and ')}.`];
  const heights = 'Heights from the underside of the side. Dashed: the opening';
  if (bay.kind === 'drawer') {
    const below = 'Below, from either end: wall, spacer, slide, side of the box.';
    return [`${heights}; dots and dashes: the face; grey: slides.`, below, ...away];
  }
  const play = playOf(cut);
  const loose = play > 0 ? ` The shelf has ${saidLength(play, unit)} of play at each wall.` : '';
  return [`${heights}.${loose}`, ...away];
}

/** How far a shelf ends before the wall that its cleat is screwed to, mm. */
function playOf(cut: readonly Seen[]): number {
  const [panel, cleat] = ['shelf', 'shelf-cleat'].map((role) => cut.find((piece) => piece.role === role));
  if (panel === undefined || cleat === undefined) return 0;
  const [own, other] = [extentOfSeen(panel), extentOfSeen(cleat)];
  return Math.min(Math.abs(own.low[0] - other.low[0]), Math.abs(own.high[0] - other.high[0]));
}
