import { isoDate, type Day } from '../calendar/index.ts';
import { readFact, unknownPerson, withFact, type Person } from '../people/index.ts';
import { dayOfFound, findDates, latestPast, orderShown, type DateOrder, type FoundDate } from './find-dates.ts';
import { isRecordTable, readRecordTable } from './read-record-table.ts';
import type { PeriodStart, ReadRecord, RecordFinding } from './record.ts';
import { answersIn } from './read-answers.ts';
import type { ReadRecordOptions } from './read-options.ts';
import type { CriterionId } from './referral-parameters.ts';
import { tidyStarts } from './tidy-starts.ts';

/**
 * Reads a record as she has it: a pasted list of dates in any common order, lines such as
 * "age: 34" or "pregnant", or a table (CSV) with a day on each row. Nothing that can be read two
 * ways is guessed: it comes back as a question, and the date waits for the answer.
 */
export function readRecord(text: string, options: ReadRecordOptions): ReadRecord {
  const clean = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  return isRecordTable(clean) ? readRecordTable(clean, options) : readDateList(clean, options);
}

interface Line {
  readonly number: number;
  readonly text: string;
  readonly dates: readonly FoundDate[];
}

function readDateList(text: string, options: ReadRecordOptions): ReadRecord {
  const findings: RecordFinding[] = [];
  let person: Person = unknownPerson;
  const lines: Line[] = [];
  const answers = new Set<CriterionId>();
  text.split('\n').forEach((raw, i) => {
    const line = raw.replace(/^\s*(?:#|\/\/|[-*•])\s*/, '').trim();
    if (line === '') return;
    const fact = readFact(line, { kinds: options.kinds, today: options.today, dateIn: (words) => sureDay(findDates(words)[0], options) });
    if (fact) {
      person = withFact(person, fact);
      return;
    }
    const answered = answersIn(line, options.questions);
    for (const id of answered) answers.add(id);
    if (answered.length > 0) return;
    const dates = findDates(line);
    if (dates.length === 0) {
      if (!/^(?:periods?|dates?|first days?|starts?|started|my cycle|cycles?|record|name)\b.{0,40}:?$/i.test(line) && !raw.trim().startsWith('#')) findings.push({ code: 'unreadable-line', severity: 'note', line: i + 1, data: { text: line.slice(0, 80) } });
      return;
    }
    lines.push({ number: i + 1, text: line, dates });
  });
  const order = decideOrder(lines, options.order, findings);
  const starts = lines.flatMap((line) => startsOfLine(line, order, options.today, findings));
  const tidy = tidyStarts(starts, options.today);
  findings.push(...tidy.findings);
  if (starts.length === 0 && !findings.some((f) => f.severity === 'question')) findings.push({ code: 'no-dates', severity: 'note', line: null, data: {} });
  if (person.age !== null && (person.age < 8 || person.age > 70)) findings.push({ code: 'age-unlikely', severity: 'question', line: null, data: { age: person.age } });
  return { record: { starts: tidy.starts, days: [], person, answers: [...answers] }, findings };
}

function sureDay(date: FoundDate | undefined, options: ReadRecordOptions): Day | null {
  if (!date || (date.reading.kind === 'two-orders' && options.order === null)) return null;
  return date.yearMissing ? latestPast(date, options.order ?? 'day-first', options.today) : dayOfFound(date, options.order ?? 'day-first', 0);
}

/** The order that holds for the list: her answer, else what the dates show; null while it must be asked. */
function decideOrder(lines: readonly Line[], answered: DateOrder | null, findings: RecordFinding[]): DateOrder | null {
  const dates = lines.flatMap((l) => l.dates.map((date) => ({ date, line: l.number })));
  const shown = orderShown(dates.map((d) => d.date));
  if (shown === 'mixed') findings.push({ code: 'mixed-order', severity: 'question', line: null, data: {} });
  if (answered) return answered;
  if (shown !== null && shown !== 'mixed') return shown;
  const open = dates.find(({ date }) => date.reading.kind === 'two-orders' && date.reading.first <= 12 && date.reading.second <= 12 && date.reading.first !== date.reading.second);
  if (!open) return shown === 'mixed' ? null : 'day-first';
  const reading = (order: DateOrder): string => {
    const day = dayOfFound(open.date, order, 2024);
    return day === null ? open.date.text : isoDate(day).slice(open.date.yearMissing ? 5 : 0);
  };
  if (shown !== 'mixed') findings.push({ code: 'ambiguous-order', severity: 'question', line: open.line, data: { text: open.date.text, dayFirst: reading('day-first'), monthFirst: reading('month-first') } });
  return null;
}

function startsOfLine(line: Line, order: DateOrder | null, today: Day, findings: RecordFinding[]): PeriodStart[] {
  const read = line.dates.flatMap((date): { day: Day; date: FoundDate }[] => {
    if (date.reading.kind === 'two-orders' && order === null && date.reading.first !== date.reading.second) {
      const only = onlyReading(date);
      return only === null || date.yearMissing ? [] : [{ day: only, date }];
    }
    const day = date.yearMissing ? latestPast(date, order ?? 'day-first', today) : dayOfFound(date, order ?? 'day-first', 0);
    if (day === null) findings.push({ code: 'no-such-day', severity: 'question', line: line.number, data: { text: date.text } });
    else if (date.yearMissing) findings.push({ code: 'year-guessed', severity: 'note', line: line.number, data: { text: date.text, day: isoDate(day) } });
    return day === null ? [] : [{ day, date }];
  });
  const starts: PeriodStart[] = [];
  for (let i = 0; i < read.length; i += 1) {
    const { day, date } = read[i]!;
    const next = read[i + 1];
    const between = next ? line.text.slice(date.end, next.date.index) : '';
    const isRange = next !== undefined && /^\s*(?:to|until|till|through|[-–—])\s*$/i.test(between) && next.day >= day && next.day - day <= 20;
    starts.push({ day, slack: date.slack, lastBleedDay: isRange ? next.day : null });
    if (isRange) i += 1;
  }
  return starts;
}

/** 25/03/2026 has one reading whatever the order of the list. */
function onlyReading(date: FoundDate): Day | null {
  const a = dayOfFound(date, 'day-first', 0);
  const b = dayOfFound(date, 'month-first', 0);
  return a === null ? b : b === null ? a : null;
}
