import { dot } from '../../core/geometry/vector.ts';
import type { Fastener } from '../../core/stock/fastener.ts';
import { viewChains } from '../bench-chains.ts';
import { extents, viewNamed } from '../bench-stage.ts';
import { headedBlock, sightMarks, sightOf } from '../bench-view.ts';
import { type Block, emptyBlock, joined } from '../block.ts';
import type { DrawingUnit } from '../drawing.ts';
import { lengthText, saidLength } from '../figures.ts';
import { scaleText } from '../paper.ts';
import { cutBy, extentOfSeen, type Placed, type Seen, seen } from '../scene.ts';
import { type Bay, gazeAcross, gazeOf } from './bay.ts';
import { bayLabels } from './bay-labels.ts';
import { cutAwayFor, deckMarks, deckOver } from './deck-over.ts';

/** What closes the bay behind: the frame's piece across it that is nearest to the spacers' far ends. */
function behindOf(bay: Bay, frame: readonly Placed[]): Placed | undefined {
  const gaze = gazeOf(bay);
  const holders = bay.holders.map((one) => seen(one, gaze));
  const end = Math.min(...holders.map(({ far }) => far));
  const [u0, u1] = [bay.opening.x0, bay.opening.x1];
  return frame
    .map((one) => ({ one, view: seen(one, gaze) }))
    .filter(({ view }) => {
      const { low, high } = extentOfSeen(view);
      return view.near <= end + 0.1 && low[0] < u0 && high[0] > u1;
    })
    .toSorted((a, b) => b.view.near - a.view.near)[0]?.one;
}

type Stage = {
  readonly cut: readonly Seen[];
  readonly beyond: readonly Seen[];
  readonly stops: readonly number[];
  readonly plane: Parameters<typeof deckOver>[0];
  readonly stretch: Parameters<typeof deckOver>[1];
};

function stageOf(
  bay: Bay,
  { frame, deck }: { readonly frame: readonly Placed[]; readonly deck: readonly Placed[] },
): Stage {
  const gaze = gazeAcross(bay);
  const before = gazeOf(bay);
  // the paper's right is into the bench, so the middle of the opening lies along the bay's own right
  const middle = (bay.opening.x0 + bay.opening.x1) / 2;
  const sign = gaze.toward[0] * before.right[0] + gaze.toward[1] * before.right[1];
  const at = sign * middle;
  const rear = behindOf(bay, frame);
  const through = [bay.board, ...bay.own, ...(rear === undefined ? [] : [rear])].map((one) => cutBy(one, gaze, at));
  const cut = through.filter((piece) => piece !== null);
  const { u0, u1 } = extents(cut);
  const roles = ['drawer-side', 'drawer-spacer', 'shelf-cleat'];
  const beyond = [...bay.own, ...bay.holders]
    .filter(({ part }) => roles.includes(part.role))
    .map((one) => seen(one, gaze))
    .filter(({ near }) => near <= at);
  // bottoms and shelves lie loose: their play is told in words
  const firm = [...cut, ...beyond].filter(({ role }) => role !== 'drawer-bottom' && role !== 'shelf');
  const ends = firm.map(extentOfSeen);
  const stops = ends.flatMap(({ low, high }) => [low[0], high[0]]);
  return { cut, beyond, stops, plane: { deck, gaze, at }, stretch: { x0: u0, x1: u1 } };
}

/** How long the slides are, which the box is as deep as, and where along them their screws are. */
function slideWords(bay: Bay, { unit, fasteners }: Ask): readonly string[] {
  const side = bay.own.find(({ part }) => part.role === 'drawer-side');
  const spacer = bay.holders.find(({ part }) => part.role === 'drawer-spacer');
  if (side === undefined || spacer === undefined) return [];
  const [deep, long] = [side, spacer].map(({ part }) => saidLength(part.blank.length, unit));
  const gaze = gazeAcross(bay);
  const front = extentOfSeen(seen(side, gaze)).low[0];
  const screws = fasteners
    .filter(({ through }) => through.length === 1 && through[0] === side.place.id)
    .map(({ head }) => lengthText(dot(head, gaze.right) - front, unit));
  const driven = `Their screws: ${screws.join('; ')} ${unit} from the front ends of both, on the middle of the slides.`;
  return [
    `The box is as deep as its slides are long, ${deep}; spacers ${long} long, from the inside of the board.`,
    ...(screws.length === 0 ? [] : [driven]),
  ];
}

/** What the deck over the bay is cut away for, where it is. */
function deckWords({ plane, stretch }: Stage): readonly string[] {
  const names = cutAwayFor(plane, stretch);
  return names.length === 0 ? [] : [`The deck over it is cut away for ${names.join(' and ')}.`];
}

type Ask = {
  readonly frame: readonly Placed[];
  readonly deck: readonly Placed[];
  readonly fasteners: readonly Fastener[];
  readonly unit: DrawingUnit;
};

/** How far off the heights stand where labels of face and pull come between; mm. */
const ROOM = 18;

/** The bay along its depth, cut in the middle: pull, face, box, slides' length and what is free behind. */
export function bayDepth(bay: Bay, ask: Ask): (scale: number) => Block {
  const stage = stageOf(bay, ask);
  if (stage.cut.length === 0) return () => emptyBlock;
  const sight = sightOf({ pieces: stage.beyond, cut: stage.cut, dashed: ['drawer-spacer'] });
  const over = deckOver(stage.plane, stage.stretch);
  const box = extents([...stage.cut, ...stage.beyond, ...over]);
  const face = bay.own.find(({ part }) => part.role === 'drawer-face');
  const gaze = gazeAcross(bay);
  const inHole =
    face === undefined ? [] : [extentOfSeen(seen(face, gaze))].flatMap(({ low, high }) => [low[1], high[1]]);
  const heights = [bay.bench.sideUnderside, bay.opening.y0, ...inHole, bay.opening.y1, bay.bench.sideTop];
  return (scale) => {
    const view = viewNamed(`depth ${bay.id}`, scale);
    const chains = viewChains({
      view,
      unit: ask.unit,
      box,
      along: { name: 'depths', at: stage.stops },
      upright: { name: 'board', at: heights, side: 'left', v: face === undefined ? 10 : ROOM },
    });
    const marks = [...deckMarks(view, stage.plane, stage.stretch), ...sightMarks(view, sight)];
    const drawn = joined({ marks, views: [view], dimensions: [] }, chains);
    const named = bayLabels(drawn, view, { pieces: [...stage.cut, ...over], led: ['drawer-face', 'drawer-pull'] });
    const name = `Cut along the middle of the bay, the ${bay.side} at the left ${scaleText(scale)}`;
    return headedBlock(named, name, [...slideWords(bay, ask), ...deckWords(stage)]);
  };
}
