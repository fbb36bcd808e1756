import type { Finding } from '../finding.ts';
import { atMost, type Sentence, say } from '../units/say.ts';
import type { Unplaced } from './job.ts';

/** A halt for every part that no stock can give, with the largest piece that could be had. */
export function notPlacedFindings(unplaced: readonly Unplaced[]): readonly Finding[] {
  return unplaced.map((one) => ({
    rule: `cut-${one.why}`,
    level: 'halt',
    where: one.part,
    chapter: 'benchwork',
    what: say`${one.quantity === 1 ? 'one' : String(one.quantity)} of ${one.part} can't be cut: ${reason(one)}`,
    figure: one.quantity,
    limit: 0,
    unit: 'count',
    mend: mend(one),
    source: 'the sheets and boards of the stock file',
    accepted: null,
  }));
}

function reason({ why }: Unplaced): string {
  switch (why) {
    case 'too-large':
      return 'it is larger than any sheet or board of its stock';
    case 'no-stock-left':
      return 'the stock in hand is used up';
    case 'not-a-size':
      return 'its size or number is none';
    case 'too-many':
      return 'there are more pieces than can be laid out at once';
  }
}

function mend({ largest, why }: Unplaced): Sentence {
  if (largest === null || why !== 'too-large') return ['use another stock, or fewer pieces'];
  return say`the largest that fits is ${atMost(largest.length)} by ${atMost(largest.width)}; make it smaller, give it a seam, or name a larger stock`;
}
