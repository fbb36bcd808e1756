import type { Prose } from '../core/plan.ts';
import type { Step } from '../core/steps/step.ts';
import { showAmount } from '../core/units/show-amount.ts';
import { valueNamed as amountNamed } from '../core/values.ts';
import type { Pair } from './lengths.ts';
import { lengthPair } from './lengths.ts';
import { type MdxPlaced, mdxPlaced } from './mdx-words.ts';
import type { Book } from './notebooks.ts';
import { renderProse, type Stretch } from './prose/render.ts';

/** A chapter's words: what stands on the page in order, and what stands inside each step. */
export type ChapterProse = {
  readonly written: boolean;
  /** what an .mdx chapter places by itself; null for .md */
  readonly code: MdxPlaced | null;
  readonly stretches: readonly Stretch[];
  readonly ofStep: Readonly<Record<string, readonly Stretch[]>>;
};

/** What prose may ask for by name, in both units. */
export function valueNamed(book: Book, name: string): Pair | null {
  const amount = amountNamed(book.notebook, name);
  if (amount === null) return null;
  if (amount.dimension === 'length') return lengthPair(amount.value);
  const text = showAmount(amount, book.notebook.show);
  return { mm: text, in: text };
}

/** A step's name within its chapter: `rout` of `benchwork.rout`. */
export function nameInChapter(step: Step): string {
  return step.id.startsWith(`${step.chapter}.`) ? step.id.slice(step.chapter.length + 1) : step.id;
}

/** Steps are gathered in one list: where the author put it, else where the first of them is written. */
function gathered(stretches: readonly Stretch[]): readonly Stretch[] {
  const list: Stretch = { kind: 'block', name: 'steps', attributes: {} };
  const placed = stretches.some((stretch) => stretch.kind === 'block' && stretch.name === 'steps');
  const first = stretches.findIndex((stretch) => stretch.kind === 'step');
  return stretches.flatMap((stretch, i) => {
    if (stretch.kind !== 'step') return [stretch];
    return !placed && i === first ? [list] : [];
  });
}

/** The words of one file by its name without ending: `notebook`, `benchwork`, `log/2026-03-14-rout`. */
export function proseNamed(book: Book, name: string): Prose | null {
  const file = `/${book.notebook.slug}/${name}.`;
  return book.prose.find((one) => [`${file}md`, `${file}mdx`].some((ending) => one.file.endsWith(ending))) ?? null;
}

/** The words of one file of a notebook, steps apart. */
export async function chapterProse(book: Book, chapter: string): Promise<ChapterProse> {
  const prose = proseNamed(book, chapter);
  if (prose === null) return { written: false, code: null, stretches: [], ofStep: {} };
  if (prose.file.endsWith('.mdx')) return { written: true, code: mdxPlaced(prose.body), stretches: [], ofStep: {} };
  const steps = new Set(book.notebook.steps.filter((step) => step.chapter === chapter).map(nameInChapter));
  const stretches = await renderProse(prose.body, { steps, value: (name) => valueNamed(book, name) });
  const ofStep = Object.fromEntries(
    stretches.flatMap((stretch) => (stretch.kind === 'step' ? [[stretch.id, stretch.stretches]] : [])),
  );
  return { written: true, code: null, stretches: gathered(stretches), ofStep };
}
