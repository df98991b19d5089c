import { daysBetween, isoDate, type Day } from '../calendar/index.ts';
import { statesOn, type LifeStateId } from '../people/index.ts';
import type { CycleRecord } from './record.ts';
import { urgencies, type CriterionId, type CycleLimits, type ReferralParameters, type Urgency } from './referral-parameters.ts';
import type { HistoryCycle } from './history.ts';

/** A reason to talk to a doctor, by a published criterion. Never a diagnosis. */
export interface ReferralFlag {
  readonly id: CriterionId;
  readonly urgency: Urgency;
  /** How often it was met, of how many times it could have been; null where once is enough. */
  readonly met: number | null;
  readonly of: number | null;
  readonly source: string;
  readonly locator: string;
  readonly data: Readonly<Record<string, string | number>>;
}

export interface FlagRequest {
  readonly record: CycleRecord;
  readonly cycles: readonly HistoryCycle[];
  /** Per cycle, the chance that it hides a start never written down: such gaps are not held against her. */
  readonly unrecorded: readonly number[];
  readonly answers: readonly CriterionId[];
  readonly today: Day;
}

const noCycleOfHerOwn: readonly LifeStateId[] = ['combined-pill', 'continuous-hormones', 'progestogen-pill', 'implant-or-injection', 'hormonal-iud', 'pregnant', 'after-menopause'];

interface Context {
  readonly request: FlagRequest;
  readonly parameters: ReferralParameters;
  readonly limits: CycleLimits;
  readonly states: ReadonlySet<LifeStateId>;
  /** Whole cycles of about the last year that are surely one cycle. */
  readonly recent: readonly HistoryCycle[];
  readonly flags: ReferralFlag[];
}

/** All flags, the most urgent first; among equals the most persistent first. */
export function referralFlags(parameters: ReferralParameters, request: FlagRequest): ReferralFlag[] {
  const { age } = request.record.person;
  const { lookBack, teen, adult } = parameters.limits;
  const context: Context = {
    request,
    parameters,
    limits: age !== null && age < teen.underAge ? teen : adult,
    states: new Set(statesOn(request.record.person, request.today)),
    recent: request.cycles.filter((c, i) => (request.unrecorded[i] ?? 0) < 0.5 && daysBetween(c.start, request.today) <= lookBack.days).slice(-lookBack.cycles),
    flags: [],
  };
  for (const answer of request.answers) add(context, answer, {});
  bleedingFlags(context);
  if (![...context.states].some((s) => noCycleOfHerOwn.includes(s))) {
    absenceFlags(context);
    lengthFlags(context);
  }
  if (context.states.has('low-energy-signs')) add(context, 'low-energy', {});
  return context.flags.sort((a, b) => urgencies.indexOf(a.urgency) - urgencies.indexOf(b.urgency) || (b.met ?? 0) - (a.met ?? 0));
}

interface Detail {
  readonly data?: Readonly<Record<string, string | number>>;
  readonly met?: number;
  readonly of?: number;
  readonly urgency?: Urgency;
}

function add(context: Context, id: CriterionId, detail: Detail): void {
  if (context.flags.some((f) => f.id === id)) return;
  const criterion = context.parameters.criteria.find((c) => c.id === id);
  if (!criterion) return;
  context.flags.push({ id, urgency: detail.urgency ?? criterion.urgency, met: detail.met ?? null, of: detail.of ?? null, source: criterion.source, locator: criterion.locator, data: detail.data ?? {} });
}

/** Bleeding outside periods, after sex, after menopause. */
function bleedingFlags(context: Context): void {
  const { request, parameters } = context;
  const { afterMenopause, edgeDays } = parameters.limits;
  const { age } = request.record.person;
  const bled = request.record.days.filter((d) => d.flow !== null && d.flow !== 'none');
  const menopause = request.record.person.states.find((s) => s.id === 'after-menopause');
  const bleedAfter = menopause ? [...request.record.starts.map((s) => s.day), ...bled.map((d) => d.day)].filter((d) => menopause.from === null || d >= menopause.from) : [];
  const longGap = request.cycles.find((c) => c.length > afterMenopause.months * 30.4);
  if (bleedAfter.length > 0 || (longGap && age !== null && age >= afterMenopause.likelyFromAge))
    add(context, 'bleeding-after-menopause', { data: { day: isoDate(bleedAfter.length > 0 ? (Math.max(...bleedAfter) as Day) : ((longGap!.start + longGap!.length) as Day)), age: age ?? 'unknown', urgentFromAge: afterMenopause.urgentFromAge } });
  const afterSex = request.record.days.filter((d) => d.bleedingAfterSex);
  if (afterSex.length > 0) add(context, 'bleeding-after-sex', { met: afterSex.length, data: { day: isoDate(afterSex.at(-1)!.day) } });
  if ([...context.states].some((s) => noCycleOfHerOwn.includes(s))) return;
  const between = bled.filter((d) => {
    const period = request.record.starts.filter((s) => s.day - edgeDays.days <= d.day).at(-1);
    if (!period) return false;
    const end = request.cycles.find((c) => c.start === period.day)?.bleedDays ?? (period.lastBleedDay === null ? null : daysBetween(period.day, period.lastBleedDay) + 1);
    return daysBetween(period.day, d.day) + 1 > Math.max(end ?? 0, context.limits.bleedDays) + edgeDays.days;
  });
  const cyclesWith = new Set(between.map((d) => request.record.starts.filter((s) => s.day <= d.day).at(-1)?.day));
  if (between.length > 0) add(context, 'bleeding-between', { met: cyclesWith.size, of: Math.max(1, request.cycles.length), data: { day: isoDate(between.at(-1)!.day), days: between.length } });
}

