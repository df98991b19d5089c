import { addDays, daysBetween, type Day } from '../core/calendar/index.ts';
import {
  buildCycleModel, dayPhases, drawFutures, forecastCycles, historyOf, itemNames, menuChange, nextCycle, ratingCurve, ratingSummary, readRecord, referralFlags, unrecordedInGap,
  type CycleForecast, type CycleModel, type CycleRecord, type CurvePoint, type DateOrder, type DayPhases, type Future, type History, type MenuChangeItem, type RatingSummary, type RecordFinding, type ReferralFlag, type RunningCycle,
} from '../core/cycle/index.ts';
import { boundsFor, phaseAnswer, type PhaseAnswer, type SafetyBounds } from '../core/people/index.ts';
import { boundScheme, compareFixed, layScheme, type BoundedScheme, type FixedComparison, type Scheme, type SchemeDay } from '../core/scheme/index.ts';
import type { CycleTables } from './cycle-tables.ts';

export interface CycleChoices {
  readonly today: Day;
  /** Her answer to "which comes first, day or month?". */
  readonly order: DateOrder | null;
  readonly scheme: Scheme;
  /** How many days ahead the day table runs. */
  readonly days: number;
  /** She says that no period has started since the last one in the record. */
  readonly noneSince: boolean;
  readonly menuChanged: Day | null;
  readonly seed: number;
}

/** Ways the coming weeks may go that phase chances are counted over: good to about one in a hundred. */
export const futureCount = 3000;
/** With this many days gone since the last start, forecasting gives way to a question. */
const farGone = 120;

export interface CycleReport {
  readonly today: Day;
  readonly record: CycleRecord;
  readonly findings: readonly RecordFinding[];
  readonly phaseUse: PhaseAnswer;
  readonly bounds: SafetyBounds;
  readonly history: History;
  /** Per recorded cycle the chance that it hides a start never written down. */
  readonly unrecorded: readonly number[];
  /** Null: no start to count from, no phases in her state, or too long ago. */
  readonly forecast: CycleForecast | null;
  readonly whyNoForecast: 'no-start' | 'no-phases' | 'too-long-ago' | null;
  readonly phases: readonly DayPhases[];
  readonly scheme: BoundedScheme;
  readonly schemeDays: readonly SchemeDay[];
  readonly comparison: FixedComparison | null;
  readonly flags: readonly ReferralFlag[];
  readonly ratings: RatingSummary;
  readonly curves: readonly { readonly item: string; readonly points: readonly CurvePoint[] }[];
  readonly menuChange: readonly MenuChangeItem[] | null;
}

export interface CycleDesk {
  readonly tables: CycleTables;
  workOut(text: string, choices: CycleChoices): CycleReport;
}

/** The use case behind `truepot cycle`: a record in, a report out. Nothing is kept. */
export function cycleDesk(tables: CycleTables): CycleDesk {
  let model: CycleModel | null = null;
  return {
    tables,
    workOut: (text, choices) => workOut(tables, (model ??= buildCycleModel(tables.model)), text, choices),
  };
}

function workOut(tables: CycleTables, model: CycleModel, text: string, choices: CycleChoices): CycleReport {
  const { today } = choices;
  const { record, findings } = readRecord(text, { order: choices.order, today, kinds: tables.lifeStates, questions: tables.referral.questions });
  const history = historyOf(tables.model, record, today);
  const phaseUse = phaseAnswer(tables.lifeStates, record.person, today);
  const bounds = boundsFor(tables.safety, record.person, today);
  const next = nextCycle(model, { cycles: history.cycles, age: record.person.age });
  const unrecorded = history.cycles.map((c) => (c.length <= tables.model.longestTold ? unrecordedInGap(next.posterior, c.length) : 1));
  const elapsed = history.lastStart === null ? 0 : daysBetween(history.lastStart, today);
  const whyNoForecast = phaseUse.use === 'none' ? 'no-phases' : history.lastStart === null ? 'no-start' : elapsed > farGone ? 'too-long-ago' : null;
  const scheme = boundScheme(choices.scheme, bounds);
  const starts = record.starts.map((s) => s.day);
  const base = {
    today, record, findings, phaseUse, bounds, history, unrecorded, scheme,
    flags: referralFlags(tables.referral, { record, cycles: history.cycles, unrecorded, answers: record.answers, today }),
    ratings: ratingSummary(tables.ratings, record.days, starts),
    curves: itemNames(record.days).map((item) => ({ item, points: ratingCurve(tables.ratings, record.days, starts, item) })),
    menuChange: choices.menuChanged === null ? null : menuChange(tables.ratings, record.days, starts, choices.menuChanged),
  };
  if (whyNoForecast !== null || history.lastStart === null) return { ...base, forecast: null, whyNoForecast: whyNoForecast ?? 'no-start', phases: [], schemeDays: [], comparison: null };
  const running: RunningCycle = { elapsed, confirmed: choices.noneSince, signs: history.runningSigns?.weights ?? null };
  const to = addDays(today, choices.days - 1);
  const futures = drawFutures(next.posterior, { lastStart: history.lastStart, running, until: to, count: futureCount, seed: choices.seed, bleed: history.bleed });
  const forecast = forecastCycles(next, history.lastStart, running);
  const span = { from: today, to, starts: [history.lastStart, ...forecast.starts.map((s) => s.likely)] };
  return {
    ...base,
    whyNoForecast: null,
    forecast,
    phases: dayPhases(futures, today, to, tables.model.phases),
    schemeDays: scheme.scheme.rules.length > 0 ? layScheme(scheme.scheme, futures, span) : [],
    comparison: compareFixed(choices.scheme, wholeCycles(futures)),
  };
}

/** Cycles that run their whole course in each future. */
function wholeCycles(futures: readonly Future[]): Future[] {
  return futures.map((f) => f.slice(0, 3));
}
