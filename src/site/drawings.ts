import type { Notebook } from '../core/notebook.ts';
import { bareSheet } from '../drawing/bare.ts';
import type { Drawing, DrawingUnit } from '../drawing/drawing.ts';
import { type DrawingSet, drawingSet } from '../drawing/layout.ts';
import type { DrawingEntry } from '../drawing/list.ts';
import { renderDrawing, standaloneDrawing } from '../drawing/render.ts';
import { plainDocument } from '../drawing/window.ts';
import type { Pair } from './lengths.ts';
import type { Book } from './notebooks.ts';

/** Millimetres go with A4, inches with Letter: what lies in the reader's printer. */
const PAPERS = { mm: 'A4', in: 'Letter' } as const;

type Kept = { readonly set: DrawingSet; readonly drawn: Map<string, Drawing> };

/** Drawings are laid out once a build, whatever the number of pages that show them. */
const kept = new WeakMap<Notebook, Kept>();

function keptOf({ notebook }: Book): Kept {
  const known = kept.get(notebook) ?? { set: drawingSet(notebook), drawn: new Map() };
  kept.set(notebook, known);
  return known;
}

function laidOut(book: Book, id: string, unit: DrawingUnit): Drawing {
  const { drawn, set } = keptOf(book);
  const key = `${unit} ${id}`;
  const drawing = drawn.get(key) ?? set.layOut(id, { unit, paper: PAPERS[unit] });
  drawn.set(key, drawing);
  return drawing;
}

/** Every drawing of a notebook, by chapters. */
export function drawingsOf(book: Book): readonly DrawingEntry[] {
  return keptOf(book).set.entries;
}

/** What a drawing shows, in words, for readers of either unit. */
export function drawingWords(book: Book, id: string): Pair {
  const words = (unit: DrawingUnit) => laidOut(book, id, unit).desc;
  return { mm: words('mm'), in: words('in') };
}

/** The sheets of a drawing as SVG, in order. */
export function drawingSheets(book: Book, id: string, unit: DrawingUnit): readonly string[] {
  const { sheets } = laidOut(book, id, unit);
  const document = plainDocument();
  return sheets.map((sheet) => renderDrawing(sheet, document));
}

/** A drawing's sheets for a page; its size follows the page's width. */
export function drawingSvg(book: Book, id: string, unit: DrawingUnit): string {
  return drawingSheets(book, id, unit).join('');
}

/** A drawing's first sheet cut close round what is drawn, for a page that names it; at its true size in mm. */
export function bareSvg(book: Book, id: string, unit: DrawingUnit): string {
  const [sheet] = laidOut(book, id, unit).sheets;
  return sheet === undefined ? '' : renderDrawing(bareSheet(sheet), plainDocument());
}

/** Width of what a page of text prints, mm: A4 less the margins of print.css; Letter has a little more. */
const PRINTED = 210 - 20 - 14;

/** Whether a drawing cut close keeps its true size on a page of text in both units. */
export function printsTrue(book: Book, id: string): boolean {
  return (['mm', 'in'] as const).every((unit) => {
    const [sheet] = laidOut(book, id, unit).sheets;
    return sheet !== undefined && bareSheet(sheet).width <= PRINTED;
  });
}

/** Room for a picture of the assembly on a page, mm: its lettering is still read where a phone shows it whole. */
const PICTURE = { width: 122, height: 94 } as const;

/** An exploded view has more to show. */
const EXPLODED = { width: 145, height: 150 } as const;

/** A picture of the assembly cut close, drawn small enough for a page that names it. */
export function pictureSvg(book: Book, id: string, unit: DrawingUnit): string {
  const room = id.endsWith('.exploded') ? EXPLODED : PICTURE;
  const { sheets } = keptOf(book).set.layOut(id, { unit, paper: PAPERS[unit], room });
  const [sheet] = sheets;
  return sheet === undefined ? '' : renderDrawing(bareSheet(sheet, PICTURE.width), plainDocument());
}

/** One sheet of a drawing as a file of its own, counted from 1. */
export function drawingFile(
  book: Book,
  id: string,
  which: { readonly unit: DrawingUnit; readonly sheet: number },
): string {
  return standaloneDrawing(drawingSheets(book, id, which.unit)[which.sheet - 1] ?? '');
}

/** The drawing of that id. Errors: none of that name. */
export function drawingNamed(book: Book, id: string): DrawingEntry {
  const all = drawingsOf(book);
  const found = all.find((drawing) => drawing.id === id);
  if (found !== undefined) return found;
  throw new Error(`no drawing is called '${id}'; there are ${all.map((one) => one.id).join(', ')}`);
}

/** The drawing a chapter means by a name: its own first, else any of that name. */
export function drawingFor(book: Book, chapter: string, name: string): string {
  const own = drawingsOf(book).find(({ id }) => id === `${chapter}.${name}`);
  return (own ?? drawingNamed(book, name)).id;
}

/** Drawings of a chapter as a whole: not those of single parts or sheets, which have pages of their own. */
export function chapterDrawings(book: Book, chapter: string): readonly DrawingEntry[] {
  return drawingsOf(book).filter(({ id }) => id.startsWith(`${chapter}.`));
}

/** Details of a chapter's joints, one of each kind. */
export function jointDrawings(book: Book, chapter: string): readonly DrawingEntry[] {
  return drawingsOf(book).filter((drawing) => drawing.kind === 'joint' && drawing.chapter === chapter);
}

/** The drawing a notebook is known by: its first plan, else its first; null if there is none. */
export function heroDrawing(book: Book): string | null {
  const all = drawingsOf(book);
  return (all.find(({ kind }) => kind === 'plan') ?? all[0])?.id ?? null;
}

/** The true-shape drawing of a part, or null. */
export function drawingOfPart(book: Book, part: string): string | null {
  return drawingsOf(book).find(({ kind, of }) => kind === 'part' && of === part)?.id ?? null;
}

/** The drawing of how a sheet is cut, counted from 1, or null. */
export function drawingOfSheet(book: Book, number: number): string | null {
  return drawingsOf(book).find(({ id }) => id === `sheet.${number}`)?.id ?? null;
}
