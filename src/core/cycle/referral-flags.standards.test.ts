import { describe, expect, it } from 'vitest';
import { compileCycle } from '../../../scripts/tables/cycle.ts';
import { knownSources } from '../../../scripts/tables/known-sources.ts';
import { addDays, day, type Day } from '../calendar/index.ts';
import { unknownPerson, type LifeStateId, type Person } from '../people/index.ts';
import { historyOf } from './history.ts';
import { emptyDay, type CycleRecord, type DayEntry } from './record.ts';
import { referralFlags, type ReferralFlag } from './referral-flags.ts';
import type { CriterionId } from './referral-parameters.ts';

const tables = compileCycle('data', knownSources('data'));

interface Case {
  lengths?: readonly number[];
  age?: number | null;
  elapsed?: number;
  bleed?: number;
  days?: (starts: readonly Day[]) => DayEntry[];
  states?: readonly LifeStateId[];
  answers?: readonly CriterionId[];
}

function flagsOf(c: Case): ReferralFlag[] {
  const starts: Day[] = [day('2026-01-01')];
  for (const l of c.lengths ?? []) starts.push(addDays(starts.at(-1)!, l));
  const today = addDays(starts.at(-1)!, c.elapsed ?? 10);
  const person: Person = { ...unknownPerson, age: c.age ?? null, states: (c.states ?? []).map((id) => ({ id, from: null, to: null })) };
  const record: CycleRecord = { starts: starts.map((d) => ({ day: d, slack: 0, lastBleedDay: c.bleed ? addDays(d, c.bleed - 1) : null })), days: c.days?.(starts) ?? [], person, answers: c.answers ?? [] };
  const { cycles } = historyOf(tables.model, record, today);
  return referralFlags(tables.referral, { record, cycles, unrecorded: cycles.map(() => 0), answers: record.answers, today });
}
const ids = (c: Case): string[] => flagsOf(c).map((f) => f.id);
const flag = (c: Case, id: CriterionId): ReferralFlag | undefined => flagsOf(c).find((f) => f.id === id);

