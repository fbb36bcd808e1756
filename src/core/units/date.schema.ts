import { z } from 'zod';

const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Days of a month in the Gregorian calendar; 0 for a month that is none. */
export function daysOfMonth(year: number, month: number): number {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return month === 2 && leap ? 29 : (LENGTHS[month - 1] ?? 0);
}

/** Whether a text is a day of the calendar, written year-month-day (ISO 8601). */
export function isCalendarDate(text: string): boolean {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (found === null) return false;
  const day = Number(found[3]);
  return day >= 1 && day <= daysOfMonth(Number(found[1]), Number(found[2]));
}

/** A day, kept as its text: the order of texts is the order of days. */
export const calendarDate = z
  .string()
  .refine(isCalendarDate, { error: 'a day of the calendar, year-month-day: 2026-03-14' })
  .describe('Year-month-day');
