import type { Finding } from '../core/finding.ts';
import type { Said, Sentence } from '../core/units/say.ts';
import { both, type Html, line, text } from './html.ts';
import type { Book } from './notebooks.ts';
import { figureWords, plainName } from './words.ts';

/** A piece's id, with the label before it where a sentence tells which label it bears: `C1 on strut.across-1`. */
const ID = /(?:\b([A-Z][\w-]*) on )?\b([a-z][a-z0-9-]*(?:\.[a-z0-9-]+)+)/g;

/** A sentence that names pieces as they are marked on the wood: `strut.along-1` is L1, strut, along 1. */
export function byLabels({ notebook }: Pick<Book, 'notebook'>, sentence: Sentence): Sentence {
  const labels = new Map(notebook.parts.flatMap(({ places }) => places.map(({ id, label }) => [id, label] as const)));
  const named = (whole: string, before: string | undefined, id: string) => {
    const label = labels.get(id);
    if (label === undefined) return whole;
    return before === label ? `${label} on ${plainName(id)}` : whole.replace(id, () => `${label} (${plainName(id)})`);
  };
  return inOnePiece(sentence).map((said) => (typeof said === 'string' ? said.replaceAll(ID, named) : said));
}

/** The same sentence with neighbouring words joined, so that a name is never cut in two. */
function inOnePiece(sentence: Sentence): Sentence {
  const pieces: Said[] = [];
  for (const said of sentence) {
    const last = pieces.at(-1);
    if (typeof said === 'string' && typeof last === 'string') pieces[pieces.length - 1] = last + said;
    else pieces.push(said);
  }
  return pieces;
}

/** The computed figure against its limit. */
export function figureLine({ figure, limit, unit }: Finding): Html {
  if (figure === null) return text('');
  const found = line(text('Found '), both(figureWords(figure, unit)));
  return limit === null ? found : line(found, text(', against a limit of '), both(figureWords(limit, unit)));
}
