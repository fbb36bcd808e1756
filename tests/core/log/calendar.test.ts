import { describe, expect, test } from 'vitest';
import { addDays, addMonths, dayNumber, daysBetween } from '../../../src/core/log/calendar.ts';

const DAY = 86_400_000;

describe('days', () => {
  // The reference is the Date of ECMAScript (ECMA-262, Day Number and Time within Day), in UTC.
  test('are counted as ECMAScript counts them, every day of two centuries and both ways', () => {
    for (let day = -36_524; day < 60_000; day += 1) {
      const date = new Date(day * DAY).toISOString().slice(0, 10);
      if (dayNumber(date) !== day || addDays('1970-01-01', day) !== date) throw new Error(date);
    }
    expect(daysBetween('2026-02-28', '2026-03-01')).toBe(1);
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
    expect(daysBetween('2026-03-01', '2026-02-28')).toBe(-1);
  });

  test('keep their number in the month, or take its last', () => {
    expect(addMonths('2026-03-14', 12)).toBe('2027-03-14');
    expect(addMonths('2026-01-31', 1)).toBe('2026-02-28');
    expect(addMonths('2027-12-31', 2)).toBe('2028-02-29');
    expect(addMonths('2026-11-30', 3)).toBe('2027-02-28');
  });
});
