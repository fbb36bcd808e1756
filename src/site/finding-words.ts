import type { Finding } from '../core/finding.ts';
import { both, type Html, line, text } from './html.ts';
import { figureWords } from './words.ts';

/** The computed figure against its limit. */
export function figureLine({ figure, limit, unit }: Finding): Html {
  if (figure === null) return text('');
  const found = line(text('Found '), both(figureWords(figure, unit)));
  return limit === null ? found : line(found, text(', against a limit of '), both(figureWords(limit, unit)));
}
