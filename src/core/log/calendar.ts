import { daysOfMonth } from '../units/date.schema.ts';

/** A date's year, month and day; the text must be a calendar date. */
function parts(date: string): [number, number, number] {
  const [year = 0, month = 1, day = 1] = date.split('-').map(Number);
  return [year, month, day];
}

/**
 * Days from 1970-01-01 to a date in the Gregorian calendar, negative before.
 * Years begin in March so that the leap day is their last; 400 years are 146097 days (Richards 2013, ch. 15.11).
 */
export function dayNumber(date: string): number {
  const [year, month, day] = parts(date);
  const marchYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** Days from one date to another, negative when it lies before. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}

/** The same day `months` later, or the month's last when it has no such day; months a whole number >= 0. */
export function addMonths(date: string, months: number): string {
  const [year, month, day] = parts(date);
  const count = year * 12 + (month - 1) + months;
  const [newYear, newMonth] = [Math.floor(count / 12), (count % 12) + 1];
  const newDay = Math.min(day, daysOfMonth(newYear, newMonth));
  const two = (n: number) => String(n).padStart(2, '0');
  return `${String(newYear).padStart(4, '0')}-${two(newMonth)}-${two(newDay)}`;
}
