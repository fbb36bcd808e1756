import { daysOfMonth } from '../units/date.schema.ts';

/** A date's year, month and day; the text must be a calendar date. */
function parts(date: string): [number, number, number] {
  const [year = 0, month = 1, day = 1] = date.split('-').map(Number);
  return [year, month, day];
}

/**
 * Days from 1970-01-01 to a date in the Gregorian calendar, negative before.
 * Years begin in March so that the leap day is their last; 400 years are 146097 days
 * (Hinnant, chrono-compatible low-level date algorithms, days_from_civil).
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

/** The date of a day number, the inverse of `dayNumber` (same source, civil_from_days). */
function dateOfDay(days: number): string {
  const shifted = days + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const leaps = Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36_524) + Math.floor(dayOfEra / 146_096);
  const yearOfEra = Math.floor((dayOfEra - leaps) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1;
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return written(yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day);
}

function written(year: number, month: number, day: number): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`;
}

/** The date a whole number of days later, or earlier. */
export function addDays(date: string, days: number): string {
  return dateOfDay(dayNumber(date) + days);
}

/** The same day `months` later, or the month's last when it has no such day; months a whole number >= 0. */
export function addMonths(date: string, months: number): string {
  const [year, month, day] = parts(date);
  const count = year * 12 + (month - 1) + months;
  const [newYear, newMonth] = [Math.floor(count / 12), (count % 12) + 1];
  return written(newYear, newMonth, Math.min(day, daysOfMonth(newYear, newMonth)));
}
