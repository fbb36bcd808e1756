import type { Point, Polygon } from '../../core/geometry/shapes.ts';
import { clipped, mapped } from '../../core/scenery/clip.ts';
import type { Region } from '../../core/scenery/land.ts';
import type { BuiltLayer } from '../../core/scenery/model.ts';
import { sitesOf, toBench } from '../../core/scenery/site.ts';
import type { MatingMark, Part } from '../../core/stock/part.ts';
import { viewChains } from '../bench-chains.ts';
import { headedBlock } from '../bench-view.ts';
import { type Block, extentOf, joined } from '../block.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingOptions, DrawingUnit } from '../drawing.ts';
import { apartText, lengthText, saidLength } from '../figures.ts';
import { boxesOf, labelAll, linesOf } from '../labels.ts';
import type { Mark } from '../mark.ts';
import { noteBlocks } from '../notes.ts';
import { scaleText } from '../paper.ts';
import { outlineOf } from '../scene.ts';
import { onPaper, type View } from '../view.ts';
import { areaMark, type LandLayout, largest, loopMark } from './land-stage.ts';
import { cornerNotes, gridMarks, offsetNotes } from './template-grid.ts';

/** A layer's template: cut on the full line, carve down to the dashed one, pin through the crosses. */
export function layerLayout(book: DrawingBook, part: Part, options: DrawingOptions): LandLayout {
  const layer = book.scenery?.layers.find(({ pieces }) => pieces.some((piece) => piece.part === part.id)) ?? null;
  const { block, scale } = largest((at) => templateBlock({ book, part, layer, options, scale: at }), options, {
    width: part.blank.length,
    height: part.blank.width,
  });
  const gridded = { shape: outlineOf(part), unit: options.unit };
  const table = noteBlocks(
    'Offsets, from the lower left corner: along, then foam up from and to',
    offsetNotes(gridded),
  );
  const corners = noteBlocks('Lowest, highest and sharp corners', cornerNotes(gridded));
  const notes = noteBlocks('Pins, from the lower left corner', pinNotes(part, layer, options.unit));
  return {
    blocks: [block, ...table, ...corners, ...(part.places[0]?.marks.length === 0 ? [] : notes)],
    scale,
    desc: layerWords(part, layer, options.unit),
  };
}

/** Half the size of a pin's cross, mm. */
const PIN = 2;

type TemplateAsk = {
  readonly book: DrawingBook;
  readonly part: Part;
  readonly layer: BuiltLayer | null;
  readonly options: DrawingOptions;
  readonly scale: number;
};

function templateBlock(ask: TemplateAsk): Block {
  const { part, layer, options, scale } = ask;
  const view: View = { name: part.id, scale, origin: [0, 0], breaks: [] };
  const shape = outlineOf(part);
  const pins = part.places[0]?.marks ?? [];
  const marks: readonly Mark[] = [
    areaMark(view, shape, { pen: 'edge', fill: 'wood' }),
    ...gridMarks(view, { shape, unit: options.unit }),
    ...carving(ask, shape).flatMap(({ outline, holes }) =>
      [outline, ...holes].map((loop) => loopMark(view, loop, { pen: 'hidden', role: 'hidden' })),
    ),
    ...tunnelled(ask, shape).flatMap(({ outline }) => [loopMark(view, outline, { pen: 'phantom', role: 'hidden' })]),
    ...pins.flatMap(({ at }) => pinMarks(view, at)),
  ];
  const named = [...marks, ...pinNames(view, pins, marks)];
  const { length, width } = part.blank;
  const chains = viewChains({
    view,
    unit: options.unit,
    print: apartText,
    box: { u0: 0, u1: length, v0: 0, v1: width },
    along: { name: `${part.id} along`, at: [0, length] },
    upright: { name: `${part.id} across`, at: [0, width], side: 'left' },
  });
  const heights =
    layer === null
      ? []
      : [
          `${saidLength(layer.from, options.unit)} to ${saidLength(layer.to, options.unit)} over the deck. ${cutWords(ask, shape)}`,
          ...(tunnelled(ask, shape).length === 0
            ? []
            : partlyTaken(layer).map((room) => roomWords(room, options.unit))),
        ];
  return headedBlock(
    joined({ marks: named, views: [view], dimensions: [] }, chains),
    `Layer ${part.label} ${scaleText(scale)}`,
    [...heights, datumWords(ask)],
  );
}

