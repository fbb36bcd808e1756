import { type BenchAsk, extents, isFrame, piecesOf, sectionPlane, viewNamed } from './bench-stage.ts';
import { chainWithWhole, headedBlock, labelled, type Picture, pictureMarks } from './bench-view.ts';
import { type Block, emptyBlock, joined } from './block.ts';
import { saidLength } from './figures.ts';
import { scaleText } from './paper.ts';
import { cutBy, extentOfSeen, fromFront, fromLeft, fromRight, type Gaze, type Seen, seen } from './scene.ts';
import { paperX, paperY } from './view.ts';

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
  const base = { view, unit: options.unit };
  const heights = [bench.sideUnderside, bench.sideTop, box.v1, box.v0];
  const dimensioned = joined(
    shape,
    chainWithWhole({
      ...base,
      name: 'along',
      side: 'below',
      stops: [box.u0, box.u1, frame.u0, frame.u1],
      base: paperY(view, box.v0),
      opposite: paperY(view, box.v1),
      v: 10,
    }),
    chainWithWhole({
      ...base,
      name: 'heights',
      side: 'right',
      stops: heights,
      base: paperX(view, box.u1),
      opposite: paperX(view, box.u0),
      v: 10,
    }),
  );
  const nearest = Math.max(...pieces.map(({ near }) => near));
  const isShown = ({ near, role }: Seen) =>
    near > nearest - 1 || role === 'deck' || (role === 'strut' && near > nearest - 60);
  const shown = pieces.filter(isShown);
  const name = side === 'front' ? 'From the front' : 'From the left end';
  return headedBlock(labelled(dimensioned, view, shown), `${name} ${scaleText(scale)}`, [heightNote(ask)]);
}

function heightNote({ bench, options }: BenchAsk): string {
  return `The deck's top is ${saidLength(bench.deckTop, options.unit)} above the floor.`;
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
  const base = { view, unit: options.unit };
  const across = cut.filter(isFrame).flatMap((piece) => {
    const { low, high } = extentOfSeen(piece);
    return [low[0], high[0]];
  });
  const heights = [bench.sideUnderside, bench.strutUnderside, bench.sideTop, box.v1, box.v0];
  const strips = cut
    .filter(({ role }) => role === 'flange-strip')
    .flatMap((piece) => {
      const { low, high } = extentOfSeen(piece);
      return [low[1], high[1]];
    });
  const dimensioned = joined(
    shape,
    chainWithWhole({
      ...base,
      name: 'across',
      side: 'below',
      stops: [box.u0, box.u1, ...across],
      base: paperY(view, box.v0),
      opposite: paperY(view, box.v1),
      v: 10,
    }),
    chainWithWhole({
      ...base,
      name: 'heights',
      side: 'right',
      stops: [...heights, ...strips],
      base: paperX(view, box.u1),
      opposite: paperX(view, box.u0),
      v: 10,
    }),
  );
  const nearest = beyond.reduce((best, piece) => Math.max(best, piece.near), Number.NEGATIVE_INFINITY);
  const shown = [...cut, ...beyond.filter((piece) => piece.near > nearest - 1)];
  return headedBlock(labelled(dimensioned, view, shown), `Section A-A, towards the left end ${scaleText(scale)}`, [
    `Cut ${saidLength(at, options.unit)} from the left end of the frame.`,
    heightNote(ask),
  ]);
}
