import { daysBetween, isoDate } from '../calendar/index.ts';
import type { DayEntry, PeriodStart, RecordFinding } from './record.ts';

/** A pause of at most this many days does not end a bleed. */
const pause = 2;
/** A bleed that begins sooner than this after the last start is not taken for a new period, days. */
const soonest = 15;

/**
 * First days of periods out of flow noted by day: a bleed (more than spotting) that does not
 * follow another within two days. One that comes too soon after a start is told as bleeding
 * between periods.
 */
export function startsFromFlow(days: readonly DayEntry[]): { starts: PeriodStart[]; findings: RecordFinding[] } {
  const bleeding = days.filter((d) => d.flow !== null && d.flow !== 'none' && d.flow !== 'spotting');
  const starts: PeriodStart[] = [];
  const findings: RecordFinding[] = [];
  let open: { first: DayEntry; last: DayEntry } | null = null;
  const close = (): void => {
    if (!open) return;
    const before = starts.at(-1);
    const since = before ? daysBetween(before.day, open.first.day) : Infinity;
    if (since >= soonest) starts.push({ day: open.first.day, slack: 0, lastBleedDay: open.last.day });
    else findings.push({ code: 'bleed-not-start', severity: 'question', line: null, data: { day: isoDate(open.first.day), days: since } });
    open = null;
  };
  for (const day of bleeding) {
    if (open && daysBetween((open as { last: DayEntry }).last.day, day.day) <= pause + 1) open = { first: (open as { first: DayEntry }).first, last: day };
    else {
      close();
      open = { first: day, last: day };
    }
  }
  close();
  return { starts, findings };
}
