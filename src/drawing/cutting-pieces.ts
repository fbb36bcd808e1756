import type { Area, CutPlace, CutSheet, Kept } from '../core/cutting/job.ts';
import { extentOf } from './block.ts';
import type { DrawingBook } from './book.ts';
import type { DrawingOptions, DrawingUnit } from './drawing.ts';
import { sizeText } from './figures.ts';
import { hatchMarks } from './hatch.ts';
import { boxesOf } from './labels.ts';
import type { Extent, Mark, Spot, TextMark } from './mark.ts';
import { lettering, smallText } from './text.ts';
import { paperX, paperY, type View } from './view.ts';

export type SheetAsk = {
  readonly notebook: DrawingBook;
  readonly sheet: CutSheet;
  readonly options: DrawingOptions;
  readonly scale: number;
};

export function boxOf(view: View, { x, y, length, width }: Area): Extent {
  return { x0: paperX(view, x), x1: paperX(view, x + length), y0: paperY(view, y + width), y1: paperY(view, y) };
}

export function ringOf({ x0, y0, x1, y1 }: Extent): readonly Spot[] {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}

export function wasteMarks(view: View, area: Area): readonly Mark[] {
  const ring = ringOf(boxOf(view, area));
  return [
    ...hatchMarks([ring], { pitch: 2.5, slope: 1 }),
    { kind: 'polygon', rings: [ring], fill: 'none', pen: 'hatch', role: 'waste' },
  ];
}

/** Rows of dots on a grid: an offcut worth keeping. */
export function offcutMarks(view: View, area: Area): readonly Mark[] {
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

/** "keep", the label and the size of an offcut, or as much as fits, on paper of its own. */
export function offcutWords(view: View, area: Kept, unit: DrawingUnit): readonly Mark[] {
  const box = boxOf(view, area);
  const size = `${sizeText(area.length, unit)} × ${sizeText(area.width, unit)}`;
  const keep = area.label === undefined ? 'keep' : `keep ${area.label}`;
  const short = area.label === undefined ? [] : [[keep], [area.label]];
  const tries = [[keep, size], [`${keep} ${size}`], ...short].flatMap((lines) => [
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

export function partMark(view: View, place: CutPlace): Mark {
  return { kind: 'polygon', rings: [ringOf(boxOf(view, place))], fill: 'wood', pen: 'edge', role: 'outline' };
}

/** What is written on a piece: its own label where pieces are dealt out, else those of its part. */
export function pieceLabel(notebook: DrawingBook, { instance, part }: CutPlace): string {
  const found = notebook.parts.find(({ id }) => id === part);
  return found?.places.find(({ id }) => id === instance)?.label ?? found?.label ?? part;
}

/** Label and size as they fit: on one line, on two, read from the right, or the label alone. */
export function wordings(place: CutPlace, label: string, unit: DrawingUnit): readonly (readonly string[])[] {
  const size = `${sizeText(place.length, unit)} × ${sizeText(place.width, unit)}`;
  return [[label, size], [`${label}  ${size}`.replace('  ', ' ')], [label]];
}

export function block(lines: readonly string[], box: Extent, turn: 'none' | 'right'): readonly TextMark[] {
  const [cx, cy] = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
  const pitch = 4.2;
  return lines.map((line, i) => {
    const shift = (i - (lines.length - 1) / 2) * pitch + smallText / 2;
    const at: Spot = turn === 'none' ? [cx, cy + shift] : [cx + shift, cy];
    return lettering(line, at, { anchor: 'middle', role: 'label', turn, weight: i === 0 ? 'bold' : 'regular' });
  });
}

export function fitsIn(marks: readonly TextMark[], box: Extent): boolean {
  const inner = { x0: box.x0 + 0.8, x1: box.x1 - 0.8, y0: box.y0 + 0.8, y1: box.y1 - 0.8 };
  return boxesOf(marks).every(
    (one) => one.x0 >= inner.x0 && one.x1 <= inner.x1 && one.y0 >= inner.y0 && one.y1 <= inner.y1,
  );
}

/** The words on a part; a part too small for them carries its number in the list below, or nothing. */
export function partWordMarks(ask: SheetAsk, view: View, place: CutPlace): readonly TextMark[] {
  const box = boxOf(view, place);
  const label = pieceLabel(ask.notebook, place);
  const tries = wordings(place, label, ask.options.unit).flatMap((lines) => [
    block(lines, box, 'none'),
    block(lines, box, 'right'),
  ]);
  return tries.find((marks) => fitsIn(marks, box)) ?? [];
}
