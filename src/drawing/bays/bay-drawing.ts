import { bayNumber } from '../../core/wiring/routing/bays.ts';
import type { Block } from '../block.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingOptions } from '../drawing.ts';
import { saidLength } from '../figures.ts';
import { scales } from '../paper.ts';
import { placedParts } from '../scene.ts';
import { firstFitting, fitsSheet } from '../sheet.ts';
import { type Bay, baysOf } from './bay.ts';
import { bayDepth } from './bay-depth.ts';
import { bayFront, slideMiddle } from './bay-front.ts';

const PREFIX = 'bay.';

/** Bays in words: `bays 2-1 and 3-1`. */
function baysSaid({ bays }: Bay): string {
  const numbers = bays.map(bayNumber).toSorted();
  const list = numbers.length === 1 ? numbers[0] : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
  return `${numbers.length === 1 ? 'bay' : 'bays'} ${list}`;
}

function titleOf(bay: Bay, several: boolean): string {
  const what = bay.bays.length === 1 ? bay.kind : bay.kind === 'shelf' ? 'shelves' : 'drawers';
  const name = `${what.charAt(0).toUpperCase()}${what.slice(1)} in ${baysSaid(bay)}, from the ${bay.side}`;
  return several ? `${name} of ${bay.bench.id}` : name;
}

/** A drawing for each kind of bay that holds a drawer or a shelf. */
export function bayEntries(notebook: DrawingBook) {
  return baysOf(notebook).map((bay) => {
    const title = titleOf(bay, notebook.benches.length > 1);
    return { id: `${PREFIX}${bay.id}`, kind: 'section', chapter: 'benchwork', of: bay.bench.id, title } as const;
  });
}

/** What the drawing shows, in words. */
function wordsOf(bay: Bay, { unit }: DrawingOptions): string {
  const from = (at: number) => saidLength(at - bay.bench.sideUnderside, unit);
  const slide = slideMiddle(bay);
  return [
    `${titleOf(bay, false)}, cut across and along.`,
    `Its opening reaches from ${from(bay.opening.y0)} to ${from(bay.opening.y1)} above the underside of the side.`,
    ...(slide === null ? [] : [`The middle of the slides is ${from(slide)} above it.`]),
  ].join(' ');
}

export type BayLayout = { readonly blocks: readonly Block[]; readonly scale: number; readonly desc: string };

/** Both cuts of a bay at the largest scale at which a sheet holds either; null for another drawing's id. */
export function bayLayout(notebook: DrawingBook, id: string, options: DrawingOptions): BayLayout | null {
  const bay = id.startsWith(PREFIX) ? baysOf(notebook).find((one) => `${PREFIX}${one.id}` === id) : undefined;
  if (bay === undefined) return null;
  const pieces = placedParts(
    notebook.parts.filter((part) => part.bench === bay.bench.id && part.chapter === 'benchwork'),
  );
  const of = (...roles: readonly string[]) => pieces.filter(({ part }) => roles.includes(part.role));
  const { unit } = options;
  const [deck, frame] = [of('deck'), of('side', 'end', 'strut')];
  const { fasteners = [] } = notebook;
  const views = [bayFront(bay, { deck, unit }), bayDepth(bay, { deck, frame, fasteners, unit })];
  const desc = wordsOf(bay, options);
  const at = (scale: number) => views.map((view) => view(scale));
  const tried = scales.filter((scale) => scale >= 1);
  const { drawn, scale } = firstFitting(tried, at, (blocks) => fitsAll(blocks, options));
  return { blocks: drawn, scale, desc };
}

function fitsAll(blocks: readonly Block[], { paper }: DrawingOptions): boolean {
  return blocks.every((block) => fitsSheet(block, paper));
}