/** Where the piece's datum lies on its bench. */
function datumWords({ book, part, options: { unit } }: TemplateAsk): string {
  const [x, y] = part.places[0]?.pose.origin ?? [0, 0];
  const bench = book.benches.length > 1 ? `bench ${part.bench}` : 'the bench';
  return `Lower left corner (0, 0): ${saidLength(x, unit)} from the left end and ${saidLength(y, unit)} from the front of ${bench}.`;
}

/** What is done at the lines of this piece; only a piece with a dashed line speaks of one. */
function cutWords(ask: TemplateAsk, shape: Polygon): string {
  if (carving(ask, shape).length > 0)
    return 'Cut on the full line; carve its top edge to the dashed one, the outline of the layer above.';
  return 'Cut on the full line. Nothing lies on it: carve it to the ground of the sections.';
}

/** Where the top edge is carved to, as far as it lies on this piece; in the part's own coordinates. */
function carving(ask: TemplateAsk, shape: Polygon): readonly Polygon[] {
  return onPiece(ask, shape, ask.layer?.carveTo ?? []);
}

/** Where a tunnel takes some of this piece's top or underside. */
function tunnelled(ask: TemplateAsk, shape: Polygon): readonly Polygon[] {
  const loops = partlyTaken(ask.layer).map(({ loop }) => ({ outline: loop, holes: [] }));
  return onPiece(ask, shape, loops);
}

function partlyTaken(layer: BuiltLayer | null) {
  return (layer?.room ?? []).filter(({ takes }) => takes !== 'all');
}

/** What of a region lies on a piece, in the part's own coordinates. */
function onPiece({ book, part }: TemplateAsk, shape: Polygon, region: Region): readonly Polygon[] {
  const site = sitesOf(book.benches).find(({ bench }) => bench.id === part.bench);
  const origin = part.places[0]?.pose.origin;
  if (site === undefined || origin === undefined) return [];
  const local = (point: Point): Point => {
    const [x, y] = toBench(site.pose, point);
    return [x - origin[0], y - origin[1]];
  };
  return clipped(mapped(region, local), shape.outline);
}

function roomWords({ tunnel, takes, deep }: BuiltLayer['room'][number], unit: DrawingUnit): string {
  const side = takes === 'top' ? 'top' : 'underside';
  return `Between the long dashes carve ${saidLength(deep, unit)} off the ${side} for ${tunnel}.`;
}

/** A cross where a pin goes. */
function pinMarks(view: View, at: Point): readonly Mark[] {
  const [x, y] = onPaper(view, at);
  return [
    { kind: 'line', from: [x - PIN, y], to: [x + PIN, y], pen: 'feature', role: 'symbol' },
    { kind: 'line', from: [x, y - PIN], to: [x, y + PIN], pen: 'feature', role: 'symbol' },
  ];
}

/** The pins' names, clear of all lines. */
function pinNames(view: View, pins: readonly MatingMark[], marks: readonly Mark[]): readonly Mark[] {
  const labels = pins.map(({ text, at }) => {
    const [x, y] = onPaper(view, at);
    return { text, box: { x0: x - PIN, x1: x + PIN, y0: y - PIN, y1: y + PIN } };
  });
  return labelAll(labels, { lines: linesOf(marks), boxes: boxesOf(marks) }, [extentOf(marks)]);
}

function pinNotes(part: Part, layer: BuiltLayer | null, unit: DrawingUnit) {
  const toDeck = (id: string) => layer?.marks.some((mark) => mark.id === id && mark.between[0] === 0) === true;
  const mate = ({ text, side }: MatingMark) => (toDeck(text) ? 'deck' : `layer ${side === 'face' ? 'above' : 'below'}`);
  return (part.places[0]?.marks ?? []).map((mark) => ({
    letter: mark.text,
    words: `${lengthText(mark.at[0], unit)} along, ${lengthText(mark.at[1], unit)} up, to the ${mate(mark)}`,
    dimensions: [],
  }));
}

function layerWords(part: Part, layer: BuiltLayer | null, unit: DrawingUnit): string {
  const { length, width } = part.blank;
  const level =
    layer === null ? '' : `, from ${saidLength(layer.from, unit)} to ${saidLength(layer.to, unit)} over the deck`;
  return `Template of layer ${part.label}${level}: ${saidLength(length, unit)} by ${saidLength(width, unit)} of ${part.stock}. Pins join it to its neighbours.`;
}
