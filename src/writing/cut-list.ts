import type { Notebook } from '../core/notebook.ts';
import type { Part } from '../core/stock/part.ts';
import { csv } from './csv.ts';
import { thousandth } from './rounded.ts';

const heads = ['label', 'part', 'quantity', 'stock'];
const sizes = ['length mm', 'width mm', 'thickness mm', 'length in', 'width in', 'thickness in'];

function row(part: Part): readonly (string | number)[] {
  const { length, width, thickness, grain } = part.blank;
  const millimetres = [length, width, thickness].map(thousandth);
  const inches = [length, width, thickness].map((mm) => thousandth(mm / 25.4));
  const after = part.cutAfterMeasuring ? 'yes' : 'no';
  return [part.label, part.id, part.places.length, part.stock, ...millimetres, ...inches, grain, after];
}

/** Every kind of part to be cut now, in the notebook's order: sizes of its blank in mm and in decimal inches. */
export function cutListCsv(notebook: Notebook): string {
  const now = notebook.parts.filter((part) => part.phase === 'now');
  return csv([[...heads, ...sizes, 'grain', 'cut after measuring'], ...now.map(row)]);
}
