import { expect, test } from 'vitest';
import { soldLength } from '../../src/site/hardware-words.ts';

test('hardware keeps the length that shops name, in either unit a page is read in', () => {
  const said = [16, 30, 110, 450].map(soldLength);
  expect(said).toEqual(['16\u00a0mm', '30\u00a0mm', '110\u00a0mm', '450\u00a0mm']);
  const inches = [7 / 16, 0.75, 1.25, 4.5, 16].map((inch) => soldLength(inch * 25.4));
  expect(inches).toEqual(['7/16\u00a0in', '3/4\u00a0in', '1\u00a01/4\u00a0in', '4\u00a01/2\u00a0in', '16\u00a0in']);
});
