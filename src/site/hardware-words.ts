import { boltHole } from '../core/benchwork/hardware/bolts.ts';
import { soldByInch } from '../core/benchwork/hardware/measure.ts';
import { type HardwareUse, joinsPieces } from '../core/stock/fastener.ts';
import type { Stock } from '../core/stock/goods.ts';
import { screwHoles } from '../core/stock/screw-holes.ts';
import { below, both, type Html, line, text } from './html.ts';
import { figurePair, lengthPair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { stockName } from './sheet-words.ts';
import { quantityWords } from './shopping-words.ts';
import type { Told } from './table.ts';
import { UNIT_NAMES } from './words.ts';

const NONE = text('–');

/** `leg.front-left` as people say it. */
export function placeName(id: string): string {
  return id.replaceAll('.', ' ');
}

/** Where, with how many at each place: `4 each: leg front-left, leg front-right`. */
export function whereWords(uses: readonly Pick<HardwareUse, 'quantity' | 'where'>[]): string {
  const numbers = [...new Set(uses.map(({ quantity }) => quantity))];
  return numbers
    .map((number) => {
      const places = uses.filter(({ quantity }) => quantity === number).map(({ where }) => placeName(where));
      return places.length === 1 ? `${number}: ${places[0]}` : `${number} each: ${places.join(', ')}`;
    })
    .join('; ');
}

/**
 * Holes the computed fasteners of an item ask for, and an insert by its stock; a bolt that holds no pieces together goes
 * into an insert, and a screw that fixes metal needs no clearance.
 */
function holesFor(book: Book, item: string): Html {
  const stock = stockOf(book, item);
  if (stock?.kind === 'hardware' && stock.form === 'insert' && stock.hole != null) return both(figurePair(stock.hole));
  const own = book.notebook.fasteners.filter((fastener) => fastener.item === item);
  const joining = own.find(joinsPieces);
  const driven = joining ?? own[0];
  if (driven === undefined) return NONE;
  if (driven.form === 'bolt')
    return joining === undefined ? NONE : line(text('through '), both(figurePair(boltHole(driven.diameter))));
  const holes = screwHoles(driven.diameter);
  if (holes === null) return text('not in the table of holes');
  if (joining === undefined) return line(text('pilot '), both(figurePair(holes.hardwood)));
  return line(
    text('clearance '),
    both(figurePair(holes.clearance)),
    text(', pilot '),
    both(figurePair(holes.hardwood)),
  );
}

function stockOf(book: Book, item: string): Stock | undefined {
  return book.notebook.stock.find(({ id }) => id === item);
}

/** Its name, and whether a caster can be locked. */
function nameOf(book: Book, item: string): Html {
  const stock = stockOf(book, item);
  const name = text(stockName(book, item));
  if (stock?.kind !== 'caster') return name;
  return line(name, below(text(stock.locks ? 'can be locked' : 'cannot be locked')));
}

function numberOf(book: Book, item: string, uses: readonly HardwareUse[]): Html {
  const quantity = uses.reduce((sum, one) => sum + one.quantity, 0);
  const stock = stockOf(book, item);
  return text(stock?.kind === 'cover' ? quantityWords({ quantity, unit: stock.unit }) : String(quantity));
}

/** A length as shops name it, whatever a page is read in: `30 mm`, `1 1/4 in`. */
export function soldLength(mm: number): string {
  const unit = soldByInch(mm) ? 'in' : 'mm';
  return lengthPair(mm)[unit];
}

/** What is bought by the piece, and glue and finish: how many, where, and the holes that are drilled for them. */
export function hardwareTable(book: Book): Told {
  const { hardware } = book.notebook;
  const items = [...new Set(hardware.map(({ item }) => item))];
  return {
    label: 'Hardware',
    caption: line(
      text('Lengths as they are sold, holes in '),
      both(UNIT_NAMES),
      text('; the clearance hole goes through the first piece, the pilot into the last'),
    ),
    columns: [['Item'], ['Number', 'right'], ['Length', 'right'], ['Holes'], ['Where']],
    rows: items.map((item) => {
      const uses = hardware.filter((one) => one.item === item);
      const length = uses[0]?.length ?? null;
      return [
        nameOf(book, item),
        numberOf(book, item, uses),
        length === null ? NONE : text(soldLength(length)),
        holesFor(book, item),
        text(whereWords(uses)),
      ];
    }),
  };
}

/** Which casters stop the table from rolling; null for a table without casters. */
export function lockWords(book: Book): string | null {
  const casters = book.notebook.hardware.flatMap((use) => {
    const stock = stockOf(book, use.item);
    return stock?.kind === 'caster' ? [{ where: placeName(use.where), locks: stock.locks }] : [];
  });
  if (casters.length === 0) return null;
  const named = (locks: boolean) => [
    ...new Set(casters.filter((one) => one.locks === locks).map(({ where }) => where)),
  ];
  const [locked, free] = [named(true), named(false)];
  if (locked.length === 0) return 'No caster can be locked: the table needs wedges or a wall to stand still.';
  if (free.length === 0) return 'Every caster can be locked.';
  return `Casters that can be locked: ${locked.join(', ')}. Without a lock: ${free.join(', ')}.`;
}