describe('referral criteria, on both sides of each limit', () => {
  // FIGO 2018 AUB System 1 (Munro and others, IJGO 143:393): frequency 24 to 38 days.
  it.each([[24, false], [38, false], [23, true], [39, true]])('frequency: a cycle of %d days outside 24 to 38: %s', (length, out) => {
    expect(ids({ lengths: [30, length, 30] }).includes('frequency')).toBe(out);
  });

  it('frequency: once is a note, twice to mention, three times soon', () => {
    expect(flag({ lengths: [30, 39, 30, 30] }, 'frequency')?.urgency).toBe('note');
    expect(flag({ lengths: [30, 39, 30, 40] }, 'frequency')?.urgency).toBe('mention');
    expect(flag({ lengths: [39, 39, 30, 40] }, 'frequency')).toMatchObject({ urgency: 'soon', met: 3, of: 4 });
  });

  // FIGO 2018: duration up to 8 days.
  it.each([[8, false], [9, true]])('duration: %d days of bleeding over 8: %s', (bleed, over) => {
    expect(ids({ lengths: [30, 30, 30], bleed }).includes('duration')).toBe(over);
  });

  // FIGO 2018: shortest to longest up to 9 d at 18 to 25, 7 d at 26 to 41, 9 d at 42 to 45 (bands from memory).
  it.each([[22, 9, false], [22, 10, true], [30, 7, false], [30, 8, true], [43, 9, false], [43, 10, true]])('regularity at %d: a span of %d days is too much: %s', (age, span, out) => {
    expect(ids({ lengths: [26, 26 + span, 28], age }).includes('regularity')).toBe(out);
  });

  it('regularity: one odd cycle is a note, a lasting spread something to mention', () => {
    expect(flag({ lengths: [28, 28, 38, 28, 28, 28], age: 30 }, 'regularity')?.urgency).toBe('note');
    expect(flag({ lengths: [26, 36, 27, 37, 26, 36], age: 30 }, 'regularity')?.urgency).toBe('mention');
  });

  // No bleeding for 90 days (FIGO 2018; ACOG 651 for the young).
  it.each([[89, false], [90, true]])('no bleeding for %d days: %s', (elapsed, out) => {
    expect(ids({ lengths: [30, 45, 30], elapsed }).includes('no-bleeding')).toBe(out);
  });

  // ASRM 2024 (Fertil Steril 122:52): a week late in a regular woman, consider pregnancy.
  it.each([[34, false], [35, true]])('a regular woman of 28 days at day %d: pregnancy possible: %s', (elapsed, out) => {
    expect(ids({ lengths: [28, 28, 28], elapsed }).includes('pregnancy-possible')).toBe(out);
  });
  it('lateness says nothing in an irregular woman', () => {
    expect(ids({ lengths: [25, 40, 30], elapsed: 40 })).not.toContain('pregnancy-possible');
  });

  // Endocrine Society 2017 (JCEM 102:1413) 1.2: persistently over 45 days.
  it.each([[[46, 47, 46], true], [[46, 45, 46], false]])('persistently over 45 days: %j: %s', (lengths, out) => {
    expect(ids({ lengths }).includes('persistently-long')).toBe(out);
  });

  // ACOG Committee Opinion 651: adolescents 21 to 45 days, flow up to 7 days.
  it.each([[21, false], [20, true], [45, false], [46, true]])('at 15 a cycle of %d days is outside 21 to 45: %s', (length, out) => {
    expect(ids({ lengths: [30, length, 30], age: 15 }).includes('frequency')).toBe(out);
  });
  it.each([[7, false], [8, true]])('at 15 %d days of flow are too many: %s', (bleed, out) => {
    expect(ids({ lengths: [30, 30], bleed, age: 15 }).includes('duration')).toBe(out);
  });

  // NICE NG88: bleeding between periods or after sex: examine.
  it('bleeding in mid-cycle is told, bleeding within the period is not', () => {
    const at = (n: number) => (starts: readonly Day[]): DayEntry[] => [{ ...emptyDay(addDays(starts[1]!, n)), flow: 'light' }];
    expect(ids({ lengths: [28, 28, 28], bleed: 5, days: at(14) })).toContain('bleeding-between');
    expect(ids({ lengths: [28, 28, 28], bleed: 5, days: at(3) })).not.toContain('bleeding-between');
    expect(ids({ lengths: [28, 28, 28], bleed: 5, days: (s) => [{ ...emptyDay(addDays(s[2]!, -2)), flow: 'spotting' }] })).not.toContain('bleeding-between');
  });
  it('bleeding after sex is told', () => {
    expect(ids({ lengths: [28], days: (s) => [{ ...emptyDay(s[0]!), bleedingAfterSex: true }] })).toContain('bleeding-after-sex');
  });

  // NICE NG12: bleeding more than 12 months after the last period: suspected-cancer referral at 55 and over, consider below.
  it('bleeding after menopause comes first', () => {
    expect(flagsOf({ lengths: [400], age: 56 })[0]).toMatchObject({ id: 'bleeding-after-menopause', urgency: 'now' });
    expect(ids({ lengths: [360], age: 56 })).not.toContain('bleeding-after-menopause');
    expect(flagsOf({ lengths: [], age: 58, states: ['after-menopause'] })[0]?.id).toBe('bleeding-after-menopause');
  });

  // Harlow & Paramsothy 2011 (STRAW): 7 days and more between consecutive cycles, persisting; 60 days and more without bleeding.
  it('tells the menopausal transition from 40 on as a note', () => {
    expect(flag({ lengths: [28, 36, 27, 38], age: 46 }, 'transition')?.urgency).toBe('note');
    expect(ids({ lengths: [28, 36, 27, 38], age: 30 })).not.toContain('transition');
    expect(flag({ lengths: [28, 30, 29], age: 48, elapsed: 60 }, 'transition')).toBeDefined();
  });

  it('puts a red flag before any number of notes', () => {
    const flags = flagsOf({ lengths: [24, 39, 28, 22, 36, 40], age: 30, answers: ['severe-mood'] });
    expect(flags[0]).toMatchObject({ id: 'severe-mood', urgency: 'now' });
    expect(flags.length).toBeGreaterThan(1);
  });

  it('holds no cycle rule against a woman on hormones', () => {
    expect(ids({ lengths: [20, 60, 20, 60], states: ['combined-pill'] })).toEqual([]);
  });
});
