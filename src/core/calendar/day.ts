import { AppError, assert } from '../../errors.ts';

declare const dayBrand: unique symbol;

/**
 * A calendar day as the count of days since 1970-01-01 in the proleptic Gregorian
 * calendar. It has no hour and no time zone, so neither can shift it.
 */
export type Day = number & { readonly [dayBrand]: 'day' };

/** A day as `YYYY-MM-DD` (ISO 8601-1:2019, 5.2.2.1). */
export type IsoDate = string;

/** Days from civil date, by Howard Hinnant's algorithm (chrono-Compatible Low-Level Date Algorithms, 2014). */
function daysFromCivil(year: number, month: number, dayOfMonth: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + dayOfMonth - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

/** The day of a year, month (1 to 12) and day of month; null when no such day exists. */
export function dayFromParts(year: number, month: number, dayOfMonth: number): Day | null {
  if (![year, month, dayOfMonth].every(Number.isInteger)) return null;
  if (month < 1 || month > 12 || dayOfMonth < 1 || year < 1 || year > 9999) return null;
  const first = daysFromCivil(year, month, 1);
  const next = month === 12 ? daysFromCivil(year + 1, 1, 1) : daysFromCivil(year, month + 1, 1);
  return dayOfMonth > next - first ? null : ((first + dayOfMonth - 1) as Day);
}

/** Reads `YYYY-MM-DD`; null when the text is not such a date. */
export function readIsoDate(text: string): Day | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  return match ? dayFromParts(Number(match[1]), Number(match[2]), Number(match[3])) : null;
}

/** Reads `YYYY-MM-DD`; throws `bad-date` when the text is not such a date. */
export function day(text: IsoDate): Day {
  const read = readIsoDate(text);
  if (read === null) throw new AppError('bad-date', { text });
  return read;
}

/** The day `count` days later (earlier when negative). `count` must be whole. */
export function addDays(from: Day, count: number): Day {
  assert(Number.isInteger(count), `addDays wants whole days, got ${count}`);
  return (from + count) as Day;
}

/** Whole days from `from` to `to`. */
export function daysBetween(from: Day, to: Day): number {
  return to - from;
}

/** Year, month (1 to 12), day of month and weekday (1 Monday to 7 Sunday, ISO 8601) of a day. */
export function partsOfDay(of: Day): { year: number; month: number; dayOfMonth: number; weekday: number } {
  const z = of + 719468;
  const era = Math.floor(z / 146097);
  const dayOfEra = z - era * 146097;
  const yearOfEra = Math.floor((dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const mp = Math.floor((5 * dayOfYear + 2) / 153);
  const month = mp < 10 ? mp + 3 : mp - 9;
  const weekday = ((((of + 3) % 7) + 7) % 7) + 1;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    dayOfMonth: dayOfYear - Math.floor((153 * mp + 2) / 5) + 1,
    weekday,
  };
}

/** A day as `YYYY-MM-DD`. */
export function isoDate(of: Day): IsoDate {
  const { year, month, dayOfMonth } = partsOfDay(of);
  const pad = (n: number, width: number): string => String(n).padStart(width, '0');
  return `${pad(year, 4)}-${pad(month, 2)}-${pad(dayOfMonth, 2)}`;
}
