import { viewChains } from './bench-chains.ts';
import { type BenchAsk, type Extents, extents, isFrame, piecesOf, sectionPlane, viewNamed } from './bench-stage.ts';
import { headedBlock, labelled, type Picture, pictureMarks } from './bench-view.ts';
import { type Block, emptyBlock, joined } from './block.ts';
import { saidLength } from './figures.ts';
import { scaleText } from './paper.ts';
import { cutBy, extentOfSeen, fromFront, fromLeft, fromRight, type Gaze, type Seen, seen } from './scene.ts';

const gazes: Readonly<Record<'front' | 'left', Gaze>> = { front: fromFront, left: fromLeft };

export function elevationBlock(ask: BenchAsk, side: 'front' | 'left'): Block {
  const { bench, options, scale } = ask;
  const view = viewNamed(side, scale);
  const gaze = gazes[side];
  const pieces = piecesOf(ask).map((one) => seen(one, gaze));
  if (pieces.length === 0) return emptyBlock;
  const picture: Picture = { view, pieces, cut: [], dashed: ['strut'] };
  const shape: Block = { marks: pictureMarks(picture), views: [view], dimensions: [] };
  const box = extents(pieces);
  const frame = extents(pieces.filter(isFrame));
  const chains = viewChains({
    view,
    unit: options.unit,
    box,
    along: { name: 'along', at: [box.u0, box.u1, frame.u0, frame.u1] },
    upright: { name: 'heights', at: [bench.sideUnderside, bench.sideTop, box.v1, box.v0], side: 'right' },
  });
  const nearest = Math.max(...pieces.filter(isFrame).map(({ near }) => near));
  const isShown = ({ near, role }: Seen) =>
    near > nearest - 1 || role === 'deck' || (role === 'strut' && near > nearest - 60);
  const shown = pieces.filter(isShown);
  const name = side === 'front' ? 'From the front' : 'From the left end';
  return headedBlock(labelled(joined(shape, chains), view, shown), `${name} ${scaleText(scale)}`, [heightNote(ask)]);
}

function heightNote({ bench, options }: BenchAsk): string {
  return `The deck's top is ${saidLength(bench.deckTop, options.unit)} above the floor.`;
}

type Chains = Pick<Parameters<typeof viewChains>[0], 'along' | 'upright'>;

/** Where the section's chains stop: faces of what is cut, and the heights of frame, strips and deck. */
function sectionStops({ bench }: BenchAsk, cut: readonly Seen[], box: Extents): Chains {
  const ends = (pieces: readonly Seen[], axis: 0 | 1) =>
    pieces.map(extentOfSeen).flatMap(({ low, high }) => [low[axis], high[axis]]);
  const strips = cut.filter(({ role }) => role === 'flange-strip');
  const heights = [bench.sideUnderside, bench.strutUnderside, bench.sideTop, box.v1, box.v0];
  return {
    along: { name: 'across', at: [box.u0, box.u1, ...ends(cut.filter(isFrame), 0)] },
    upright: { name: 'heights', at: [...heights, ...ends(strips, 1)], side: 'right' },
  };
}

export function sectionBlock(ask: BenchAsk): Block {
  const { notebook, bench, options, scale } = ask;
  const view = viewNamed('section', scale);
  const { at } = sectionPlane(notebook, bench);
  const placed = piecesOf(ask);
  const cut = placed.map((one) => cutBy(one, fromRight, at)).filter((piece) => piece !== null);
  const beyond = placed.map((one) => seen(one, fromRight)).filter((piece) => piece.near <= at);
  if (cut.length + beyond.length === 0) return emptyBlock;
  const shape: Block = {
    marks: pictureMarks({ view, pieces: beyond, cut, dashed: [] }),
    views: [view],
    dimensions: [],
  };
  const box = extents([...cut, ...beyond]);
  const chains = viewChains({ view, unit: options.unit, box, ...sectionStops(ask, cut, box) });
  const nearest = beyond.reduce((best, piece) => Math.max(best, piece.near), Number.NEGATIVE_INFINITY);
  const shown = [...cut, ...beyond.filter((piece) => piece.near > nearest - 1)];
  return headedBlock(
    labelled(joined(shape, chains), view, shown),
    `Section A-A, towards the left end ${scaleText(scale)}`,
    [`Cut ${saidLength(at, options.unit)} from the left end of the frame.`, heightNote(ask)],
  );
}
