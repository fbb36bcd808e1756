import { sentencePair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { plainName } from './words.ts';

/** JSON that can stand inside a script element, whatever a title holds. */
export function scriptSafe(value: unknown): string {
  return JSON.stringify(value).replace(
    /[<>&\u2028\u2029]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/** The chapter's steps as schema.org HowTo, or null when it has none. */
export function howTo(book: Book, chapter: string, title: string): string | null {
  const steps = book.notebook.steps.filter((step) => step.chapter === chapter);
  if (steps.length === 0) return null;
  const show = book.notebook.show;
  return scriptSafe({
    '@context': 'https://schema.org',
    '@type': 'HowTo',
    name: `${book.notebook.title}: ${title}`,
    tool: [...new Set(steps.flatMap((step) => step.tools))].map((tool) => ({
      '@type': 'HowToTool',
      name: plainName(tool),
    })),
    step: steps.map((step, i) => ({
      '@type': 'HowToStep',
      position: i + 1,
      name: step.title,
      text: [step.title, ...step.lines.map((line) => sentencePair(line)[show])].join(' '),
    })),
  });
}
