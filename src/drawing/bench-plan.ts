import type { Bench } from '../core/benchwork/bench.ts';
import { badged, badgesOf, badgeWords } from './badges.ts';
import { viewChains } from './bench-chains.ts';
import {
  type BenchAsk,
  type Extents,
  extents,
  isFrame,
  type Plane,
  piecesOf,
  type Scalable,
  sectionPlane,
  stopsOf,
  viewNamed,
} from './bench-stage.ts';
import { headedBlock, labelled, showing, sightMarks, sightOf } from './bench-view.ts';
import { emptyBlock, joined } from './block.ts';
import type { DrawingBook } from './book.ts';
import type { DrawingOptions } from './drawing.ts';
import { saidLength } from './figures.ts';
import type { Mark, Spot } from './mark.ts';
import { scaleText } from './paper.ts';
import { cutBy, extentOfSeen, fromAbove, seen } from './scene.ts';
import { lettering, smallText } from './text.ts';
import { paperX, paperY, type View } from './view.ts';

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

export function planView(ask: BenchAsk): Scalable {
  const { bench, notebook, options } = ask;
  const frame = piecesOf(ask).filter(({ part }) => part.role !== 'deck');
  const level = bench.sideTop - 1;
  const top = frame.map((one) => cutBy(one, fromAbove, level)).filter((piece) => piece !== null);
  const lower = frame.filter((one) => cutBy(one, fromAbove, level) === null).map((one) => seen(one, fromAbove));
  const pieces = [...lower.map((piece) => ({ ...piece, near: piece.near - 1e6 })), ...top];
  if (pieces.length === 0) return () => emptyBlock;
  const box = extents(pieces);
  const outside = extents(pieces.some(isFrame) ? pieces.filter(isFrame) : pieces);
  const sight = sightOf({ pieces, cut: [], dashed: ['flange-strip'] });
  const plane = sectionPlane(notebook, bench);
  const shown = showing(pieces, ['flange-strip']);
  const badges = badgesOf(notebook);
  return (scale) => {
    const view = viewNamed('plan', scale);
    const marks = [...sightMarks(view, sight), ...planeMarks(view, plane, box)];
    const chains = viewChains({
      view,
      unit: options.unit,
      box,
      along: { name: 'bays along', at: [outside.u0, outside.u1, ...stopsOf(top, 0)], v: 12 },
      upright: { name: 'bays across', at: [outside.v0, outside.v1, ...stopsOf(top, 1)], side: 'left' },
    });
    const drawn = joined({ marks, views: [view], dimensions: [] }, chains);
    const named = badged(labelled(drawn, view, shown), shown, badges);
    const name = `From above, deck left off ${scaleText(scale)}`;
    return headedBlock(named, { name, beside: badgeWords(shown, badges) }, []);
  };
}

/** The deck from above with what bears it dashed; its figures count from the frame's outside. */
export function deckView(ask: BenchAsk): Scalable {
  const { notebook, bench, options } = ask;
  const placed = piecesOf(ask);
  const deck = placed.filter(({ part }) => part.role === 'deck').map((one) => seen(one, fromAbove));
  const frame = placed.map((one) => seen(one, fromAbove)).filter(isFrame);
  if (deck.length === 0 || frame.length === 0) return () => emptyBlock;
  const [box, inner] = [extents([...deck, ...frame]), extents(frame)];
  const sight = sightOf({ pieces: [...frame, ...deck], cut: [], dashed: ['side', 'end', 'strut'] });
  const badges = badgesOf(notebook);
  const ends = deck.map(extentOfSeen);
  const xs = [inner.u0, inner.u1, ...ends.flatMap(({ low, high }) => [low[0], high[0]])];
  const ys = [inner.v0, inner.v1, ...ends.flatMap(({ low, high }) => [low[1], high[1]])];
  return (scale) => {
    const view = viewNamed('deck', scale);
    const chains = viewChains({
      view,
      unit: options.unit,
      box,
      along: { name: 'deck along', at: xs },
      upright: { name: 'deck across', at: ys, side: 'left' },
    });
    const drawn = joined({ marks: sightMarks(view, sight), views: [view], dimensions: [] }, chains);
    const name = `Deck from above ${scaleText(scale)}`;
    const heading = { name, beside: badgeWords(deck, badges) };
    const named = badged(labelled(drawn, view, deck), deck, badges);
    return headedBlock(named, heading, seamNotes(notebook, bench, options));
  };
}

function seamNotes(notebook: DrawingBook, bench: Bench, { unit }: DrawingOptions): readonly string[] {
  const labelOf = (id: string) =>
    notebook.parts.flatMap(({ places }) => places).find((place) => place.id === id)?.label ?? id;
  return notebook.seams
    .filter((seam) => seam.bench === bench.id)
    .map(
      ({ on, bearing: [a, b] }) => `Seam on ${labelOf(on)}, bearing ${saidLength(a, unit)} and ${saidLength(b, unit)}.`,
    );
}
