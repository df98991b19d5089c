import ical, { ICalCalendarMethod, ICalEventTransparency } from 'ical-generator';
import { addDays, isoDate, type Day } from '../../core/calendar/index.ts';

/** A span of whole days for a calendar. */
export interface CalendarEntry {
  /** Stable from one export to the next, so that a calendar replaces the old entry. */
  readonly id: string;
  readonly from: Day;
  /** The last day, included. */
  readonly to: Day;
  readonly title: string;
  readonly text: string;
}

/** A Date whose own year, month and day are those of the calendar day, which is what the writer prints for whole days. */
function localDate(day: Day): Date {
  const [year, month, dayOfMonth] = isoDate(day).split('-').map(Number) as [number, number, number];
  return new Date(year, month - 1, dayOfMonth, 12);
}

/** Whole-day entries as an iCalendar file (RFC 5545): DTSTART and DTEND as dates, the end excluded, nobody shown as busy. `stamp` is the day the file is made. */
export function calendarFile(name: string, entries: readonly CalendarEntry[], stamp: Day): string {
  const calendar = ical({ name, prodId: { company: 'Truepot', product: 'Truepot', language: 'EN' }, method: ICalCalendarMethod.PUBLISH });
  for (const entry of entries)
    calendar.createEvent({ id: `${entry.id}@truepot`, start: localDate(entry.from), end: localDate(addDays(entry.to, 1)), allDay: true, stamp: localDate(stamp), summary: entry.title, ...(entry.text === '' ? {} : { description: entry.text }), transparency: ICalEventTransparency.TRANSPARENT });
  return calendar.toString();
}
