import { makesDust } from '../core/steps/cautions.ts';
import type { Step } from '../core/steps/step.ts';
import { type PicturedStep, picturedSteps } from './assembly-words.ts';
import { chapterDrawings, drawingFor, drawingOfPart } from './drawings.ts';
import type { Book } from './notebooks.ts';
import { partNamed } from './parts.ts';
import type { Stretch } from './prose/render.ts';

/** A drawing beside a step, and whether it is a picture of the assembly. */
export type StepPicture = { readonly id: string; readonly assembly: boolean };

/**
 * The drawings that show what a step is about, its own pieces and no others: how what it puts in place goes in; what it
 * puts together for a trial or for later; the first part it makes; else the bench as it stands by then. None if nothing
 * of it is drawn.
 */
export function picturesFor(book: Book, step: Step): readonly StepPicture[] {
  const going = goingIn(book, step.fits ?? []);
  if (going.length > 0) return going.map(ofAssembly);
  const together = putTogether(book, step);
  if (together.length > 0) return together.map(ofAssembly);
  const part = step.makes.map((id) => partNamed(book, id)).find((one) => one !== null);
  const ofPart = part === undefined || part === null ? null : drawingOfPart(book, part.id);
  if (ofPart !== null) return [{ id: ofPart, assembly: false }];
  if (step.chapter === 'benchwork') return stateBefore(book, step).map(ofAssembly);
  return chapterDrawings(book, step.chapter)
    .slice(0, 1)
    .map(({ id }) => ({ id, assembly: false }));
}

/** A step with its pictures and the drawings its own words ask for, each once, and the words without them. */
export function pictured(book: Book, step: Step, words: readonly Stretch[]) {
  const drawings = words.flatMap((stretch) =>
    isDrawing(stretch) ? [drawingFor(book, step.chapter, stretch.attributes.of ?? '')] : [],
  );
  const own = picturesFor(book, step);
  const asked = [...new Set(drawings)].filter((id) => !own.some((one) => one.id === id));
  return {
    step,
    pictures: [...own, ...asked.map((id): StepPicture => ({ id, assembly: false }))],
    words: words.filter((stretch) => !isDrawing(stretch)),
  };
}

function isDrawing(stretch: Stretch): stretch is Extract<Stretch, { kind: 'block' }> {
  return stretch.kind === 'block' && stretch.name === 'drawing';
}

/** A drawing beside a step, or where on the page it stood before: the number of that step, counted from 1. */
export type ShownOnce = StepPicture & { readonly at: string; readonly before: number | null };

/** The drawings of several steps in order, each shown at the first step that has it; `at` is its place on the page. */
export function shownOnce(steps: readonly (readonly StepPicture[])[]): readonly (readonly ShownOnce[])[] {
  const first = new Map<string, { readonly at: string; readonly step: number }>();
  return steps.map((pictures, i) =>
    pictures.map((picture, k): ShownOnce => {
      const known = first.get(picture.id);
      if (known !== undefined) return { ...picture, at: known.at, before: known.step };
      const at = `child-${i + 1}-${k + 1}`;
      first.set(picture.id, { at, step: i + 1 });
      return { ...picture, at, before: null };
    }),
  );
}

function ofAssembly(id: string): StepPicture {
  return { id, assembly: true };
}

/** Pictures of all benches, those of one after those of another. */
function pictures(book: Book): readonly PicturedStep[] {
  return book.notebook.assembly.flatMap((one) => picturedSteps(book, one).steps);
}

/** The pictures in which some pieces go into the bench, in their order. */
function goingIn(book: Book, fits: readonly string[]): readonly string[] {
  return pictures(book)
    .filter(({ step }) => step.within === null && step.parts.some((id) => fits.includes(id)))
    .map(({ drawing }) => drawing);
}

/**
 * The pictures of what a step puts together without cutting: a drawer or a leg by itself, the frame for a trial. Of
 * several that are alike the first; of all pieces of a bench at once the exploded view, with every label.
 */
function putTogether(book: Book, { makes, tools }: Step): readonly string[] {
  const joined = book.notebook.joints.some(({ between }) => between.every((id) => makes.includes(id)));
  if (!joined || makesDust(tools)) return [];
  const whole = book.notebook.assembly.filter((one) =>
    picturedSteps(book, one).steps.every(({ step }) => step.parts.every((id) => makes.includes(id))),
  );
  if (whole.length > 0) return whole.flatMap((one) => picturedSteps(book, one).exploded ?? []);
  const own = pictures(book).filter(({ step }) => step.parts.every((id) => makes.includes(id)));
  const [inside] = own.flatMap(({ step }) => step.within ?? []);
  if (inside !== undefined) return own.filter(({ step }) => step.within === inside).map(({ drawing }) => drawing);
  return own.slice(-1).map(({ drawing }) => drawing);
}

/** The last picture of what earlier steps have put in place. */
function stateBefore(book: Book, { id }: Step): readonly string[] {
  const { steps } = book.notebook;
  const earlier = steps
    .slice(
      0,
      steps.findIndex((one) => one.id === id),
    )
    .filter(({ fits = [] }) => fits.length > 0);
  return goingIn(book, earlier.at(-1)?.fits ?? []).slice(-1);
}
