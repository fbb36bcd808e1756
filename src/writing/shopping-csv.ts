import type { Notebook } from '../core/notebook.ts';
import type { ShoppingLine } from '../core/shopping/line.ts';
import { csv } from './csv.ts';
import { thousandth } from './rounded.ts';

const heads = ['quantity', 'unit', 'name', 'stock', 'length mm', 'width mm', 'length in', 'width in'];
const counts = ['counted', 'left over', 'in hand', 'waste %', 'price of one', 'price', 'currency', 'for'];

function row({ size, ...line }: ShoppingLine): readonly (string | number)[] {
  const sizes = size === null ? ['', ''] : [size.length, size.width].map(thousandth);
  const inches = size === null ? ['', ''] : [size.length, size.width].map((mm) => thousandth(mm / 25.4));
  return [
    ...[line.quantity ?? '', line.unit, line.name, line.stock ?? ''],
    ...sizes,
    ...inches,
    ...[line.counted ?? '', line.over ?? '', line.inHand === 0 ? '' : line.inHand],
    line.waste === null ? '' : Math.round(line.waste * 1000) / 10,
    ...[line.each?.value ?? '', line.price?.value ?? '', line.price?.currency ?? ''],
    line.for.join(', '),
  ];
}

/** The shopping list over all chapters; a price nobody gave is an empty cell. */
export function shoppingCsv(notebook: Notebook): string {
  return csv([[...heads, ...counts], ...notebook.shopping.lines.map(row)]);
}
