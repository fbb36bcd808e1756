import type { Way } from './round.ts';

/** A length inside a sentence, in mm; shown in the reader's units. */
export type Said = string | { readonly length: number; readonly way?: Way };

/** A sentence whose lengths are still numbers, so that each reader gets them in their own units. */
export type Sentence = readonly Said[];

/** Words with a capital at their head. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A length to put into a sentence. Unit mm. */
export function length(mm: number): Said {
  return { length: mm };
}

/** A length that must be reached: what is shown of it is enough. Unit mm. */
export function atLeast(mm: number): Said {
  return { length: mm, way: 'up' };
}

/** A length that may not be passed: what is shown of it is not too much. Unit mm. */
export function atMost(mm: number): Said {
  return { length: mm, way: 'down' };
}

/** say`slot ${length(18)} wide` keeps the 18 mm as a number. */
export function say(words: TemplateStringsArray, ...values: readonly Said[]): Sentence {
  const sentence: Said[] = [];
  words.forEach((word, i) => {
    if (word !== '') sentence.push(word);
    const value = values[i];
    if (value !== undefined && value !== '') sentence.push(value);
  });
  return sentence;
}

/** Writes a length for a reader; a way tells where to it is rounded, the nearest when there is none. */
export type ShowLength = (mm: number, way?: Way) => string;

/** The sentence as text, lengths written by `show`. */
export function spoken(sentence: Sentence, show: ShowLength): string {
  return sentence.map((said) => (typeof said === 'string' ? said : show(said.length, said.way))).join('');
}
