import { type Sentence, spoken } from '../core/units/say.ts';

/** The same words for readers of either unit. */
export type Pair = { readonly mm: string; readonly in: string };

function inMillimetres(mm: number): string {
  return `${Number(mm.toFixed(1))} mm`;
}

function inInches(mm: number): string {
  const parts = Math.round((Math.abs(mm) / 25.4) * 32);
  const whole = Math.floor(parts / 32);
  let [top, under] = [parts % 32, 32];
  while (top > 0 && top % 2 === 0) [top, under] = [top / 2, under / 2];
  const fraction = top > 0 ? `${top}/${under}` : '';
  const words = [whole > 0 || top === 0 ? String(whole) : '', fraction].filter((word) => word !== '').join(' ');
  return `${mm < 0 && parts > 0 ? '−' : ''}${words} in`;
}

/** A length in both units, with its unit. mm. */
export function lengthPair(mm: number): Pair {
  return { mm: inMillimetres(mm), in: inInches(mm) };
}

/** A length in both units without the unit, for columns that name it. mm. */
export function figurePair(mm: number): Pair {
  return { mm: inMillimetres(mm).replace(/ mm$/, ''), in: inInches(mm).replace(/ in$/, '') };
}

/** A sentence in both units. */
export function sentencePair(sentence: Sentence): Pair {
  return { mm: spoken(sentence, inMillimetres), in: spoken(sentence, inInches) };
}
