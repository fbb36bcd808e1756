import type { Bench } from '../core/benchwork/bench.ts';
import type { Notebook } from '../core/notebook.ts';
import { chainWithWhole, headedBlock, labelled, type Picture, pictureMarks } from './bench-view.ts';
import { type Block, emptyBlock, joined } from './block.ts';
import type { DrawingOptions } from './drawing.ts';
import { saidLength } from './figures.ts';
import type { Mark, Spot } from './mark.ts';
import { scales, scaleText } from './paper.ts';
import {
  cutBy,
  extentOfSeen,
  fromAbove,
  fromFront,
  fromLeft,
  fromRight,
  type Gaze,
  type Placed,
  placedParts,
  type Seen,
  seen,
} from './scene.ts';
import { fitsSheet } from './sheet.ts';
import { lettering, smallText } from './text.ts';
import { paperX, paperY, type View } from './view.ts';

export type BenchViewKind = 'plan' | 'deck' | 'front' | 'left' | 'section';

type BenchAsk = {
  readonly notebook: Notebook;
  readonly bench: Bench;
  readonly options: DrawingOptions;
  readonly scale: number;
};

type Extents = { readonly u0: number; readonly u1: number; readonly v0: number; readonly v1: number };

function piecesOf({ notebook, bench }: BenchAsk): readonly Placed[] {
  return placedParts(notebook.parts.filter((part) => part.bench === bench.id));
}

function viewNamed(name: string, scale: number): View {
  return { name, scale, origin: [0, 0], breaks: [] };
}

function extents(pieces: readonly Seen[]): Extents {
  const boxes = pieces.map(extentOfSeen);
  return {
    u0: Math.min(...boxes.map(({ low }) => low[0])),
    u1: Math.max(...boxes.map(({ high }) => high[0])),
    v0: Math.min(...boxes.map(({ low }) => low[1])),
    v1: Math.max(...boxes.map(({ high }) => high[1])),
  };
}

function isFrame({ role }: Seen): boolean {
  return role === 'side' || role === 'end' || role === 'strut';
}

/** Faces of the frame's pieces that stand across an axis: where a chain along it stops. */
function stopsOf(pieces: readonly Seen[], axis: 0 | 1): readonly number[] {
  return pieces.filter(isFrame).flatMap((piece) => {
    const { low, high } = extentOfSeen(piece);
    const other = axis === 0 ? 1 : 0;
    return high[axis] - low[axis] < high[other] - low[other] ? [low[axis], high[axis]] : [];
  });
}

/** The plane of the section: the middle of the widest bay between frame pieces across the length. */
export function sectionPlane(notebook: Notebook, bench: Bench): Plane {
  const plan = placedParts(notebook.parts.filter((part) => part.bench === bench.id)).map((one) => seen(one, fromAbove));
  const stops = stopsOf(plan, 0).toSorted((a, b) => a - b);
  const bays = stops.slice(1).map((to, i) => ({ from: stops[i] ?? 0, to }));
  const widest = bays.reduce((best, bay) => (bay.to - bay.from > best.to - best.from + 0.01 ? bay : best), {
    from: 0,
    to: 0,
  });
  if (widest.to <= widest.from) return { at: bench.length / 2, half: 0 };
  return { at: (widest.from + widest.to) / 2, half: (widest.to - widest.from) / 2 };
}

/** Where the section is cut, and half the bay it is cut in, mm. */
type Plane = { readonly at: number; readonly half: number };

/** The line of the cutting plane with its letter and the way it is looked at (ISO 128-3). */
function planeMarks(view: View, { at, half }: Plane, box: Extents): readonly Mark[] {
  const x = paperX(view, at);
  const ends = [paperY(view, box.v1) - 3.5, paperY(view, box.v0) + 3.5] as const;
  return [
    { kind: 'line', from: [x, ends[0]], to: [x, ends[1]], pen: 'centre', role: 'centre' },
    ...ends.flatMap((end, i): readonly Mark[] => {
      const inner = i === 0 ? end + 2.5 : end - 2.5;
      return [
        { kind: 'line', from: [x, inner], to: [x, end], pen: 'edge', role: 'symbol' },
        { kind: 'line', from: [x, end], to: [x - 4, end], pen: 'feature', role: 'symbol' },
        {
          kind: 'polygon',
          rings: [
            [
              [x - 4, end],
              [x - 2, end - 0.7],
              [x - 2, end + 0.7],
            ],
          ],
          fill: 'ink',
          pen: 'feature',
          role: 'symbol',
        },
        ...(i === 1 && half / view.scale < 3.5 ? [] : [letterA([x, i === 0 ? end - 1 : end + 1 + smallText])]),
      ];
    }),
  ];
}

function letterA(at: Spot): Mark {
  return lettering('A', at, { weight: 'bold', anchor: 'middle', role: 'label' });
}

