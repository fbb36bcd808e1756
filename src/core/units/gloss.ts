import { oneLength, shopText } from './one-length.ts';
import { roundTo } from './round.ts';

/** A length with the same length in other words beside it; all in mm. */
export type Gloss = { readonly text: string; readonly mm: number; readonly gloss: number; readonly apart: number };

const GLOSS =
  /^([^()]+?) *\((?:(?:approx\.?|approximately|about|around|roughly|ca\.?|nearly|say|or) +|~ *|= *)?([^()]+)\)$/i;

/** A length with a gloss in parentheses: `900mm (approx 3ft)`; null when the text is anything else. */
export function readGloss(text: string): Gloss | null {
  const [, value = '', other = ''] = GLOSS.exec(shopText(text) ?? '') ?? [];
  const [mm, gloss] = [oneLength(value.trim()), oneLength(other.trim())];
  return mm === null || gloss === null
    ? null
    : { text: value.trim(), mm, gloss, apart: roundTo(Math.abs(mm - gloss), 1e-6) };
}
