import ical, { ICalCalendarMethod, ICalEventTransparency } from 'ical-generator';
import { addDays, type Day } from '../../core/calendar/index.ts';

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

/** Noon of the day in universal time: the writer prints a whole day from its universal parts, so no zone can shift it. */
function noon(day: Day): Date {
  return new Date(Date.UTC(1970, 0, 1 + day, 12));
}

/** Whole-day entries as an iCalendar file (RFC 5545): DTSTART and DTEND as dates, the end excluded, nobody shown as busy. `stamp` is the day the file is made. */
export function calendarFile(name: string, entries: readonly CalendarEntry[], stamp: Day): string {
  const calendar = ical({ name, prodId: { company: 'Truepot', product: 'Truepot', language: 'EN' }, method: ICalCalendarMethod.PUBLISH });
  for (const entry of entries)
    calendar.createEvent({ id: `${entry.id}@truepot`, start: noon(entry.from), end: noon(addDays(entry.to, 1)), allDay: true, stamp: noon(stamp), summary: entry.title, ...(entry.text === '' ? {} : { description: entry.text }), transparency: ICalEventTransparency.TRANSPARENT });
  return calendar.toString();
}
