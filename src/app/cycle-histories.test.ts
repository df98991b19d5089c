import { describe, expect, it } from 'vitest';
import { compileCycle } from '../../scripts/tables/cycle.ts';
import { knownSources } from '../../scripts/tables/known-sources.ts';
import { addDays, day, isoDate, type Day } from '../core/calendar/index.ts';
import { cycleDesk, type CycleChoices, type CycleReport } from './cycle-report.ts';

const desk = cycleDesk(compileCycle('data', knownSources('data')));
const today = day('2026-11-25');
const demo = desk.tables.schemes.find((s) => s.id === 'demo-four-pots')!;
const usual: CycleChoices = { today, order: null, scheme: demo, days: 30, noneSince: false, menuChanged: null, seed: 1 };
const report = (text: string, choices: Partial<CycleChoices> = {}): CycleReport => desk.workOut(text, { ...usual, ...choices });

/** Starts that end `ago` days before today, with these gaps before them. */
function list(gaps: readonly number[], ago = 10): string {
  const starts: Day[] = [addDays(today, -ago)];
  for (const gap of [...gaps].reverse()) starts.unshift(addDays(starts[0]!, -gap));
  return starts.map(isoDate).join('\n');
}
const repeat = (gap: number, times: number): number[] => Array.from({ length: times }, () => gap);

type Expect = { forecast?: boolean; asks?: string; notes?: string; likelyIn?: readonly [number, number]; basis?: 'own' | 'population'; widthUnder?: number; widthOver?: number; why?: CycleReport['whyNoForecast']; flag?: string; noFlag?: string; plain?: boolean; care?: boolean };

