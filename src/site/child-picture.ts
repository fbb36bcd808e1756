import type { Step } from '../core/steps/step.ts';
import { chapterDrawings, drawingOfPart } from './drawings.ts';
import type { Book } from './notebooks.ts';
import { partNamed } from './parts.ts';

/** The drawing that shows best what a step is about: the first part it makes, else its chapter as a whole; null if none. */
export function pictureFor(book: Book, step: Step): string | null {
  const part = step.makes.map((id) => partNamed(book, id)).find((one) => one !== null);
  const ofPart = part === undefined || part === null ? null : drawingOfPart(book, part.id);
  return ofPart ?? chapterDrawings(book, step.chapter)[0]?.id ?? null;
}
