/** The sky of the day. */
import { InputError } from "#core/seams/errors.ts";

const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;

/**
 * The seed word of a day's sky, the same for everyone.
 * @param utcDate the date in UTC, as in "2027-10-29"
 * @throws InputError where that is no day of the calendar
 */
export function dailySeed(utcDate: string): string {
  const [, year, month, day] = (DATE.exec(utcDate) ?? []).map(Number);
  if (year === undefined || month === undefined || day === undefined || day < 1 || day > daysOf(year, month))
    throw new InputError(`"${utcDate}" is no date`, "Write year, month and day, as in 2027-10-29.");
  return utcDate;
}

/** Days of a month 1 to 12 by the Gregorian rule; 0 where there is no such month. */
function daysOf(year: number, month: number): number {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
}
