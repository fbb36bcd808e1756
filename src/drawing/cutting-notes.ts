import type { Cut, CutSheet } from '../core/cutting/job.ts';
import type { Block } from './block.ts';
import type { DrawingBook } from './book.ts';
import { partWordMarks, pieceLabel, type SheetAsk } from './cutting-pieces.ts';
import type { DrawingUnit } from './drawing.ts';
import { lengthText, saidLength } from './figures.ts';
import { type Note, noteMarks } from './part-notes.ts';
import type { View } from './view.ts';

const cutNames = { trim: 'trim the edge', rip: 'rip', crosscut: 'crosscut' } as const;

function cutNote(cut: Cut, unit: DrawingUnit): Note {
  return { letter: String(cut.number), words: `${cutNames[cut.kind]}, set ${lengthText(cut.setting, unit)}` };
}

/** The cuts in order with the fence's setting, a column to a block. */
export function cutBlocks({ sheet, options }: SheetAsk): readonly Block[] {
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
export function smallParts(ask: SheetAsk): readonly Block[] {
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
