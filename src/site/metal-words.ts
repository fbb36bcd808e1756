import type { PictureStep } from '../core/assembly/picture-steps.ts';
import { type Fastener, joinsPieces } from '../core/stock/fastener.ts';
import { type Html, line, listedAnd, partLinks, text } from './html.ts';
import type { Book } from './notebooks.ts';
import { stockName } from './sheet-words.ts';

/** Which kind of metal screws on one piece hold, of which leg or drawer. */
const METAL = /^(?:(.+)\.)?(caster|bracket|slide)\.((?:leg|drawer)\.[^.]+)/;

/** Fasteners of one item that hold metal of one kind on the pieces of a picture. */
type Fixing = { readonly kind: string; readonly where: string; readonly fasteners: readonly Fastener[] };

/** The pieces a picture shows for the first time: those of what is built apart, and those that go in alone. */
function firstShown({ within, parts, placings }: PictureStep): ReadonlySet<string> {
  const single = placings.flatMap(({ parts: going }) => (going.length === 1 ? going : []));
  return new Set(within === null ? single : parts);
}

function fixingsIn(book: Book, step: PictureStep): readonly Fixing[] {
  const shown = firstShown(step);
  const byKey = new Map<string, Fixing>();
  for (const one of book.notebook.fasteners.filter((fastener) => !joinsPieces(fastener))) {
    const [, bench, kind, whole] = METAL.exec(one.holds) ?? [];
    if (kind === undefined || whole === undefined || !one.through.some((id) => shown.has(id))) continue;
    const where = bench === undefined ? whole : `${bench}.${whole}`;
    const key = `${kind} ${kind === 'slide' ? '' : where} ${one.item}`;
    byKey.set(key, { kind, where, fasteners: [...(byKey.get(key)?.fasteners ?? []), one] });
  }
  return [...byKey.values()];
}

/** `4 × Washer M6`: what of some forms of hardware a leg or drawer takes. */
function itemsOf(book: Book, where: string, isWanted: (id: string) => boolean): readonly Html[] {
  const used = book.notebook.hardware.filter((one) => one.where === where && isWanted(one.item));
  return used.map(({ item, quantity }) => text(`${quantity} × ${stockName(book, item)}`));
}

function isForm(book: Book, ...forms: readonly string[]): (id: string) => boolean {
  const wanted = book.notebook.stock.filter((one) => one.kind === 'hardware' && forms.includes(one.form));
  return (id) => wanted.some((one) => one.id === id);
}

function pieces(book: Book, fasteners: readonly Fastener[]): Html {
  return listedAnd([...new Set(fasteners.flatMap(({ through }) => through))].map((id) => partLinks(book, [id])));
}

function screwWords(book: Book, fasteners: readonly Fastener[]): Html {
  const count = new Set(fasteners.flatMap(({ through }) => through)).size;
  const each = count > 1 ? ' into each' : '';
  return text(`${fasteners.length / count} × ${stockName(book, fasteners[0]?.item ?? '')}${each}`);
}

/** Inserts and the caster on them; whether its wheel can be held is said because one leans on it later. */
function casterLine(book: Book, { where, fasteners }: Fixing): Html {
  const caster = book.notebook.stock.find(
    (one) =>
      one.kind === 'caster' && book.notebook.hardware.some((used) => used.where === where && used.item === one.id),
  );
  const locks = caster?.kind === 'caster' && caster.locks ? 'it locks' : 'it does not lock';
  const inserts = itemsOf(book, where, isForm(book, 'insert'));
  const from = inserts.length === 0 ? [] : [listedAnd(inserts), text(' into '), pieces(book, fasteners), text('; ')];
  const thread = fasteners[0]?.diameter;
  const washers = book.notebook.stock.filter(
    (one) => one.kind === 'hardware' && one.form === 'washer' && one.diameter === thread,
  );
  const under = itemsOf(book, where, (id) => washers.some((one) => one.id === id));
  return line(
    text('Before the leg goes in, when its glue has set: '),
    ...from,
    text(`${caster?.name ?? 'the caster'} (${locks}) under `),
    pieces(book, fasteners),
    text(' with '),
    listedAnd([screwWords(book, fasteners), ...under]),
    text('.'),
  );
}

function bracketLine(book: Book, { where, fasteners }: Fixing): Html {
  const brackets = itemsOf(book, where, isForm(book, 'bracket'));
  return line(
    listedAnd(brackets),
    text(' in the corner of '),
    pieces(book, fasteners),
    text(', '),
    screwWords(book, fasteners),
    text('.'),
  );
}

function slideLine(book: Book, { where, fasteners }: Fixing): Html {
  const box = fasteners.some(({ through }) => through.some((id) => id.includes('drawer.')));
  const slides = box ? [line(listedAnd(itemsOf(book, where, isForm(book, 'slide'))), text(': '))] : [];
  return line(
    ...slides,
    text(`${box ? 'the slides’ inner' : 'The slides’ outer'} halves on `),
    pieces(book, fasteners),
    text(', '),
    screwWords(book, fasteners),
    text('.'),
  );
}

/** What of a drawer no place is computed for: it is named where the drawer is built. */
function catchLines(book: Book, { within }: PictureStep): readonly Html[] {
  const items = within === null ? [] : itemsOf(book, within, isForm(book, 'catch'));
  if (items.length === 0) return [];
  return [
    line(listedAnd(items), text(': no place is computed for it; fit it as its maker says, clear of the slides.')),
  ];
}

const LINES = { caster: casterLine, bracket: bracketLine, slide: slideLine } as const;

/** Casters, brackets, slides and catches of the pieces that a picture shows first: what goes where, with what. */
export function metalLines(book: Book, step: PictureStep): readonly Html[] {
  const fixings = fixingsIn(book, step);
  const lines = (['bracket', 'caster', 'slide'] as const).flatMap((kind) =>
    fixings.filter((one) => one.kind === kind).map((one) => LINES[kind](book, one)),
  );
  return [...lines, ...catchLines(book, step)];
}
