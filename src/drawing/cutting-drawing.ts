import type { Area, Cut, CutPlace, CutSheet } from '../core/cutting/job.ts';
import { chainWithWhole, headedBlock } from './bench-view.ts';
import { type Block, extentOf, joined } from './block.ts';
import type { DrawingBook } from './book.ts';
import type { DrawingOptions, DrawingUnit } from './drawing.ts';
import { lengthText, saidLength } from './figures.ts';
import { hatchMarks } from './hatch.ts';
import { boxesOf, isFree, type Obstacles } from './labels.ts';
import type { Extent, Mark, Spot, TextMark } from './mark.ts';
import { scales, scaleText } from './paper.ts';
import { type Note, noteMarks } from './part-notes.ts';
import { drawingArea, fitsSheet } from './sheet.ts';
import { lettering, smallText, textWidth } from './text.ts';
import { paperX, paperY, type View } from './view.ts';

type SheetAsk = {
  readonly notebook: DrawingBook;
  readonly sheet: CutSheet;
  readonly options: DrawingOptions;
  readonly scale: number;
};

function boxOf(view: View, { x, y, length, width }: Area): Extent {
  return { x0: paperX(view, x), x1: paperX(view, x + length), y0: paperY(view, y + width), y1: paperY(view, y) };
}

function ringOf({ x0, y0, x1, y1 }: Extent): readonly Spot[] {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}

function wasteMarks(view: View, area: Area): readonly Mark[] {
  const ring = ringOf(boxOf(view, area));
  return [
    ...hatchMarks([ring], { pitch: 2.5, slope: 1 }),
    { kind: 'polygon', rings: [ring], fill: 'none', pen: 'hatch', role: 'waste' },
  ];
}

/** Rows of dots on a grid: an offcut worth keeping. */
function offcutMarks(view: View, area: Area): readonly Mark[] {
  const { x0, x1, y0, y1 } = boxOf(view, area);
  const rows = Math.max(0, Math.floor((y1 - y0 - 1) / 4));
  const lines = Array.from({ length: rows }, (_, i): Mark => {
    const y = y0 + 2 + i * 4;
    return { kind: 'line', from: [x0 + 1.5, y], to: [x1 - 1.5, y], pen: 'dots', role: 'offcut' };
  });
  return [
    ...lines,
    { kind: 'polygon', rings: [ringOf({ x0, x1, y0, y1 })], fill: 'none', pen: 'feature', role: 'offcut' },
  ];
}

/** "keep" and the size of an offcut, on paper of its own, where it fits. */
function offcutWords(view: View, area: Area, unit: DrawingUnit): readonly Mark[] {
  const box = boxOf(view, area);
  const size = `${lengthText(area.length, unit)} × ${lengthText(area.width, unit)}`;
  const tries = [['keep', size], [`keep ${size}`]].flatMap((lines) => [
    block(lines, box, 'none'),
    block(lines, box, 'right'),
  ]);
  const words = tries.find((marks) => fitsIn(marks, box));
  if (words === undefined) return [];
  const { x0, x1, y0, y1 } = extentOf(words);
  const ground: Mark = {
    kind: 'polygon',
    rings: [ringOf({ x0: x0 - 0.6, x1: x1 + 0.6, y0: y0 - 0.6, y1: y1 + 0.6 })],
    fill: 'shade',
    pen: 'none',
    role: 'offcut',
  };
  return [ground, ...words];
}

function partMark(view: View, place: CutPlace): Mark {
  return { kind: 'polygon', rings: [ringOf(boxOf(view, place))], fill: 'wood', pen: 'edge', role: 'outline' };
}

function pieceLabel(notebook: DrawingBook, { part }: CutPlace): string {
  return notebook.parts.find(({ id }) => id === part)?.label ?? part;
}

/** Label and size as they fit: on one line, on two, read from the right, or the label alone. */
function wordings(place: CutPlace, label: string, unit: DrawingUnit): readonly (readonly string[])[] {
  const size = `${lengthText(place.length, unit)} × ${lengthText(place.width, unit)}`;
  return [[label, size], [`${label}  ${size}`.replace('  ', ' ')], [label]];
}

function block(lines: readonly string[], box: Extent, turn: 'none' | 'right'): readonly TextMark[] {
  const [cx, cy] = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
  const pitch = 4.2;
  return lines.map((line, i) => {
    const shift = (i - (lines.length - 1) / 2) * pitch + smallText / 2;
    const at: Spot = turn === 'none' ? [cx, cy + shift] : [cx + shift, cy];
    return lettering(line, at, { anchor: 'middle', role: 'label', turn, weight: i === 0 ? 'bold' : 'regular' });
  });
}

function fitsIn(marks: readonly TextMark[], box: Extent): boolean {
  const inner = { x0: box.x0 + 0.8, x1: box.x1 - 0.8, y0: box.y0 + 0.8, y1: box.y1 - 0.8 };
  return boxesOf(marks).every(
    (one) => one.x0 >= inner.x0 && one.x1 <= inner.x1 && one.y0 >= inner.y0 && one.y1 <= inner.y1,
  );
}

/** The words on a part; a part too small for them carries its number in the list below, or nothing. */
function partWordMarks(ask: SheetAsk, view: View, place: CutPlace): readonly TextMark[] {
  const box = boxOf(view, place);
  const label = pieceLabel(ask.notebook, place);
  const tries = wordings(place, label, ask.options.unit).flatMap((lines) => [
    block(lines, box, 'none'),
    block(lines, box, 'right'),
  ]);
  return tries.find((marks) => fitsIn(marks, box)) ?? [];
}

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