/** No period for long, or a regular one that is late. */
function absenceFlags(context: Context): void {
  const { request, parameters, recent, states } = context;
  const { noBleeding, late, regularity, transition } = parameters.limits;
  const last = request.record.starts.at(-1);
  if (!last) {
    if (states.has('no-periods')) add(context, 'no-bleeding', { data: { days: 'unknown' } });
    return;
  }
  const gone = daysBetween(last.day, request.today);
  const { age } = request.record.person;
  if (gone >= noBleeding.days && !states.has('breastfeeding')) add(context, 'no-bleeding', { data: { days: gone, since: isoDate(last.day) } });
  const lengths = recent.map((c) => c.length).sort((a, b) => a - b);
  const middle = lengths[Math.floor(lengths.length / 2)];
  const regular = lengths.length >= 3 && lengths.at(-1)! - lengths[0]! <= regularity.unknownAge;
  if (regular && middle !== undefined && gone >= middle + late.days && gone < noBleeding.days) add(context, 'pregnancy-possible', { data: { late: gone - middle, usual: middle } });
  if (age !== null && age >= transition.fromAge && gone >= transition.gap) add(context, 'transition', { data: { days: gone } });
}

/** Lengths, durations and regularity, worded by how often they were met. */
function lengthFlags(context: Context): void {
  const { parameters, recent, limits, request } = context;
  const { age } = request.record.person;
  const { persistentlyLong, regularity, change, transition } = parameters.limits;
  const lengths = recent.map((c) => c.length);
  const outside = lengths.filter((l) => l < limits.shortest || l > limits.longest);
  // Once outside is common among healthy women; three times is not.
  if (outside.length > 0) add(context, 'frequency', { met: outside.length, of: lengths.length, urgency: outside.length === 1 ? 'note' : outside.length === 2 ? 'mention' : 'soon', data: { shortest: limits.shortest, longest: limits.longest, lengths: outside.join(', ') } });
  const long = lengths.slice(-persistentlyLong.cycles).filter((l) => l > persistentlyLong.days);
  if (lengths.length >= persistentlyLong.cycles && long.length === persistentlyLong.cycles) add(context, 'persistently-long', { met: long.length, of: persistentlyLong.cycles, data: { days: persistentlyLong.days } });
  if (lengths.some((l) => l >= parameters.limits.noBleeding.days)) add(context, 'no-bleeding', { data: { days: Math.max(...lengths), since: isoDate(recent.find((c) => c.length === Math.max(...lengths))!.start) } });
  const bleeds = recent.filter((c) => c.bleedDays !== null && c.bleedDays > limits.bleedDays);
  if (bleeds.length > 0) add(context, 'duration', { met: bleeds.length, of: recent.filter((c) => c.bleedDays !== null).length, urgency: bleeds.length === 1 ? 'note' : 'mention', data: { days: limits.bleedDays, longest: Math.max(...bleeds.map((c) => c.bleedDays!)) } });
  const allowed = regularity.bands.find((b) => age !== null && age >= b.from && age <= b.to)?.days ?? regularity.unknownAge;
  const sorted = [...lengths].sort((a, b) => a - b);
  if (sorted.length >= 3 && (age === null || age >= parameters.limits.teen.underAge)) {
    const span = sorted.at(-1)! - sorted[0]!;
    // With the one oddest cycle left out: a single late ovulation is not irregularity.
    const without = Math.min(sorted.at(-2)! - sorted[0]!, sorted.at(-1)! - sorted[1]!);
    if (span > allowed) add(context, 'regularity', { urgency: without > allowed && sorted.length >= 6 ? 'mention' : 'note', data: { span, allowed, shortest: sorted[0]!, longest: sorted.at(-1)!, single: without > allowed ? 0 : 1 } });
    const apart = lengths.filter((l, i) => i > 0 && Math.abs(l - lengths[i - 1]!) >= transition.apart).length;
    if (age !== null && age >= transition.fromAge && apart >= 2) add(context, 'transition', { met: apart, of: lengths.length - 1, data: { days: transition.apart } });
  }
  if (lengths.length >= change.recent + change.before) {
    const median = (xs: readonly number[]): number => [...xs].sort((a, b) => a - b)[Math.floor(xs.length / 2)]!;
    const now = median(lengths.slice(-change.recent));
    const before = median(lengths.slice(0, -change.recent));
    if (Math.abs(now - before) >= change.days) add(context, 'sudden-change', { data: { now, before } });
  }
}
