import type { Cut, CutSheet } from '../core/cutting/job.ts';
import type { Block } from './block.ts';
import type { DrawingBook } from './book.ts';
import { partWordMarks, pieceLabel, type SheetAsk } from './cutting-pieces.ts';
import type { DrawingUnit } from './drawing.ts';
import { fitText, lengthText, saidLength, sizeText } from './figures.ts';
import { type Note, noteBlocks } from './notes.ts';
import type { View } from './view.ts';

const cutNames = { trim: 'trim the edge', rip: 'rip', crosscut: 'crosscut' } as const;

/** A cut's fence setting; one whose number found no room on the sheet says where it runs. */
function cutNote(cut: Cut, unit: DrawingUnit, shown: ReadonlySet<string>): Note {
  const letter = String(cut.number);
  const where = shown.has(letter) ? '' : `; ${wayOf(cut, unit)}`;
  return { letter, words: `${cutNames[cut.kind]}, set ${sizeText(cut.setting, unit)}${where}`, dimensions: [] };
}

/** From the end nearer to the lower left corner of the sheet to the other, both as x, y from that corner. */
function wayOf({ kerf: { x, y, length, width } }: Cut, unit: DrawingUnit): string {
  const spot = (u: number, v: number) => `${lengthText(u, unit)}, ${lengthText(v, unit)}`;
  return width > length
    ? `from ${spot(x, y)} up to ${spot(x, y + width)}`
    : `from ${spot(x, y)} along to ${spot(x + length, y)}`;
}

/** The cuts in order with the fence's setting; `shown` are the numbers that stand on the sheet. */
export function cutBlocks({ sheet, options }: SheetAsk, shown: ReadonlySet<string>): readonly Block[] {
  const placed = sheet.cuts.some(({ number }) => !shown.has(String(number)));
  const from = placed ? ', places from the lower left corner' : '';
  const heading = `Cuts in order, kerf ${fitText(sheet.kerf, options.unit)}${from}`;
  return noteBlocks(
    heading,
    sheet.cuts.map((cut) => cutNote(cut, options.unit, shown)),
  );
}

/** The parts that were too small for their words, with their size and lower left corner. */
export function smallParts(ask: SheetAsk): readonly Block[] {
  const view: View = { name: 'sheet', scale: ask.scale, origin: [0, 0], breaks: [] };
  const { unit } = ask.options;
  const small = ask.sheet.parts.filter((place) => partWordMarks(ask, view, place).length < 2);
  const notes = small.map((place): Note => {
    const size = `${sizeText(place.length, unit)} × ${sizeText(place.width, unit)}`;
    const at = `${lengthText(place.x, unit)}, ${lengthText(place.y, unit)}`;
    return { letter: pieceLabel(ask.notebook, place), words: `${size}, lower left corner at ${at}`, dimensions: [] };
  });
  return noteBlocks('Small parts', notes);
}

/** What the cutting layout shows, in words. */
export function cuttingWords(notebook: DrawingBook, sheet: CutSheet, unit: DrawingUnit): string {
  const pieces = sheet.parts.map(
    (place) => `${pieceLabel(notebook, place)} ${sizeText(place.length, unit)} by ${sizeText(place.width, unit)}`,
  );
  const kept = sheet.offcuts.map(({ label, length, width }) =>
    [label ?? [], `${sizeText(length, unit)} by ${sizeText(width, unit)}`].flat().join(' '),
  );
  const size = `${sheet.stock}, ${saidLength(sheet.length, unit)} by ${saidLength(sheet.width, unit)}, kerf ${saidLength(sheet.kerf, unit)}, in ${sheet.cuts.length} cuts.`;
  const offcuts = kept.length === 0 ? 'No offcut worth keeping.' : `Offcuts worth keeping: ${kept.join('; ')}.`;
  return [size, `Parts: ${pieces.join('; ')}.`, offcuts].join(' ');
}
