/** A length inside a sentence, in mm; shown in the reader's units. */
export type Said = string | { readonly length: number };

/** A sentence whose lengths are still numbers, so that each reader gets them in their own units. */
export type Sentence = readonly Said[];

/** A length to put into a sentence. Unit mm. */
export function length(mm: number): Said {
  return { length: mm };
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

/** The sentence as text, lengths written by `show`. */
export function spoken(sentence: Sentence, show: (mm: number) => string): string {
  return sentence.map((said) => (typeof said === 'string' ? said : show(said.length))).join('');
}
