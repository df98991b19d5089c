import { isoDate, type Day } from '../calendar/index.ts';
import { readFact, unknownPerson, withFact, type Person } from '../people/index.ts';
import { dayOfFound, findDates, latestPast, orderShown, type DateOrder, type FoundDate } from './find-dates.ts';
import type { ReadRecordOptions } from './read-options.ts';
import { dayColumns, readDayCells, type DayColumns } from './read-day-cells.ts';
import type { DayEntry, PeriodStart, ReadRecord, RecordFinding } from './record.ts';
import { answersIn, answersInDays } from './read-answers.ts';
import type { CriterionId } from './referral-parameters.ts';
import { startsFromFlow } from './starts-from-flow.ts';
import { splitRow, tableDelimiter } from './table-rows.ts';
import { tidyStarts } from './tidy-starts.ts';

/** Whether the text is a table: a header row that names a date column among others. */
export function isRecordTable(text: string): boolean {
  const header = headerOf(text.split('\n'));
  return header !== null;
}

function headerOf(lines: readonly string[]): { index: number; cells: string[]; delimiter: string } | null {
  for (let i = 0; i < lines.length; i += 1) {
    const line = lines[i]!;
    if (line.trim() === '' || line.trim().startsWith('#')) continue;
    const delimiter = tableDelimiter(line);
    const cells = splitRow(line, delimiter);
    const named = cells.length > 1 ? cells.some((c) => /^(?:date|day|when|period start|start)$/i.test(c.trim())) : /^(?:date|period start|start)$/i.test(line.trim());
    return named && findDates(line).length === 0 ? { index: i, cells, delimiter } : null;
  }
  return null;
}

/** Reads a table with a day on each row. Columns it does not know are items of hers on the scale of 1 to 6 where all cells are such numbers. */
export function readRecordTable(text: string, options: ReadRecordOptions): ReadRecord {
  const lines = text.split('\n');
  const header = headerOf(lines)!;
  const findings: RecordFinding[] = [];
  let person: Person = unknownPerson;
  const answers = new Set<CriterionId>();
  for (const line of lines.slice(0, header.index)) {
    const fact = readFact(line.replace(/^\s*#\s*/, ''), { kinds: options.kinds, today: options.today, dateIn: (words) => isoIn(words) });
    if (fact) person = withFact(person, fact);
    else for (const id of answersIn(line, options.questions)) answers.add(id);
  }
  const columns = dayColumns(header.cells);
  const rows = lines.slice(header.index + 1).flatMap((line, i) => (line.trim() === '' ? [] : [{ number: header.index + 2 + i, cells: splitRow(line, header.delimiter) }]));
  const dated = rows.map((row) => ({ ...row, date: findDates(row.cells[columns.date] ?? '')[0] }));
  const order = orderOf(dated, options.order, findings);
  const days: DayEntry[] = [];
  const starts: PeriodStart[] = [];
  for (const row of dated) {
    const day = row.date ? dayOf(row.date, order, options.today) : null;
    if (day === null) {
      if (!row.date || order !== null) findings.push({ code: 'unreadable-line', severity: 'note', line: row.number, data: { text: (row.cells[columns.date] ?? '').slice(0, 80) } });
      continue;
    }
    if (day > options.today) {
      findings.push({ code: 'future-date', severity: 'question', line: row.number, data: { day: isoDate(day) } });
      continue;
    }
    if (isStartOnly(columns)) starts.push({ day, slack: row.date?.slack ?? 0, lastBleedDay: null });
    else {
      const read = readDayCells(day, row.cells, columns, row.number);
      findings.push(...read.findings);
      days.push(read.entry);
      if (read.isStart) starts.push({ day, slack: 0, lastBleedDay: null });
    }
  }
  days.sort((a, b) => a.day - b.day);
  for (const id of answersInDays(days, options.questions)) answers.add(id);
  if (starts.length === 0 || columns.start === null) {
    const fromFlow = startsFromFlow(days);
    starts.push(...fromFlow.starts);
    findings.push(...fromFlow.findings);
  }
  const tidy = tidyStarts(starts, options.today);
  findings.push(...tidy.findings);
  if (days.length === 0 && starts.length === 0 && !findings.some((f) => f.severity === 'question')) findings.push({ code: 'no-dates', severity: 'note', line: null, data: {} });
  return { record: { starts: tidy.starts, days, person, answers: [...answers] }, findings };
}

const isStartOnly = (columns: DayColumns): boolean => columns.flow === null && columns.start === null && columns.items.length === 0 && columns.temperature === null && columns.test === null && columns.fluid === null && columns.spotting === null;

function isoIn(words: string): Day | null {
  const date = findDates(words)[0];
  return date && date.reading.kind === 'sure' && !date.yearMissing ? dayOfFound(date, 'day-first', 0) : null;
}

function dayOf(date: FoundDate, order: DateOrder | null, today: Day): Day | null {
  if (order === null && date.reading.kind === 'two-orders') return null;
  return date.yearMissing ? latestPast(date, order ?? 'day-first', today) : dayOfFound(date, order ?? 'day-first', 0);
}

function orderOf(rows: readonly { number: number; date: FoundDate | undefined }[], answered: DateOrder | null, findings: RecordFinding[]): DateOrder | null {
  if (answered) return answered;
  const dates = rows.flatMap((r) => (r.date ? [r.date] : []));
  const shown = orderShown(dates);
  if (shown === 'mixed') findings.push({ code: 'mixed-order', severity: 'question', line: null, data: {} });
  else if (shown) return shown;
  const open = rows.find((r) => r.date?.reading.kind === 'two-orders');
  if (!open?.date) return 'day-first';
  const reading = (order: DateOrder): string => {
    const day = dayOfFound(open.date!, order, 2024);
    return day === null ? open.date!.text : isoDate(day);
  };
  if (shown !== 'mixed') findings.push({ code: 'ambiguous-order', severity: 'question', line: open.number, data: { text: open.date.text, dayFirst: reading('day-first'), monthFirst: reading('month-first') } });
  return null;
}