// Days of `likelyIn` are counted from the last start.
const histories: readonly (readonly [string, string, Expect])[] = [
  ['nothing at all', '', { forecast: false, notes: 'no-dates', why: 'no-start' }],
  ['only words', 'my period is all over the place', { forecast: false, why: 'no-start' }],
  ['one start', list([]), { basis: 'population', likelyIn: [27, 31], widthOver: 7 }],
  ['one start, today', list([], 0), { basis: 'population', likelyIn: [27, 31] }],
  ['two starts', list([29]), { basis: 'own', likelyIn: [27, 31] }],
  ['the same start twice', `${list([])}\n${list([])}`, { notes: 'same-day-twice', basis: 'population' }],
  ['all starts twice', `${list([28, 29])}\n${list([28, 29])}`, { notes: 'same-day-twice', likelyIn: [27, 30] }],
  ['two starts three days apart', `${list([28], 10)}\n${isoDate(addDays(today, -7))}`, { asks: 'too-near', likelyIn: [26, 31] }],
  ['a steady year', list(repeat(28, 13)), { likelyIn: [28, 28], widthUnder: 3.5 }],
  ['a steady long one', list(repeat(36, 10)), { likelyIn: [35, 37], widthUnder: 5 }],
  ['a steady short one', list(repeat(22, 10)), { likelyIn: [21, 23], widthUnder: 5 }],
  ['an ordinary year', list([27, 30, 28, 29, 31, 28, 27, 29, 30, 28]), { likelyIn: [28, 29], widthUnder: 6.5 }],
  ['an irregular year', list([24, 38, 29, 45, 26, 33, 41, 28]), { likelyIn: [27, 36], widthOver: 11 }],
  ['long and irregular', list([45, 62, 38, 70, 52]), { widthOver: 12, flag: 'frequency' }],
  ['two decades of 28', list(repeat(28, 260)), { likelyIn: [28, 28], widthUnder: 3.5 }],
  ['a decade that shortens', list([...repeat(31, 60), ...repeat(29, 40), ...repeat(26, 30)]), { likelyIn: [25, 28] }],
  ['newest first', list([28, 29, 27]).split('\n').reverse().join('\n'), { likelyIn: [27, 29] }],
  ['shuffled', list([28, 29, 27, 28]).split('\n').sort((a, b) => a.slice(-2).localeCompare(b.slice(-2))).join('\n'), { likelyIn: [27, 29] }],
  ['a start in the future', `${list([28, 28])}\n2027-01-04`, { asks: 'future-date', likelyIn: [27, 29] }],
  ['only a start in the future', '2027-01-04', { forecast: false, asks: 'future-date', why: 'no-start' }],
  ['a year mistyped', `${list([28, 28])}\n1926-10-18`, { asks: 'very-old-date', likelyIn: [27, 29] }],
  ['a day that does not exist', `${list([28, 28])}\n2026-02-30`, { asks: 'no-such-day', likelyIn: [27, 29] }],
  ['one start left out', list([28, 29, 58, 28, 29]), { likelyIn: [28, 29], widthUnder: 5, noFlag: 'frequency' }],
  ['two starts left out in a row', list([28, 29, 87, 28, 29, 28]), { likelyIn: [28, 29], widthUnder: 6 }],
  ['half of the starts left out', list([28, 57, 29, 56, 57, 28]), { likelyIn: [27, 30] }],
  ['a gap of half a year', list([28, 29, 190, 28, 29]), { notes: 'long-gap', likelyIn: [28, 29] }],
  ['a gap of three years', list([28, 29, 1100, 28, 29]), { notes: 'long-gap', likelyIn: [28, 29] }],
  ['a year of nothing, then one', list([400]), { notes: 'long-gap', basis: 'population' }],
  ['late by a week and regular', list([28, 28, 29, 28], 36), { flag: 'pregnancy-possible' }],
  ['two cycles gone without an entry', list([28, 28, 29, 28], 62), { flag: 'pregnancy-possible' }],
  ['ninety days gone', list([30, 31, 29], 95), { flag: 'no-bleeding' }],
  ['half a year gone', list([30, 31, 29], 180), { forecast: false, why: 'too-long-ago', flag: 'no-bleeding' }],
  ['a teen, new to it', `age: 14\n${list([45, 31, 60, 38])}`, { plain: true, widthOver: 11 }],
  ['a teen of 17, steady', `age: 17\n${list([30, 31, 30, 32])}`, { plain: true, likelyIn: [29, 32] }],
  ['eighteen', `age: 18\n${list([30, 31, 30])}`, { plain: false, likelyIn: [29, 32] }],
  ['perimenopause', `age: 48\nperimenopause\n${list([28, 24, 41, 27, 62, 35])}`, { care: true, widthOver: 10, flag: 'transition' }],
  ['fifty-two, steady all the same', `age: 52\n${list(repeat(27, 10))}`, { likelyIn: [26, 28] }],
  ['after menopause with a bleed', `age: 58\nafter menopause\n${list([])}`, { forecast: false, why: 'no-phases', flag: 'bleeding-after-menopause' }],
  ['the pill', `combined pill since 2025-01-10\n${list(repeat(28, 8))}`, { forecast: false, why: 'no-phases' }],
  ['off the pill again', `combined pill from 2024-01-10 until 2025-12-01\n${list([33, 30, 31])}`, { likelyIn: [29, 33] }],
  ['a hormonal coil', `hormonal coil\n${list([40, 20])}`, { forecast: false, why: 'no-phases', noFlag: 'frequency' }],
  ['a copper coil', `copper coil\n${list([28, 29])}`, { likelyIn: [27, 30] }],
  ['pregnant', `pregnant since 2026-09-01\n${list([28, 29], 100)}`, { forecast: false, why: 'no-phases', plain: true }],
  ['pregnant before, now cycling', `pregnant from 2024-01-01 to 2024-10-01\n${list([30, 31, 30])}`, { likelyIn: [29, 32], plain: false }],
  ['breastfeeding, cycles back', `breastfeeding\n${list([41, 35, 33])}`, { care: true, plain: true }],
  ['no periods', 'no periods\nage: 24', { forecast: false, why: 'no-phases', flag: 'no-bleeding' }],
  ['eating disorder in the past', `eating disorder history\n${list([29, 30])}`, { plain: true, likelyIn: [28, 31] }],
  ['insulin', `insulin\n${list([29, 30])}`, { plain: true }],
  ['dates day or month first', '03/04/2026\n01/05/2026', { forecast: false, asks: 'ambiguous-order' }],
  ['contradicting orders', '25/03/2026\n04/25/2026', { forecast: false, asks: 'mixed-order' }],
  ['roughly known', 'about 10 August 2026\nabout 9 September 2026\nabout 8 October 2026\nabout 7 November 2026', { likelyIn: [27, 32], widthOver: 4 }],
  ['parts of months', 'early September 2026\nearly October 2026\nearly November 2026', { likelyIn: [28, 33] }],
  ['a leap day', '2028-01-31\n2028-02-29\n2028-03-28', { asks: 'future-date' }],
  ['very short gaps all along', list([12, 13, 12, 14]), { flag: 'frequency' }],
  ['dark words among the dates', `I feel suicidal before every period\n${list([28, 29])}`, { flag: 'severe-mood', likelyIn: [27, 30] }],
  ['an unlikely age', `age: 4\n${list([28, 29])}`, { asks: 'age-unlikely' }],
  ['bleeds of eleven days', '2026-08-01 to 2026-08-11\n2026-09-01 to 2026-09-11\n2026-10-01 to 2026-10-11\n2026-11-01', { flag: 'duration' }],
];

