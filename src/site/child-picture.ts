import type { Step } from '../core/steps/step.ts';
import { picturedSteps } from './assembly-words.ts';
import { chapterDrawings, drawingOfPart } from './drawings.ts';
import type { Book } from './notebooks.ts';
import { partNamed } from './parts.ts';

/** A drawing beside a step, and whether it is a picture of the assembly. */
export type StepPicture = { readonly id: string; readonly assembly: boolean };

/**
 * The drawing that shows best what a step is about: how what it puts in place goes in, else the first part it makes, else
 * its chapter as a whole; null if none.
 */
export function pictureFor(book: Book, step: Step): StepPicture | null {
  const going = goingIn(book, step.fits ?? []);
  if (going !== null) return { id: going, assembly: true };
  const part = step.makes.map((id) => partNamed(book, id)).find((one) => one !== null);
  const ofPart = part === undefined || part === null ? null : drawingOfPart(book, part.id);
  const id = ofPart ?? chapterDrawings(book, step.chapter)[0]?.id ?? null;
  return id === null ? null : { id, assembly: false };
}

/** The picture in which the last of some pieces goes into the bench. */
function goingIn(book: Book, fits: readonly string[]): string | null {
  const pictures = book.notebook.assembly.flatMap((one) => picturedSteps(book, one).steps);
  const own = pictures.filter(({ step }) => step.within === null && step.parts.some((id) => fits.includes(id)));
  return own.at(-1)?.drawing ?? null;
}
