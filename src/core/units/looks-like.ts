import type { Fault } from './problem.ts';
import type { Dimension } from './quantity.ts';

/** The fault of a text that is shop notation for something else than one value; null when it is none. */
export function looksLike(_text: string, _dimension: Dimension): Fault | null {
  return null;
}
