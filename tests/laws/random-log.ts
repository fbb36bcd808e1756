import fc from 'fast-check';
import type { LogRecord } from '../../src/core/log/record.ts';
import { entry, records } from '../core/log/entries.ts';

const INSTANCES = [
  'side.front',
  'side.back',
  'end.left',
  'strut.across-1',
  'strut.across-2',
  'deck.1',
  'drawer.front-9',
];
const STEPS = ['rip', 'crosscut', 'rout', 'table-glue', 'table-deck', 'wiring.gone'];

const some = (names: readonly string[]) => fc.uniqueArray(fc.constantFrom(...names), { maxLength: 3 });

const day = fc
  .record({ month: fc.integer({ min: 1, max: 12 }), day: fc.integer({ min: 1, max: 28 }) })
  .map((one) => `2026-${String(one.month).padStart(2, '0')}-${String(one.day).padStart(2, '0')}`);

const fix = fc
  .record({ part: fc.constantFrom(...INSTANCES), leaves: fc.constantFrom('full', 'half', 'nothing') })
  .map(({ part, leaves }) => ({ part, leaves, at: '10 mm', what: 'split', mend: 'glue' }));

const keys = fc.record({
  chapter: fc.constantFrom('benchwork', 'wiring'),
  made: some(INSTANCES),
  placed: some(INSTANCES),
  apart: some(INSTANCES),
  done: some(STEPS),
  fix: fc.array(fix, { maxLength: 2 }),
  minutes: fc.option(fc.integer({ min: 0, max: 600 }).map(String)),
  people: fc.option(fc.integer({ min: 1, max: 4 }).map(String)),
  cents: fc.option(fc.integer({ min: 0, max: 99_999 })),
  currency: fc.constantFrom('EUR', 'USD'),
});

/** A log of up to a dozen entries: parts made twice, lost, placed before they were made, steps the plan has not. */
export const randomLog: fc.Arbitrary<readonly LogRecord[]> = fc
  .array(fc.tuple(day, keys), { maxLength: 12 })
  .map((list) =>
    records(
      ...list.map(([date, { minutes, people, cents, currency, ...raw }], i) =>
        entry(`${date}-e-${i}`, {
          ...raw,
          ...(minutes === null ? {} : { minutes }),
          ...(people === null ? {} : { people }),
          ...(cents === null ? {} : { spent: `${(cents / 100).toFixed(2)} ${currency}` }),
        }),
      ),
    ),
  );

/** A chain of widths set one after the other, each `was` the last `to`; the days rise. */
export const randomChain: fc.Arbitrary<readonly (readonly [was: number, to: number])[]> = fc
  .array(fc.integer({ min: 500, max: 2000 }), { minLength: 2, maxLength: 8 })
  .map((widths) => widths.slice(1).map((to, i) => [widths[i] ?? 0, to] as const));
