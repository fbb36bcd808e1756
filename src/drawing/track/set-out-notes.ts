import type { TrackModel } from '../../core/track/lay.ts';
import type { SetOutRow } from '../../core/track/set-out.ts';
import type { Block } from '../block.ts';
import type { DrawingUnit } from '../drawing.ts';
import { lengthText, unitNames } from '../figures.ts';
import { type Note, noteBlocks } from '../notes.ts';

/** The table a trammel and a square are set by, each point from its bench's left and front edges. */
export function setOutNotes({ setOut }: TrackModel, unit: DrawingUnit): readonly Block[] {
  const notes = setOut.map((row): Note => ({ letter: row.id, words: rowWords(row, unit), dimensions: [] }));
  return notes.length === 0
    ? []
    : noteBlocks(`Setting out in ${unitNames[unit]}, from the left and front edges`, notes);
}

function rowWords(row: SetOutRow, unit: DrawingUnit): string {
  const text = (mm: number) => lengthText(mm, unit);
  const check =
    row.diagonals === null
      ? ''
      : `; check ${text(row.diagonals[0])} and ${text(row.diagonals[1])} from the front corners`;
  return `${leading(row, text)}${text(row.x)}, ${text(row.y)}${check}`;
}

function leading({ kind, at, radius, along, offset, onDeck }: SetOutRow, text: (mm: number) => string): string {
  switch (kind) {
    case 'centre':
      return `centre of R ${text(radius ?? 0)}${onDeck ? '' : ', off the deck'}: `;
    case 'easement':
      return `${text(offset ?? 0)} off the straight, ${text(along ?? 0)} along it: `;
    case 'tangent':
      return `at ${text(at ?? 0)}: `;
    case 'end':
      return `end, at ${text(at ?? 0)}: `;
    case 'frog':
      return 'point of the frog: ';
    case 'turnout':
      return '';
  }
}
