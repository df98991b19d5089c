import { dayFromParts, partsOfDay, type Day } from '../calendar/index.ts';

export type DateOrder = 'day-first' | 'month-first';

/** A date found in a line. Two-number dates keep both readings until the order is known. */
export interface FoundDate {
  readonly text: string;
  readonly index: number;
  readonly end: number;
  readonly reading: DateReading;
  /** Days either way that the words leave open ("about", "mid-March"). */
  readonly slack: number;
  /** True when the year was not written. */
  readonly yearMissing: boolean;
}

export type DateReading =
  | { readonly kind: 'sure'; readonly year: number; readonly month: number; readonly dayOfMonth: number }
  | { readonly kind: 'two-orders'; readonly year: number; readonly first: number; readonly second: number };

const months = ['january', 'february', 'march', 'april', 'may', 'june', 'july', 'august', 'september', 'october', 'november', 'december'];
const monthPattern = '(jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\\.?';
const weekday = '(?:(?:mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun)(?:day|sday|nesday|rsday|urday)?\\.?,?\\s+)?';
const year4 = '((?:19|20)\\d{2})';
const rough = '(?:(about|around|roughly|approximately|approx\\.?|circa|c\\.|ca\\.?|maybe|~)\\s*)?';

const isoPattern = new RegExp(`${rough}\\b${year4}([-/.])(\\d{1,2})\\3(\\d{1,2})(?![\\d])(?:T[\\d:.]+(?:Z|[+-]\\d{2}:?\\d{2})?)?`, 'gi');
const compactPattern = /\b((?:19|20)\d{2})(\d{2})(\d{2})\b/g;
const numberPattern = new RegExp(`${rough}\\b(\\d{1,2})([-/.])(\\d{1,2})\\3(\\d{4}|\\d{2})(?!\\d)`, 'gi');
const shortPattern = new RegExp(`${rough}\\b(\\d{1,2})([/.])(\\d{1,2})\\.?(?![\\d/.])`, 'gi');
const dayMonthPattern = new RegExp(`${rough}${weekday}\\b(\\d{1,2})(?:st|nd|rd|th)?(?:\\s+of)?[\\s-]+${monthPattern}(?:,?[\\s-]+(?:${year4}|'?(\\d{2})(?!\\d)))?(?![a-z])`, 'gi');
const monthDayPattern = new RegExp(`${rough}${weekday}\\b${monthPattern}[\\s-]+(\\d{1,2})(?:st|nd|rd|th)?(?!\\d)(?:,?[\\s-]+${year4})?`, 'gi');
const partOfMonthPattern = new RegExp(`\\b(early|beginning of|start of|mid|middle of|late|end of)[\\s-]+${monthPattern}(?:,?\\s+${year4})?(?![a-z])`, 'gi');

const dayRangePattern = new RegExp(`\\b(\\d{1,2})\\s*(?:[-–—]|to)\\s*(\\d{1,2})\\s+${monthPattern}(?:,?\\s+${year4})?(?![a-z])`, 'gi');
const monthYearPattern = new RegExp(`\\b${monthPattern}\\s+${year4}`, 'gi');

/** Days a rough word leaves open either way. */
const aboutSlack = 3;
const partOfMonthSlack = 5;
const wholeMonthSlack = 15;

const monthOf = (name: string): number => months.findIndex((m) => m.startsWith(name.toLowerCase().slice(0, 3))) + 1;
const fullYear = (text: string): number => (text.length === 4 ? Number(text) : Number(text) >= 70 ? 1900 + Number(text) : 2000 + Number(text));

