import { describe, expect, it } from 'vitest';
import { compileCycle } from '../../../scripts/tables/cycle.ts';
import { knownSources } from '../../../scripts/tables/known-sources.ts';
import { addDays, day, type Day } from '../calendar/index.ts';
import { dayFromPeriod, ratingSummary } from './daily-ratings.ts';
import { emptyDay, type DayEntry } from './record.ts';

const { ratings: rules } = compileCycle('data', knownSources('data'));
const starts = [day('2026-02-01'), day('2026-03-01'), day('2026-03-29')];
const symptoms = ['irritability', 'low mood', 'bloating', 'tiredness', 'cravings'];

/** Ratings of all five symptoms about the second and third starts: pre on −7..−1, post on +4..+10, else 1. */
function diary(pre: readonly number[], post: readonly number[], change: (item: string, at: Day, rating: number) => number = (_i, _d, r) => r): DayEntry[] {
  const by = new Map<Day, number>();
  for (const start of starts.slice(1)) {
    pre.forEach((r, i) => by.set(dayFromPeriod(start, -7 + i), r));
    post.forEach((r, i) => by.set(dayFromPeriod(start, 4 + i), r));
  }
  return [...by].map(([at, rating]) => ({ ...emptyDay(at), ratings: new Map(symptoms.map((s) => [s, change(s, at, rating)])) }));
}

// Eisenlohr-Moul and others 2017, Am J Psychiatry 174:51 (full text): windows −7..−1 and +4..+10, no day 0; at least
// 3 of 7 ratings in each; 30 % change over the range of the scale she used; post ≤ 3; pre ≥ 4 on 2 days; 5 symptoms, 1 core; 2 cycles.
describe('daily ratings by the rules of Eisenlohr-Moul 2017', () => {
  it('count from the first day of the period as day 1, with no day 0', () => {
    expect(dayFromPeriod(starts[0]!, 1)).toBe(starts[0]);
    expect(dayFromPeriod(starts[0]!, -1)).toBe(addDays(starts[0]!, -1));
    expect(dayFromPeriod(starts[0]!, 4)).toBe(addDays(starts[0]!, 3));
  });

  it('meet the rule on the worked case: 4.0 before, 1.0 after, highest 5', () => {
    const summary = ratingSummary(rules, diary([3, 4, 4, 5, 5, 4, 3], [1, 1, 1, 1, 1, 1, 1]), starts);
    const item = summary.cycles[0]!.items.find((i) => i.item === 'irritability')!;
    expect(item.premenstrualMean).toBe(4);
    expect(item.postmenstrualMean).toBe(1);
    expect(item.change).toBe((4 - 1) / (5 - 1));
    expect(item.core).toBe(true);
    expect(summary.ratedCycles).toBe(2);
    expect(summary.answer).toBe('met');
  });

  it('stand on both sides of 30 % of the range she used', () => {
    // pre mean 3 with two fours; post mean 1.8 → (3 − 1.8) / 4 = 0.30 with a highest of 5 elsewhere.
    const topFive = (_s: string, at: Day, r: number): number => (at === dayFromPeriod(starts[1]!, -7) ? 5 : r);
    const passes = (post: readonly number[]): boolean => ratingSummary(rules, diary([1, 4, 4, 3, 3, 3, 3], post, topFive), starts).cycles[1]!.items[0]!.passes;
    expect(passes([1, 2, 2, 2, 2])).toBe(true); // mean 1.8
    expect(passes([2, 2, 2, 2, 2])).toBe(false); // mean 2.0: (3 − 2) / 4 = 0.25
  });

  it('ask for a postmenstrual highest of 3 at most', () => {
    const answer = (top: number): string => ratingSummary(rules, diary([6, 6, 6, 6, 6, 6, 6], [1, 1, top, 1, 1, 1, 1]), starts).answer;
    expect(answer(3)).toBe('met');
    expect(answer(4)).toBe('not-met');
  });

  it('ask for two premenstrual days of 4 and more', () => {
    const answer = (pre: readonly number[]): string => ratingSummary(rules, diary(pre, [1, 1, 1, 1, 1, 1, 1]), starts).answer;
    expect(answer([3, 3, 3, 3, 3, 4, 4])).toBe('met');
    expect(answer([3, 3, 3, 3, 3, 3, 4])).toBe('not-met');
  });

  it('ask for three ratings of seven in each window', () => {
    const some = (n: number): DayEntry[] => diary([5, 5, 5, 5, 5, 5, 5], Array.from({ length: n }, () => 1));
    expect(ratingSummary(rules, some(3), starts).answer).toBe('met');
    expect(ratingSummary(rules, some(2), starts).answer).toBe('too-few-cycles');
  });

  it('ask for two cycles', () => {
    const one = diary([5, 5, 5, 5, 5, 5, 5], [1, 1, 1, 1]).filter((d) => d.day < day('2026-03-15'));
    expect(ratingSummary(rules, one, starts).answer).toBe('too-few-cycles');
  });

  it('ask for five symptoms, one of them core', () => {
    const days = diary([5, 5, 5, 5, 5, 5, 5], [1, 1, 1, 1]);
    const without = (names: readonly string[]): DayEntry[] => days.map((d) => ({ ...d, ratings: new Map([...d.ratings].filter(([n]) => !names.includes(n))) }));
    expect(ratingSummary(rules, without(['cravings']), starts).answer).toBe('not-met');
    const noCore = days.map((d) => ({ ...d, ratings: new Map([...d.ratings].map(([n, r]) => [n.replace('irritability', 'headache').replace('low mood', 'back ache'), r])) }));
    expect(ratingSummary(rules, noCore, starts).answer).toBe('not-met');
  });

  it('say so when nothing was rated', () => {
    expect(ratingSummary(rules, [emptyDay(day('2026-03-01'))], starts).answer).toBe('no-ratings');
  });
});
