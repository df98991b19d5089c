import type { CycleReport } from '../app/cycle-report.ts';
import { isoDate } from '../core/calendar/index.ts';
import { phases } from '../core/cycle/index.ts';
import { adviceText, comparisonText, schemeChangeText } from './scheme.ts';
import { basisText, boundReason, doubledText, flagText, forecastText, noForecastText, noTrialFound, notForContraception, notMedicine, phaseNames, plainFoodAdvice, ratingAnswers, recordFindingText, referralLines, unrecordedText, urgencyNames } from './cycle.ts';
import { longDay } from './days.ts';
import { menuChangeText } from './menu-change.ts';

/** One day of the table: likely phases, what the scheme says, what fixed days would say. */
export interface DayWords {
  readonly day: string;
  readonly long: string;
  readonly phases: string;
  readonly verdict: 'say' | 'uncertain' | 'nothing' | null;
  readonly advice: string;
  readonly fixed: string;
}

/** A cycle report in words, in the order it is shown; faces only lay it out. */
export interface CycleWords {
  readonly urgent: readonly string[];
  readonly crisisLine: string | null;
  readonly questions: readonly { readonly text: string; readonly code: string }[];
  readonly forecast: readonly string[];
  readonly warning: string;
  readonly plain: readonly string[] | null;
  readonly days: readonly DayWords[];
  readonly rules: readonly { readonly title: string; readonly text: string; readonly evidence: string }[];
  readonly schemeNotes: readonly string[];
  readonly notes: readonly string[];
  readonly milder: readonly string[];
  readonly dayNotes: readonly string[];
}

export function cycleWords(report: CycleReport, crisisLine: string): CycleWords {
  const urgent = report.flags.filter((f) => f.urgency === 'now' || f.urgency === 'soon');
  const flagLine = (f: (typeof report.flags)[number]): string => `${urgencyNames[f.urgency]}: ${flagText(f)} (${f.source}: ${f.locator})`;
  return {
    urgent: urgent.map(flagLine),
    crisisLine: urgent.some((f) => f.id === 'severe-mood') ? crisisLine : null,
    questions: questionsOf(report),
    forecast: forecastLines(report),
    warning: `${notForContraception} ${notMedicine}`,
    plain: report.bounds.plain ? [plainFoodAdvice, ...report.bounds.rules.map((r) => `Because of ${boundReason(r.id)}: ${referralLines[r.refer]} (${r.source})`)] : null,
    days: dayWords(report),
    rules: report.scheme.scheme.rules.map((r) => ({ title: r.title, text: adviceText(r.advice), evidence: `${r.evidence.replaceAll('-', ' ')}; ${r.source.replaceAll('-', ' ')}` })),
    schemeNotes: report.scheme.scheme.rules.length === 0 ? [] : [...report.scheme.changes.map((c) => schemeChangeText(report.scheme.scheme, c)), ...(report.comparison ? [comparisonText(report.comparison)] : []), noTrialFound],
    notes: [...doubledText(report), ...report.findings.filter((f) => f.severity === 'note').map(recordFindingText)],
    milder: report.flags.filter((f) => !urgent.includes(f)).map(flagLine),
    dayNotes: [...(report.ratings.answer === 'no-ratings' ? [] : [ratingAnswers[report.ratings.answer]]), ...(report.menuChange ?? []).map(menuChangeText)],
  };
}

function questionsOf(report: CycleReport): { text: string; code: string }[] {
  const asked: { text: string; code: string }[] = report.findings.filter((f) => f.severity === 'question').map((f) => ({ text: recordFindingText(f), code: f.code }));
  const unrecorded = unrecordedText(report);
  if (unrecorded) asked.push({ text: unrecorded, code: 'none-since' });
  if (report.record.person.age === null) asked.push({ text: 'How old is she? (a line such as “age: 34”; some bounds depend on it)', code: 'age' });
  return asked;
}

function forecastLines(report: CycleReport): string[] {
  const { forecast } = report;
  if (forecast === null) return [noForecastText(report)];
  const names = ['Next start', 'The one after', 'The third'];
  return [
    basisText(report),
    ...(report.phaseUse.use === 'with-care' ? [`With care: ${report.phaseUse.because.map((k) => k.label.toLowerCase()).join(', ')} makes cycles uneven; ranges are less sure than they look.`] : []),
    `Last start ${isoDate(forecast.lastStart)}; today is day ${forecast.today - forecast.lastStart + 1}.`,
    ...forecast.starts.map((s, i) => `${names[i] ?? 'Then'}: ${forecastText(s)}.`),
    `Ovulation in this cycle: ${forecastText(forecast.ovulation)}. A range, not a day.`,
  ];
}

function dayWords(report: CycleReport): DayWords[] {
  const titles = new Map(report.scheme.scheme.rules.map((r) => [r.id, r.title]));
  const chance = (r: { ruleId: string; chance: number }): string => `${titles.get(r.ruleId) ?? r.ruleId} ${Math.round(100 * r.chance)} %`;
  return report.phases.map((d, i) => {
    const laid = report.schemeDays[i];
    const likely = phases.map((p) => ({ p, chance: d.chances[p] })).filter((c) => c.chance >= 0.05).sort((a, b) => b.chance - a.chance).slice(0, 2);
    const advice = !laid ? '' : laid.verdict === 'nothing' ? '–' : laid.verdict === 'uncertain' ? `too uncertain to say: ${laid.all.slice(0, 2).map(chance).join(', ')}` : laid.said.map(chance).join(', ');
    return {
      day: isoDate(d.day),
      long: longDay(d.day),
      phases: likely.map((c) => `${phaseNames[c.p].toLowerCase()} ${Math.round(100 * c.chance)} %`).join(', '),
      verdict: laid?.verdict ?? null,
      advice,
      fixed: laid ? laid.fixed.map((id) => titles.get(id) ?? id).join(', ') || '–' : '',
    };
  });
}