function planBlock(ask: BenchAsk): Block {
  const { bench, notebook, options, scale } = ask;
  const view = viewNamed('plan', scale);
  const frame = piecesOf(ask).filter(({ part }) => part.role !== 'deck');
  const level = bench.sideTop - 1;
  const top = frame.map((one) => cutBy(one, fromAbove, level)).filter((piece) => piece !== null);
  const lower = frame.filter((one) => cutBy(one, fromAbove, level) === null).map((one) => seen(one, fromAbove));
  const pieces = [...lower.map((piece) => ({ ...piece, near: piece.near - 1e6 })), ...top];
  if (pieces.length === 0) return emptyBlock;
  const box = extents(pieces);
  const shape: Block = {
    marks: [
      ...pictureMarks({ view, pieces, cut: [], dashed: ['flange-strip'] }),
      ...planeMarks(view, sectionPlane(notebook, bench), box),
    ],
    views: [view],
    dimensions: [],
  };
  const base = { view, unit: options.unit, v: 10 };
  const dimensioned = joined(
    shape,
    chainWithWhole({
      ...base,
      name: 'bays along',
      v: 12,
      side: 'below',
      stops: [box.u0, box.u1, ...stopsOf(top, 0)],
      base: paperY(view, box.v0),
      opposite: paperY(view, box.v1),
    }),
    chainWithWhole({
      ...base,
      name: 'bays across',
      side: 'left',
      stops: [box.v0, box.v1, ...stopsOf(top, 1)],
      base: paperX(view, box.u0),
      opposite: paperX(view, box.u1),
    }),
  );
  return headedBlock(
    labelled(dimensioned, view, [...top, ...lower]),
    `From above, deck left off ${scaleText(scale)}`,
    [],
  );
}

/** The deck from above with what bears it dashed; its figures count from the frame's outside. */
function deckBlock(ask: BenchAsk): Block {
  const { notebook, bench, options, scale } = ask;
  const view = viewNamed('deck', scale);
  const placed = piecesOf(ask);
  const deck = placed.filter(({ part }) => part.role === 'deck').map((one) => seen(one, fromAbove));
  const frame = placed.map((one) => seen(one, fromAbove)).filter(isFrame);
  if (deck.length === 0 || frame.length === 0) return emptyBlock;
  const [box, inner] = [extents([...deck, ...frame]), extents(frame)];
  const marks = pictureMarks({ view, pieces: [...frame, ...deck], cut: [], dashed: ['side', 'end', 'strut'] });
  const ends = deck.map(extentOfSeen);
  const base = { view, unit: options.unit, v: 10 };
  const xs = [inner.u0, inner.u1, ...ends.flatMap(({ low, high }) => [low[0], high[0]])];
  const ys = [inner.v0, inner.v1, ...ends.flatMap(({ low, high }) => [low[1], high[1]])];
  const dimensioned = joined(
    { marks, views: [view], dimensions: [] },
    chainWithWhole({
      ...base,
      name: 'deck along',
      side: 'below',
      stops: xs,
      base: paperY(view, box.v0),
      opposite: paperY(view, box.v1),
    }),
    chainWithWhole({
      ...base,
      name: 'deck across',
      side: 'left',
      stops: ys,
      base: paperX(view, box.u0),
      opposite: paperX(view, box.u1),
    }),
  );
  return headedBlock(
    labelled(dimensioned, view, deck),
    `Deck from above ${scaleText(scale)}`,
    seamNotes(notebook, bench, options),
  );
}

function seamNotes(notebook: Notebook, bench: Bench, { unit }: DrawingOptions): readonly string[] {
  const labelOf = (id: string) =>
    notebook.parts.flatMap(({ places }) => places).find((place) => place.id === id)?.label ?? id;
  return notebook.seams
    .filter((seam) => seam.bench === bench.id)
    .map(
      ({ on, bearing: [a, b] }) => `Seam on ${labelOf(on)}, bearing ${saidLength(a, unit)} and ${saidLength(b, unit)}.`,
    );
}

const gazes: Readonly<Record<'front' | 'left', Gaze>> = { front: fromFront, left: fromLeft };

function elevationBlock(ask: BenchAsk, side: 'front' | 'left'): Block {
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
  const shown = pieces.filter((piece) => piece.near > nearest - 60 && (isFrame(piece) || piece.role === 'deck'));
  const name = side === 'front' ? 'From the front' : 'From the left end';
  return headedBlock(labelled(dimensioned, view, shown), `${name} ${scaleText(scale)}`, [heightNote(ask)]);
}

function heightNote({ bench, options }: BenchAsk): string {
  return `The deck's top is ${saidLength(bench.deckTop, options.unit)} above the floor.`;
}

function sectionBlock(ask: BenchAsk): Block {
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

function blockOf(ask: BenchAsk, kind: BenchViewKind): Block {
  if (kind === 'plan') return planBlock(ask);
  if (kind === 'deck') return deckBlock(ask);
  return kind === 'section' ? sectionBlock(ask) : elevationBlock(ask, kind);
}

export type BenchLayout = { readonly blocks: readonly Block[]; readonly scale: number };

/** One view of a bench at the largest scale that fits the paper. */
export function benchLayout(
  notebook: Notebook,
  bench: Bench,
  ask: { readonly kind: BenchViewKind; readonly options: DrawingOptions },
): BenchLayout {
  for (const scale of scales.filter((one) => one >= 1)) {
    const block = blockOf({ notebook, bench, options: ask.options, scale }, ask.kind);
    if (fitsSheet(block, ask.options.paper)) return { blocks: [block], scale };
  }
  return { blocks: [blockOf({ notebook, bench, options: ask.options, scale: 100 }, ask.kind)], scale: 100 };
}
