import type { Day } from '../calendar/index.ts';
import type { Person } from '../people/index.ts';
import type { CriterionId } from './referral-parameters.ts';

export const flows = ['none', 'spotting', 'light', 'medium', 'heavy'] as const;
export type Flow = (typeof flows)[number];

/** The first day of a period. `slack`: how many days it may lie either way, 0 when she knows it. */
export interface PeriodStart {
  readonly day: Day;
  readonly slack: number;
  /** Last day of bleeding, when she gave it. */
  readonly lastBleedDay: Day | null;
}

/** What she noted on one day. Null: nothing noted, which is not the same as none. */
export interface DayEntry {
  readonly day: Day;
  readonly flow: Flow | null;
  readonly ovulationTest: 'positive' | 'negative' | null;
  readonly temperatureC: number | null;
  /** A temperature to pass over: fever, a short night, taken late. */
  readonly disturbed: boolean;
  readonly fluid: 'dry' | 'sticky' | 'slippery' | null;
  readonly bleedingAfterSex: boolean;
  /** Her own items on the daily scale of 1 to 6, by name. */
  readonly ratings: ReadonlyMap<string, number>;
  /** Dishes eaten, as she wrote them. */
  readonly eaten: readonly string[];
  readonly note: string | null;
}

export interface CycleRecord {
  readonly starts: readonly PeriodStart[];
  readonly days: readonly DayEntry[];
  readonly person: Person;
  /** Referral questions that her own words answer with yes. */
  readonly answers: readonly CriterionId[];
}

/** Something to ask her or to tell her about her record; words are in messages/cycle.ts. */
export interface RecordFinding {
  readonly code: RecordFindingCode;
  readonly severity: 'question' | 'note';
  /** Line of the text, 1-based; null when it is about the record as a whole. */
  readonly line: number | null;
  readonly data: Readonly<Record<string, string | number>>;
}

export type RecordFindingCode =
  | 'ambiguous-order' | 'mixed-order' | 'unreadable-line' | 'no-such-day' | 'no-dates' | 'year-guessed' | 'future-date' | 'very-old-date'
  | 'same-day-twice' | 'too-near' | 'bleed-not-start' | 'long-gap' | 'bad-cell' | 'age-unlikely';

export interface ReadRecord {
  readonly record: CycleRecord;
  readonly findings: readonly RecordFinding[];
}

export function emptyDay(day: Day): DayEntry {
  return { day, flow: null, ovulationTest: null, temperatureC: null, disturbed: false, fluid: null, bleedingAfterSex: false, ratings: new Map(), eaten: [], note: null };
}
