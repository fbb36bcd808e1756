import type { Finding } from '../core/finding.ts';
import type { Sentence } from '../core/units/say.ts';
import { both, type Html, line, text } from './html.ts';
import type { Book } from './notebooks.ts';
import { figureWords, plainName } from './words.ts';

const ID = /[a-z][a-z0-9-]*(?:\.[a-z0-9-]+)+/g;

/** A sentence that names pieces as they are marked on the wood: `strut.along-1` is L1, strut, along 1. */
export function byLabels({ notebook }: Pick<Book, 'notebook'>, sentence: Sentence): Sentence {
  const labels = new Map(notebook.parts.flatMap(({ places }) => places.map(({ id, label }) => [id, label] as const)));
  const named = (id: string) => {
    const label = labels.get(id);
    return label === undefined ? id : `${label} (${plainName(id)})`;
  };
  return sentence.map((said) => (typeof said === 'string' ? said.replaceAll(ID, named) : said));
}

/** The computed figure against its limit. */
export function figureLine({ figure, limit, unit }: Finding): Html {
  if (figure === null) return text('');
  const found = line(text('Found '), both(figureWords(figure, unit)));
  return limit === null ? found : line(found, text(', against a limit of '), both(figureWords(limit, unit)));
}
