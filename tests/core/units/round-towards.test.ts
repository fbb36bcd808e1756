import fc from 'fast-check';
import { expect, test } from 'vitest';
import { roundTowards, stepsOf } from '../../../src/core/units/round.ts';
import { atLeast, atMost, length, say, spoken } from '../../../src/core/units/say.ts';
import { showLength } from '../../../src/core/units/show.ts';

const inInches = (sentence: ReturnType<typeof say>) => spoken(sentence, (mm, way) => showLength(mm, 'in', way));
const inMm = (sentence: ReturnType<typeof say>) => spoken(sentence, (mm, way) => showLength(mm, 'mm', way));

test('a least is shown as no less than it is and a most as no more, in both units', () => {
  expect(inMm(say`${atLeast(92.22)} ${length(92.22)} ${atMost(92.28)} ${length(92.28)}`)).toBe(
    '92.3 mm 92.2 mm 92.2 mm 92.3 mm',
  );
  // 93.2 mm is 3.669 in, between 3 42/64 and 3 43/64
  expect(inInches(say`${atLeast(93.2)} ${atMost(93.2)}`)).toBe('3 43/64 in 3 21/32 in');
  // a hair is a whole step, never nothing
  expect(inInches(say`${atLeast(0.11)}`)).toBe('1/64 in');
});

test('what is on a step already stays there', () => {
  fc.assert(
    fc.property(fc.integer({ min: -5000, max: 50000 }), fc.constantFrom('mm', 'in'), (count, unit) => {
      const step = stepsOf(unit as 'mm' | 'in');
      expect(roundTowards(count * step, step, 'up')).toBeCloseTo(count * step, 9);
      expect(roundTowards(count * step, step, 'down')).toBeCloseTo(count * step, 9);
    }),
    { seed: 3 },
  );
});

test('the step lies on the right side, less than a step away; rounding to the nearest would not, as this law sees', () => {
  const law = (round: (value: number, step: number) => number) =>
    fc.check(
      fc.property(fc.double({ min: 0, max: 3000, noNaN: true }), (value) => {
        const step = stepsOf('in');
        const shown = round(value, step);
        return shown >= value - 1e-5 && shown < value + step + 1e-5;
      }),
      { seed: 7, numRuns: 500 },
    ).failed;
  expect(law((value, step) => roundTowards(value, step, 'up'))).toBe(false);
  expect(law((value, step) => Math.round(value / step) * step)).toBe(true);
});
