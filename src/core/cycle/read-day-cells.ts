import { isoDate, type Day } from '../calendar/index.ts';
import { emptyDay, type DayEntry, type Flow, type RecordFinding } from './record.ts';

/** Which column holds what; null: the table has none. */
export interface DayColumns {
  readonly date: number;
  readonly start: number | null;
  readonly flow: number | null;
  readonly spotting: number | null;
  readonly test: number | null;
  readonly temperature: number | null;
  readonly disturbed: number | null;
  readonly fluid: number | null;
  readonly afterSex: number | null;
  readonly eaten: number | null;
  readonly note: number | null;
  readonly items: readonly { readonly name: string; readonly column: number }[];
}

const names = {
  date: /^(?:date|day|when|period start|start)$/i,
  start: /^(?:period|first day|new period|period start|start)\??$/i,
  flow: /^(?:flow|bleeding|bleed)$/i,
  spotting: /^spotting$/i,
  test: /^(?:test|ovulation test|lh|lh test|opk)$/i,
  temperature: /^(?:temp|temperature|waking temperature|basal temperature|bbt)(?:\s*\(?°?\s*[cf]\)?)?$/i,
  disturbed: /^(?:disturbed|ignore|fever|poor reading)$/i,
  fluid: /^(?:fluid|mucus|cervical fluid|cervical mucus|cervical signs?)$/i,
  afterSex: /^(?:bleeding after sex|after sex)$/i,
  eaten: /^(?:eaten|ate|food|food eaten|dishes|meals?|menu)$/i,
  note: /^(?:notes?|remarks?|comment)$/i,
};

export function dayColumns(header: readonly string[]): DayColumns {
  const taken = new Set<number>();
  const take = (name: RegExp): number | null => {
    const found = header.findIndex((h, i) => !taken.has(i) && name.test(h.trim()));
    if (found < 0) return null;
    taken.add(found);
    return found;
  };
  const date = take(names.date) ?? 0;
  taken.add(date);
  const known = { start: take(names.start), flow: take(names.flow), spotting: take(names.spotting), test: take(names.test), temperature: take(names.temperature), disturbed: take(names.disturbed), fluid: take(names.fluid), afterSex: take(names.afterSex), eaten: take(names.eaten), note: take(names.note) };
  const items = header.flatMap((h, column) => (taken.has(column) || h.trim() === '' ? [] : [{ name: h.trim(), column }]));
  return { date, ...known, items };
}

const flowWords: readonly (readonly [RegExp, Flow])[] = [
  [/^(?:0|no|none|-|dry)$/i, 'none'],
  [/^(?:spot|spots|spotting|trace)$/i, 'spotting'],
  [/^(?:1|light|l)$/i, 'light'],
  [/^(?:2|medium|moderate|m|yes|y|x)$/i, 'medium'],
  [/^(?:3|4|heavy|very heavy|h)$/i, 'heavy'],
];
const yes = /^(?:yes|y|x|1|true|start|started|first day)$/i;
const fluidWords: readonly (readonly [RegExp, 'dry' | 'sticky' | 'slippery'])[] = [
  [/^(?:dry|none|no)$/i, 'dry'],
  [/^(?:sticky|creamy|thick|tacky)$/i, 'sticky'],
  [/^(?:slippery|stretchy|egg ?-?white|watery|wet|clear)$/i, 'slippery'],
];

/** Reads one row. A cell that cannot be read is told and left out; an empty one is nothing noted. */
export function readDayCells(day: Day, cells: readonly string[], columns: DayColumns, line: number): { entry: DayEntry; isStart: boolean; findings: RecordFinding[] } {
  const findings: RecordFinding[] = [];
  const at = (column: number | null): string => (column === null ? '' : (cells[column] ?? '').trim());
  const bad = (column: string, text: string): null => {
    findings.push({ code: 'bad-cell', severity: 'note', line, data: { column, text: text.slice(0, 40), day: isoDate(day) } });
    return null;
  };
  const word = <T>(column: number | null, name: string, words: readonly (readonly [RegExp, T])[]): T | null => {
    const text = at(column);
    if (text === '') return null;
    return words.find(([pattern]) => pattern.test(text))?.[1] ?? bad(name, text);
  };
  let flow = word<Flow>(columns.flow, 'flow', flowWords);
  if (yes.test(at(columns.spotting)) && (flow === null || flow === 'none')) flow = 'spotting';
  const ratings = new Map<string, number>();
  for (const item of columns.items) {
    const text = at(item.column);
    if (text === '') continue;
    const value = Number(text.replace(',', '.'));
    if (value >= 1 && value <= 6) ratings.set(item.name, value);
    else bad(item.name, text);
  }
  const eaten = at(columns.eaten);
  const entry: DayEntry = {
    ...emptyDay(day),
    flow,
    ovulationTest: word<'positive' | 'negative'>(columns.test, 'ovulation test', [[/^(?:\+|pos|positive|yes|peak|high|1)$/i, 'positive'], [/^(?:-|neg|negative|no|low|0)$/i, 'negative']]),
    temperatureC: readTemperature(at(columns.temperature), () => bad('temperature', at(columns.temperature))),
    disturbed: yes.test(at(columns.disturbed)),
    fluid: word(columns.fluid, 'fluid', fluidWords),
    bleedingAfterSex: yes.test(at(columns.afterSex)),
    ratings,
    eaten: eaten === '' ? [] : eaten.split(/\s*[|+]\s*|\s*;\s*/).filter((d) => d !== ''),
    note: at(columns.note) || null,
  };
  return { entry, isStart: yes.test(at(columns.start)), findings };
}

/** °C from a cell in °C or °F (95 and more can only be Fahrenheit). */
function readTemperature(text: string, bad: () => null): number | null {
  if (text === '') return null;
  const value = Number(text.replace(',', '.').replace(/\s*°?\s*[cf]$/i, ''));
  if (value >= 34 && value <= 42) return value;
  if (value >= 94 && value <= 107) return Math.round(((value - 32) * 500) / 9) / 100;
  return bad();
}