/** Every date in a line, in the order written; each stretch of text is read once. */
export function findDates(line: string): FoundDate[] {
  const found: FoundDate[] = [];
  const add = (match: RegExpMatchArray, reading: DateReading, slack: number, yearMissing: boolean): void => {
    const index = match.index ?? 0;
    const end = index + match[0].length;
    if (found.some((f) => index < f.end && end > f.index)) return;
    found.push({ text: match[0].trim(), index, end, reading, slack, yearMissing });
  };
  const slackOf = (word: string | undefined): number => (word ? aboutSlack : 0);
  for (const m of line.matchAll(isoPattern)) add(m, { kind: 'sure', year: Number(m[2]), month: Number(m[4]), dayOfMonth: Number(m[5]) }, slackOf(m[1]), false);
  for (const m of line.matchAll(compactPattern)) add(m, { kind: 'sure', year: Number(m[1]), month: Number(m[2]), dayOfMonth: Number(m[3]) }, 0, false);
  for (const m of line.matchAll(partOfMonthPattern)) {
    const part = m[1]!.toLowerCase();
    const dayOfMonth = /early|beginning|start/.test(part) ? 5 : /mid/.test(part) ? 15 : 25;
    add(m, { kind: 'sure', year: m[3] ? Number(m[3]) : 0, month: monthOf(m[2]!), dayOfMonth }, partOfMonthSlack, !m[3]);
  }
  for (const m of line.matchAll(dayRangePattern)) {
    // "3 to 8 October": two dates in one stretch; the second takes the last letters of it.
    const index = m.index;
    const end = index + m[0].length;
    const year = m[4] ? Number(m[4]) : 0;
    if (found.some((f) => index < f.end && end > f.index) || Number(m[1]) >= Number(m[2])) continue;
    const split = index + m[1]!.length;
    const second = index + m[0].indexOf(m[2]!, m[1]!.length);
    found.push({ text: `${m[1]} ${m[3]}`, index, end: split, reading: { kind: 'sure', year, month: monthOf(m[3]!), dayOfMonth: Number(m[1]) }, slack: 0, yearMissing: !m[4] });
    found.push({ text: `${m[2]} ${m[3]}`, index: second, end, reading: { kind: 'sure', year, month: monthOf(m[3]!), dayOfMonth: Number(m[2]) }, slack: 0, yearMissing: !m[4] });
  }
  for (const m of line.matchAll(dayMonthPattern)) {
    const year = m[4] ?? m[5];
    add(m, { kind: 'sure', year: year ? fullYear(year) : 0, month: monthOf(m[3]!), dayOfMonth: Number(m[2]) }, slackOf(m[1]), !year);
  }
  for (const m of line.matchAll(monthDayPattern)) add(m, { kind: 'sure', year: m[4] ? Number(m[4]) : 0, month: monthOf(m[2]!), dayOfMonth: Number(m[3]) }, slackOf(m[1]), !m[4]);
  for (const m of line.matchAll(numberPattern)) add(m, twoOrders(fullYear(m[5]!), Number(m[2]), Number(m[4]), m[3]!), slackOf(m[1]), false);
  for (const m of line.matchAll(shortPattern)) add(m, twoOrders(0, Number(m[2]), Number(m[4]), m[3]!), slackOf(m[1]), true);
  for (const m of line.matchAll(monthYearPattern)) add(m, { kind: 'sure', year: Number(m[2]), month: monthOf(m[1]!), dayOfMonth: 15 }, wholeMonthSlack, false);
  return found.sort((a, b) => a.index - b.index);
}

/** Full stops are written day first wherever they are written at all; slashes and hyphens are not. */
function twoOrders(year: number, first: number, second: number, separator: string): DateReading {
  return separator === '.' ? { kind: 'sure', year, month: second, dayOfMonth: first } : { kind: 'two-orders', year, first, second };
}

/** The order that the dates of one list show by themselves: 25/03 can only be day first. */
export function orderShown(dates: readonly FoundDate[]): DateOrder | 'mixed' | null {
  let shown: DateOrder | null = null;
  for (const { reading } of dates) {
    if (reading.kind !== 'two-orders') continue;
    const only: DateOrder | null = reading.first > 12 && reading.second <= 12 ? 'day-first' : reading.second > 12 && reading.first <= 12 ? 'month-first' : null;
    if (only === null) continue;
    if (shown !== null && shown !== only) return 'mixed';
    shown = only;
  }
  return shown;
}

/** The day a found date means; a missing year takes `year`. Null when there is no such day. */
export function dayOfFound(date: FoundDate, order: DateOrder, year: number): Day | null {
  const { reading } = date;
  const y = date.yearMissing ? year : reading.year;
  if (reading.kind === 'sure') return dayFromParts(y, reading.month, reading.dayOfMonth);
  return order === 'day-first' ? dayFromParts(y, reading.second, reading.first) : dayFromParts(y, reading.first, reading.second);
}

/** The latest day not after `today` that a date without a year can mean; null when there is none. */
export function latestPast(date: FoundDate, order: DateOrder, today: Day): Day | null {
  const { year } = partsOfDay(today);
  for (const y of [year, year - 1, year - 2, year - 3]) {
    const day = dayOfFound(date, order, y);
    if (day !== null && day <= today) return day;
  }
  return null;
}