/** A cut's number in a circle on its kerf, where there is room for it. */
function cutNumber(view: View, cut: Cut, obstacles: Obstacles): readonly Mark[] {
  const box = boxOf(view, cut.kerf);
  const text = String(cut.number);
  const radius = Math.max(2.2, textWidth(text, smallText) / 2 + 0.9);
  const upright = box.y1 - box.y0 > box.x1 - box.x0;
  const shares = [0.98, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1, 0.02];
  const spots = shares.map(
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
    if (clear && isFree(figure, { lines: [], boxes: obstacles.boxes })) return [disc, figure];
  }
  return [];
}

function numbered(view: View, sheet: CutSheet, marks: readonly Mark[]): readonly Mark[] {
  const found: Mark[] = [];
  for (const cut of sheet.cuts) {
    found.push(...cutNumber(view, cut, { lines: [], boxes: boxesOf([...marks, ...found]) }));
  }
  return found;
}

function sheetBlock(ask: SheetAsk): Block {
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
  const shape: Block = {
    marks: [...marks, ...numbered(view, sheet, marks), ...grainMarks(view, sheet)],
    views: [view],
    dimensions: [],
  };
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
  return headedBlock(dimensioned, `${sheet.stock} ${scaleText(scale)}`, []);
}

const cutNames = { trim: 'trim the edge', rip: 'rip', crosscut: 'crosscut' } as const;

function cutNote(cut: Cut, unit: DrawingUnit): Note {
  return { letter: String(cut.number), words: `${cutNames[cut.kind]}, set ${lengthText(cut.setting, unit)}` };
}

/** The cuts in order with the fence's setting, a column to a block. */
function cutBlocks({ sheet, options }: SheetAsk): readonly Block[] {
  const rows = 24;
  const columns = Array.from({ length: Math.ceil(sheet.cuts.length / rows) }, (_, i) =>
    sheet.cuts.slice(i * rows, (i + 1) * rows),
  );
  return columns.map((cuts, i) => ({
    marks: noteMarks(
      i === 0 ? `Cuts in order, kerf ${lengthText(sheet.kerf, options.unit)}` : 'Cuts, continued',
      cuts.map((cut) => cutNote(cut, options.unit)),
    ),
    views: [],
    dimensions: [],
  }));
}

/** The parts that were too small for their words, with their size and lower left corner. */
function smallParts(ask: SheetAsk): readonly Block[] {
  const view: View = { name: 'sheet', scale: ask.scale, origin: [0, 0], breaks: [] };
  const { unit } = ask.options;
  const small = ask.sheet.parts.filter((place) => partWordMarks(ask, view, place).length < 2);
  const notes = small.map((place): Note => {
    const size = `${lengthText(place.length, unit)} × ${lengthText(place.width, unit)}`;
    const at = `${lengthText(place.x, unit)}, ${lengthText(place.y, unit)}`;
    return { letter: pieceLabel(ask.notebook, place), words: `${size}, lower left corner at ${at}` };
  });
  const pages = Array.from({ length: Math.ceil(notes.length / 24) }, (_, i) => notes.slice(i * 24, (i + 1) * 24));
  return pages.map((page) => ({ marks: noteMarks('Small parts', page), views: [], dimensions: [] }));
}

/** What the cutting layout shows, in words. */
export function cuttingWords(notebook: DrawingBook, sheet: CutSheet, unit: DrawingUnit): string {
  const pieces = sheet.parts.map(
    (place) => `${pieceLabel(notebook, place)} ${lengthText(place.length, unit)} by ${lengthText(place.width, unit)}`,
  );
  const kept = sheet.offcuts.map(({ length, width }) => `${lengthText(length, unit)} by ${lengthText(width, unit)}`);
  const size = `${sheet.stock}, ${saidLength(sheet.length, unit)} by ${saidLength(sheet.width, unit)}, kerf ${saidLength(sheet.kerf, unit)}, in ${sheet.cuts.length} cuts.`;
  const offcuts = kept.length === 0 ? 'No offcut worth keeping.' : `Offcuts worth keeping: ${kept.join('; ')}.`;
  return [size, `Parts: ${pieces.join('; ')}.`, offcuts].join(' ');
}

export type CuttingLayout = { readonly blocks: readonly Block[]; readonly scale: number; readonly desc: string };

/** A sheet with its parts, waste and cuts at the largest scale that fits, and the cuts in order. */
export function cuttingLayout(notebook: DrawingBook, sheet: CutSheet, options: DrawingOptions): CuttingLayout {
  const at = (scale: number): SheetAsk => ({ notebook, sheet, options, scale });
  const area = drawingArea(options.paper);
  const mayFit = (one: number) => sheet.length / one <= area.x1 - area.x0 && sheet.width / one <= area.y1 - area.y0;
  const scale = scales.find((one) => one >= 1 && mayFit(one) && fitsSheet(sheetBlock(at(one)), options.paper)) ?? 100;
  const blocks = [sheetBlock(at(scale)), ...smallParts(at(scale)), ...cutBlocks(at(scale))];
  return { blocks, scale, desc: cuttingWords(notebook, sheet, options.unit) };
}
