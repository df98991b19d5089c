import { isoDate, type Day } from '../core/calendar/index.ts';
import type { CycleReport } from './cycle-report.ts';

/** A span of days of the report for a calendar; the words are the face's. */
export interface CalendarSpan {
  readonly kind: 'next-start' | 'scheme-rule';
  readonly id: string;
  readonly from: Day;
  readonly to: Day;
  readonly ruleId: string | null;
}

/** The ranges of the next starts, and the runs of days on which a scheme's rule is likely enough to say. */
export function calendarSpans(report: CycleReport): CalendarSpan[] {
  const spans: CalendarSpan[] = (report.forecast?.starts ?? []).map((s, i) => ({ kind: 'next-start', id: `start-${i + 1}-after-${isoDate(report.forecast!.lastStart)}`, from: s.from, to: s.to, ruleId: null }));
  const open = new Map<string, { from: Day; to: Day }>();
  const close = (ruleId: string): void => {
    const run = open.get(ruleId);
    if (run) spans.push({ kind: 'scheme-rule', id: `${ruleId}-${isoDate(run.from)}`, ...run, ruleId });
    open.delete(ruleId);
  };
  for (const day of report.schemeDays) {
    const said = new Set(day.said.map((r) => r.ruleId));
    for (const ruleId of [...open.keys()]) if (!said.has(ruleId)) close(ruleId);
    for (const ruleId of said) {
      const run = open.get(ruleId);
      open.set(ruleId, { from: run?.from ?? day.day, to: day.day });
    }
  }
  for (const ruleId of [...open.keys()]) close(ruleId);
  return spans.sort((a, b) => a.from - b.from || a.to - b.to);
}
