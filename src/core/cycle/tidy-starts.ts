import { daysBetween, isoDate, type Day } from '../calendar/index.ts';
import type { PeriodStart, RecordFinding } from './record.ts';

/** Starts nearer than this are taken for one bleed, and she is asked, days. */
const nearest = 10;
/** A gap above this is told as a hole in the record, days. */
const longest = 150;
/** Dates more than this many days back are questioned (about 60 years). */
const oldest = 22_000;

/**
 * Puts starts in order and takes out what cannot be a start: the same day twice, days to come,
 * days a few days after another start. Each is told or asked; nothing vanishes without a word.
 */
export function tidyStarts(starts: readonly PeriodStart[], today: Day): { starts: PeriodStart[]; findings: RecordFinding[] } {
  const findings: RecordFinding[] = [];
  const kept: PeriodStart[] = [];
  for (const start of [...starts].sort((a, b) => a.day - b.day || a.slack - b.slack)) {
    const day = isoDate(start.day);
    const last = kept.at(-1);
    if (start.day > today) findings.push({ code: 'future-date', severity: 'question', line: null, data: { day } });
    else if (daysBetween(start.day, today) > oldest) findings.push({ code: 'very-old-date', severity: 'question', line: null, data: { day } });
    else if (last?.day === start.day) findings.push({ code: 'same-day-twice', severity: 'note', line: null, data: { day } });
    else if (last && daysBetween(last.day, start.day) < nearest) findings.push({ code: 'too-near', severity: 'question', line: null, data: { day, before: isoDate(last.day), days: daysBetween(last.day, start.day) } });
    else {
      if (last && daysBetween(last.day, start.day) > longest) findings.push({ code: 'long-gap', severity: 'note', line: null, data: { from: isoDate(last.day), to: day, days: daysBetween(last.day, start.day) } });
      kept.push(start);
    }
  }
  return { starts: kept, findings };
}

