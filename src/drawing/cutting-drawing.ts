import type { Area, Cut, CutSheet } from '../core/cutting/job.ts';
import { chainWithWhole, headedBlock } from './bench-view.ts';
import { type Block, emptyBlock, joined, markExtent } from './block.ts';
import type { DrawingBook } from './book.ts';
import { cutBlocks, cuttingWords, smallParts } from './cutting-notes.ts';
import {
  boxOf,
  offcutMarks,
  offcutWords,
  partMark,
  partWordMarks,
  ringOf,
  type SheetAsk,
  wasteMarks,
} from './cutting-pieces.ts';
import type { DrawingOptions } from './drawing.ts';
import { boxesOf, isFree, padded, type Taken, taken } from './labels.ts';
import type { Mark, Spot } from './mark.ts';
import { scaleText } from './paper.ts';
import { firstFitting, fitsSheet, possibleScales } from './sheet.ts';
import { lettering, smallText, textWidth } from './text.ts';
import { paperX, paperY, type View } from './view.ts';

function grainMarks(view: View, sheet: CutSheet): readonly Mark[] {
  const [x0, x1, y] = [paperX(view, sheet.length) - 42, paperX(view, sheet.length) - 18, paperY(view, sheet.width) - 4];
  return [
    { kind: 'line', from: [x0, y], to: [x1, y], pen: 'feature', role: 'symbol' },
    {
      kind: 'polyline',
      points: [
        [x0 + 2.2, y - 1.1],
        [x0, y],
        [x0 + 2.2, y + 1.1],
      ],
      pen: 'feature',
      role: 'symbol',
    },
    {
      kind: 'polyline',
      points: [
        [x1 - 2.2, y - 1.1],
        [x1, y],
        [x1 - 2.2, y + 1.1],
      ],
      pen: 'feature',
      role: 'symbol',
    },
    lettering('grain', [x1 + 2, y + smallText / 2], { role: 'label' }),
  ];
}

/** Where along its kerf a cut's number may stand, the far end first. */
const SHARES: readonly number[] = [0.98, ...Array.from({ length: 19 }, (_, i) => 0.95 - 0.05 * i), 0.02];

/** A cut's number in a circle on its kerf, where there is room for it. */
function cutNumber(view: View, cut: Cut, obstacles: Taken): readonly Mark[] {
  const box = boxOf(view, cut.kerf);
  const text = String(cut.number);
  const radius = Math.max(2.2, textWidth(text, smallText) / 2 + 0.9);
  const upright = box.y1 - box.y0 > box.x1 - box.x0;
  const spots = SHARES.map(
    (share): Spot =>
      upright
        ? [(box.x0 + box.x1) / 2, box.y0 + (box.y1 - box.y0) * (1 - share)]
        : [box.x0 + (box.x1 - box.x0) * share, (box.y0 + box.y1) / 2],
  );
  for (const [x, y] of spots) {
    const disc: Mark = { kind: 'circle', centre: [x, y], radius, fill: 'paper', pen: 'dimension', role: 'label' };
    const figure = lettering(text, [x, y + smallText / 2], { anchor: 'middle', role: 'figure' });
    const around = { x0: x - radius, x1: x + radius, y0: y - radius, y1: y + radius };
    const clear = !obstacles.boxes.some(
      (other) => other.x0 < around.x1 && around.x0 < other.x1 && other.y0 < around.y1 && around.y0 < other.y1,
    );
    if (clear && isFree(figure, obstacles)) return [disc, figure];
  }
  return [];
}

function numbered(view: View, sheet: CutSheet, marks: readonly Mark[]): readonly Mark[] {
  const lines = marks.filter(({ role }) => role === 'extension').map((mark) => padded(markExtent(mark), 0.3));
  const found: Mark[] = [];
  for (const cut of sheet.cuts) {
    found.push(...cutNumber(view, cut, taken({ lines: [], boxes: [...lines, ...boxesOf([...marks, ...found])] })));
  }
  return found;
}

/** A sheet drawn, and the numbers of the cuts that found room on it. */
type Drawn = { readonly block: Block; readonly shown: ReadonlySet<string> };

function drawnSheet(ask: SheetAsk): Drawn {
  const { sheet, options, scale } = ask;
  const view: View = { name: 'sheet', scale, origin: [0, 0], breaks: [] };
  const whole: Area = { x: 0, y: 0, length: sheet.length, width: sheet.width };
  const words = sheet.parts.flatMap((place) => partWordMarks(ask, view, place));
  const marks: readonly Mark[] = [
    { kind: 'polygon', rings: [ringOf(boxOf(view, whole))], fill: 'shade', pen: 'edge', role: 'outline' },
    ...sheet.waste.flatMap((area) => wasteMarks(view, area)),
    ...sheet.offcuts.flatMap((area) => [...offcutMarks(view, area), ...offcutWords(view, area, options.unit)]),
    ...sheet.parts.map((place) => partMark(view, place)),
    ...words,
  ];
  const base = { view, unit: options.unit, v: 10 };
  const shape: Block = { marks: [...marks, ...grainMarks(view, sheet)], views: [view], dimensions: [] };
  const dimensioned = joined(
    shape,
    chainWithWhole({
      ...base,
      name: 'sheet along',
      side: 'below',
      stops: [0, sheet.length],
      base: paperY(view, 0),
      opposite: paperY(view, sheet.width),
    }),
    chainWithWhole({
      ...base,
      name: 'sheet across',
      side: 'left',
      stops: [0, sheet.width],
      base: paperX(view, 0),
      opposite: paperX(view, sheet.length),
    }),
  );
  const marked = numbered(view, sheet, dimensioned.marks);
  const numbers = { ...emptyBlock, marks: marked };
  const name = sheet.piece === undefined ? sheet.stock : `${sheet.stock}, ${sheet.piece}`;
  return {
    block: headedBlock(joined(dimensioned, numbers), `${name} ${scaleText(scale)}`, []),
    shown: new Set(marked.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))),
  };
}

export type CuttingLayout = { readonly blocks: readonly Block[]; readonly scale: number; readonly desc: string };

/** A sheet with its parts, waste and cuts at the largest scale that fits, and the cuts in order. */
export function cuttingLayout(notebook: DrawingBook, sheet: CutSheet, options: DrawingOptions): CuttingLayout {
  const at = (scale: number): SheetAsk => ({ notebook, sheet, options, scale });
  const tried = possibleScales({ width: sheet.length, height: sheet.width }, options.paper);
  const { drawn, scale } = firstFitting(
    tried,
    (one) => drawnSheet(at(one)),
    ({ block }) => fitsSheet(block, options.paper),
  );
  const { block, shown } = drawn;
  const blocks = [block, ...smallParts(at(scale)), ...cutBlocks(at(scale), shown)];
  return { blocks, scale, desc: cuttingWords(notebook, sheet, options.unit) };
}
