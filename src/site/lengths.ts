import { roundTowards } from '../core/units/round.ts';
import { type Sentence, spoken } from '../core/units/say.ts';
import type { DrawingUnit } from '../drawing/drawing.ts';
import { cutText, leastStep, saidLength, sizeText } from '../drawing/figures.ts';

/** The same words for readers of either unit. */
export type Pair = { readonly mm: string; readonly in: string };

function pair(words: (unit: DrawingUnit) => string): Pair {
  return { mm: words('mm'), in: words('in') };
}

/** A figure is never broken over two lines: its spaces hold. */
function held(figure: string): string {
  return figure.replaceAll(' ', '\u00A0');
}

/** A length in words; 63- in is a hair under 63, as on the drawings. */
function said(mm: number, unit: DrawingUnit): string {
  return held(saidLength(mm, unit));
}

/** A length in both units, rounded as the drawings round it, with its unit. mm. */
export function lengthPair(mm: number): Pair {
  return pair((unit) => said(mm, unit));
}

/** A length in both units without the unit, for columns that name it. mm. */
export function figurePair(mm: number): Pair {
  return pair((unit) => held(sizeText(mm, unit)));
}

/** The width or depth of a cut in both units without the unit. mm. */
export function cutPair(mm: number): Pair {
  return pair((unit) => held(cutText(mm, unit)));
}

/** Several lengths as one size without the unit. mm. */
export function figuresPair(lengths: readonly number[]): Pair {
  return pair((unit) => lengths.map((mm) => held(sizeText(mm, unit))).join(' × '));
}

/** Several lengths as one size: 1600 × 170 × 18 mm. */
export function sizePair(lengths: readonly number[]): Pair {
  return pair(
    (unit) => `${lengths.map((mm) => said(mm, unit).replace(/\u00A0(?:mm|in)$/, '')).join(' × ')}\u00A0${unit}`,
  );
}

/** A sentence that stands alone: it begins with a capital, unless with a name, and ends. */
export function wholeSentence(sentence: Sentence): Pair {
  const words = sentencePair(sentence);
  const whole = (text: string) => {
    const first = /^[a-z]+(?=[\s,:]|$)/.test(text) ? text.charAt(0).toUpperCase() + text.slice(1) : text;
    return /[.!?:]$/.test(first) ? first : `${first}.`;
  };
  return { mm: whole(words.mm), in: whole(words.in) };
}

/** A sentence in both units. */
export function sentencePair(sentence: Sentence): Pair {
  return pair((unit) =>
    spoken(sentence, (mm, way) => said(way === undefined ? mm : roundTowards(mm, leastStep[unit], way), unit)),
  );
}
