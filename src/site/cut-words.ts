import type { Area, Cut, CutSheet } from '../core/cutting/job.ts';
import { both, type Html, line, text } from './html.ts';
import { figuresPair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { partNamed } from './parts.ts';

/** Rectangles that differ by less are one to the saw, mm. */
const SAME = 1e-4;

function same(a: Area, b: Area): boolean {
  const close = (p: number, q: number) => Math.abs(p - q) < SAME;
  return close(a.x, b.x) && close(a.y, b.y) && close(a.length, b.length) && close(a.width, b.width);
}

/** What is written on a piece of a sheet. */
export function labelOn(book: Book, { part, instance }: CutSheet['parts'][number]): string {
  const found = partNamed(book, part);
  return found?.places.find(({ id }) => id === instance)?.label ?? found?.label ?? part;
}

/** A piece that a cut leaves: a part, an offcut to keep, waste, or what a later cut takes on. */
export type Falling = { readonly kind: 'part' | 'keep' | 'waste' | 'onward'; readonly words: Html };

function falling(book: Book, sheet: CutSheet, area: Area): Falling {
  const part = sheet.parts.find((one) => same(one, area));
  if (part !== undefined) return { kind: 'part', words: text(labelOn(book, part)) };
  const kept = sheet.offcuts.find((one) => same(one, area));
  if (kept !== undefined) return { kind: 'keep', words: text(`keep ${kept.label ?? ''}`.trim()) };
  const next = sheet.cuts.find((cut) => same(cut.from, area));
  if (next === undefined) return { kind: 'waste', words: text('waste') };
  const words = line(both(figuresPair([area.length, area.width])), text(` for cut ${next.number}`));
  return { kind: 'onward', words };
}

/** The pieces a cut leaves, the one at the fence first; crumbs of a trim are not told. */
export function fallsOff(book: Book, sheet: CutSheet, cut: Cut): readonly Falling[] {
  const pieces = cut.yields.map((area) => falling(book, sheet, area));
  return cut.kind === 'trim' ? pieces.filter(({ kind }) => kind !== 'waste') : pieces;
}

const EDGES = { left: 'left', right: 'right', lower: 'lower', upper: 'upper' } as const;

/** The edge of the sheet that a trim takes off. */
export function trimmedEdge({ from, kerf, yields }: Cut): keyof typeof EDGES {
  const left = yields.reduce((most, one) => (one.length * one.width > most.length * most.width ? one : most), kerf);
  if (Math.abs(kerf.length - from.length) < SAME && kerf.width < from.width) {
    return left.y > from.y + SAME ? 'lower' : 'upper';
  }
  return left.x > from.x + SAME ? 'left' : 'right';
}

/** What to do at a cut, in a word or two. */
export function cutName(cut: Cut): string {
  if (cut.kind === 'trim') return `Trim the ${trimmedEdge(cut)} edge`;
  return { rip: 'Rip', crosscut: 'Crosscut' }[cut.kind];
}