describe('fifty odd histories', () => {
  it('are more than fifty', () => {
    expect(histories.length).toBeGreaterThanOrEqual(50);
  });

  it.each(histories)('%s', (_name, text, wanted) => {
    const r = report(text);
    const asked = r.findings.filter((f) => f.severity === 'question').map((f) => f.code as string);
    const noted = r.findings.filter((f) => f.severity === 'note').map((f) => f.code as string);
    // A sensible answer or a clear question, always.
    expect(r.forecast !== null || r.whyNoForecast !== null || asked.length > 0).toBe(true);
    if (wanted.forecast !== undefined) expect(r.forecast !== null).toBe(wanted.forecast);
    if (wanted.why !== undefined) expect(r.whyNoForecast).toBe(wanted.why);
    if (wanted.asks !== undefined) expect(asked).toContain(wanted.asks);
    if (wanted.notes !== undefined) expect(noted).toContain(wanted.notes);
    if (wanted.basis !== undefined) expect(r.forecast?.basis).toBe(wanted.basis);
    if (wanted.plain !== undefined) expect(r.bounds.plain).toBe(wanted.plain);
    if (wanted.plain) expect(r.scheme.scheme.rules).toEqual([]);
    if (wanted.care) expect(r.phaseUse.use).toBe('with-care');
    const flags = r.flags.map((f) => f.id as string);
    if (wanted.flag !== undefined) expect(flags).toContain(wanted.flag);
    if (wanted.noFlag !== undefined) expect(flags).not.toContain(wanted.noFlag);
    if (!r.forecast) return;
    const next = r.forecast.starts[0]!;
    const width = next.range.high - next.range.low;
    if (wanted.likelyIn) {
      const days = next.likely - r.forecast.lastStart;
      expect(days).toBeGreaterThanOrEqual(wanted.likelyIn[0]);
      expect(days).toBeLessThanOrEqual(wanted.likelyIn[1]);
    }
    if (wanted.widthUnder !== undefined) expect(width).toBeLessThan(wanted.widthUnder);
    if (wanted.widthOver !== undefined) expect(width).toBeGreaterThan(wanted.widthOver);
    // Whatever the history: nothing in the past, wider further out, chances that sum to one.
    expect(next.from).toBeGreaterThan(today);
    expect(Number.isFinite(width)).toBe(true);
    for (const f of r.forecast.starts) expect([...f.chances.mass].reduce((a, b) => a + b, 0)).toBeCloseTo(1, 6);
    for (const d of r.phases) expect(Object.values(d.chances).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 6);
  });
});

describe('a cycle report', () => {
  it('is the same every time', () => {
    expect(JSON.stringify(report(list([28, 31, 27])))).toBe(JSON.stringify(report(list([28, 31, 27]))));
  });
  it('puts fixed days and anchored advice side by side, with the days they differ', () => {
    const r = report(list(repeat(36, 8), 3));
    expect(r.comparison!.days.mean).toBeGreaterThan(8);
    expect(r.schemeDays.some((d) => d.fixed.includes('oven-dish') && d.said.some((s) => s.ruleId === 'salad-bowl'))).toBe(true);
  });
  it('takes her word that no period has started since', () => {
    const text = list([28, 28, 29, 28], 45);
    expect(report(text).forecast!.unrecordedChance).toBeGreaterThan(0.5);
    expect(report(text, { noneSince: true }).forecast!.unrecordedChance).toBe(0);
  });
});
