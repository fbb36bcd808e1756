import { viewChains } from '../bench-chains.ts';
import { extents, viewNamed } from '../bench-stage.ts';
import { headedBlock, labelled, sightMarks, sightOf } from '../bench-view.ts';
import { type Block, emptyBlock, joined } from '../block.ts';
import type { DrawingUnit } from '../drawing.ts';
import { saidLength } from '../figures.ts';
import { scaleText } from '../paper.ts';
import { cutBy, extentOfSeen, type Placed, type Seen, seen } from '../scene.ts';
import { type Bay, cutOver, gazeAcross, gazeOf } from './bay.ts';

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

type Stage = { readonly cut: readonly Seen[]; readonly beyond: readonly Seen[]; readonly stops: readonly number[] };

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
  const above = cutOver({ deck, gaze, at }, { x0: u0, x1: u1 });
  const roles = ['drawer-side', 'drawer-spacer', 'shelf-cleat'];
  const beyond = [...bay.own, ...bay.holders]
    .filter(({ part }) => roles.includes(part.role))
    .map((one) => seen(one, gaze))
    .filter(({ near }) => near <= at);
  const ends = [...cut, ...beyond].filter(({ role }) => role !== 'drawer-bottom').map(extentOfSeen);
  return { cut: [...cut, ...above], beyond, stops: ends.flatMap(({ low, high }) => [low[0], high[0]]) };
}

/** How long the slides are, which the box is as deep as. */
function depthWords({ own, holders }: Bay, unit: DrawingUnit): readonly string[] {
  const side = own.find(({ part }) => part.role === 'drawer-side');
  const spacer = holders.find(({ part }) => part.role === 'drawer-spacer');
  if (side === undefined || spacer === undefined) return [];
  const [deep, long] = [side, spacer].map(({ part }) => saidLength(part.blank.length, unit));
  return [`The box is as deep as its slides are long, ${deep}; spacers ${long} long, from the inside of the board.`];
}

/** The bay along its depth, cut in the middle: pull, face, box, slides' length and what is free behind. */
export function bayDepth(
  bay: Bay,
  ask: { readonly frame: readonly Placed[]; readonly deck: readonly Placed[]; readonly unit: DrawingUnit },
): (scale: number) => Block {
  const stage = stageOf(bay, ask);
  if (stage.cut.length === 0) return () => emptyBlock;
  const sight = sightOf({ pieces: stage.beyond, cut: stage.cut, dashed: ['drawer-spacer'] });
  const box = extents([...stage.cut, ...stage.beyond]);
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
      upright: { name: 'board', at: heights, side: 'left' },
    });
    const drawn = joined({ marks: sightMarks(view, sight), views: [view], dimensions: [] }, chains);
    const name = `Cut along the middle of the bay, the ${bay.side} at the left ${scaleText(scale)}`;
    return headedBlock(labelled(drawn, view, stage.cut), name, depthWords(bay, ask.unit));
  };
}
