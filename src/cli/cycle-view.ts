import type { CycleReport } from '../app/cycle-report.ts';
import { isoDate } from '../core/calendar/index.ts';
import { phases } from '../core/cycle/index.ts';
import type { RuleAdvice, Scheme, SchemeDay } from '../core/scheme/index.ts';
import { boundReason, boundedAdviceNames, basisText, doubledText, flagText, forecastText, noForecastText, noTrialFound, notForContraception, notMedicine, phaseNames, plainFoodAdvice, ratingAnswers, recordFindingText, referralLines, unrecordedText, urgencyNames } from '../messages/cycle.ts';
import { dayCount, shortDay } from '../messages/days.ts';
import { clip, pad, paint, wrap, type Screen } from './screen.ts';

export interface CycleViewOptions {
  readonly crisisLine: string;
  readonly schemeName: string;
}

/** A cycle report as a terminal page; red flags first. */
export function cycleView(report: CycleReport, options: CycleViewOptions, screen: Screen): string {
  const out: string[] = [];
  const say = (text: string, indent = 2): void => {
    out.push(...wrap(text, screen.width - indent).map((row) => ' '.repeat(indent) + row));
  };
  const heading = (text: string): void => {
    out.push('', paint(text, 'bold', screen));
  };
  const urgent = report.flags.filter((f) => f.urgency === 'now' || f.urgency === 'soon');
  if (urgent.length > 0) {
    heading('Please read first');
    for (const flag of urgent) say(`! ${urgencyNames[flag.urgency]}: ${flagText(flag)} [${flag.source}]`);
    if (urgent.some((f) => f.id === 'severe-mood')) say(options.crisisLine, 4);
  }
  const questions = report.findings.filter((f) => f.severity === 'question').map(recordFindingText);
  const unrecorded = unrecordedText(report);
  if (unrecorded) questions.push(unrecorded);
  if (report.record.person.age === null) questions.push('How old is she? (a line such as “age: 34”; some bounds depend on it)');
  if (questions.length > 0) {
    heading('Questions');
    for (const q of questions) say(`? ${q}`);
  }
  heading('Forecast');
  if (report.forecast === null) say(noForecastText(report));
  else forecastLines(report, say);
  for (const text of doubledText(report)) say(text);
  say(`${notForContraception} ${notMedicine}`);

  if (report.bounds.plain) {
    heading('Food');
    say(plainFoodAdvice);
    for (const rule of report.bounds.rules) say(`Because of ${boundReason(rule.id)}: ${referralLines[rule.refer]} [${rule.source}]`);
    say(`The scheme “${options.schemeName}” is not shown: it gives way.`);
  } else if (report.forecast !== null) {
    heading(`Days, with the scheme “${options.schemeName}”`);
    out.push(...dayTable(report, screen));
    if (report.scheme.scheme.rules.length > 0) schemeNotes(report, say);
  }
  const notes = report.findings.filter((f) => f.severity === 'note').map(recordFindingText);
  if (notes.length > 0) {
    heading('About the record');
    for (const note of notes) say(note);
  }
  const milder = report.flags.filter((f) => f.urgency === 'mention' || f.urgency === 'note');
  if (milder.length > 0) {
    heading('For a doctor, by published criteria');
    for (const flag of milder) say(`${urgencyNames[flag.urgency]}: ${flagText(flag)} [${flag.source}: ${flag.locator}]`);
  }
  if (report.ratings.answer !== 'no-ratings') {
    heading('Day notes');
    say(ratingAnswers[report.ratings.answer]);
  }
  if (report.menuChange) menuLines(report, say);
  return `${out.join('\n').replace(/^\n/, '')}\n`;
}

function forecastLines(report: CycleReport, say: (text: string) => void): void {
  const forecast = report.forecast!;
  say(basisText(report));
  if (report.phaseUse.use === 'with-care') say(`With care: ${report.phaseUse.because.map((k) => k.label.toLowerCase()).join(', ')} makes cycles uneven; ranges are less sure than they look.`);
  say(`Last start ${isoDate(forecast.lastStart)}; today is day ${forecast.today - forecast.lastStart + 1}.`);
  const names = ['Next start', 'The one after', 'The third'];
  forecast.starts.forEach((s, i) => say(`${names[i] ?? 'Then'}: ${forecastText(s)}.`));
  say(`Ovulation in this cycle: ${forecastText(forecast.ovulation)}. A range, not a day.`);
}

function dayTable(report: CycleReport, screen: Screen): string[] {
  const titles = new Map(report.scheme.scheme.rules.map((r) => [r.id, r.title]));
  const withScheme = titles.size > 0;
  const fixedWidth = Math.max(12, ...[...titles.values()].map((t) => t.length + 1));
  const adviceWidth = Math.max(20, screen.width - 66 - fixedWidth);
  const head = `  ${pad('Day', 8)} ${pad('Likely phases', 50)} ${withScheme ? `${pad('Advice', adviceWidth)} In fixed days` : ''}`;
  const rows = [paint(clip(head, screen.width), 'dim', screen)];
  report.phases.forEach((day, i) => {
    const likely = phases.map((p) => ({ p, chance: day.chances[p] })).filter((c) => c.chance >= 0.05).sort((a, b) => b.chance - a.chance).slice(0, 2).map((c) => `${phaseNames[c.p].toLowerCase()} ${Math.round(100 * c.chance)} %`).join(', ');
    const laid = report.schemeDays[i];
    const fixed = !laid ? '' : laid.fixed.map((id) => titles.get(id) ?? id).join(', ') || '–';
    rows.push(clip(`  ${pad(shortDay(day.day), 8)} ${pad(likely, 50)} ${pad(clip(adviceWords(laid, titles), adviceWidth), adviceWidth)} ${fixed}`, screen.width).trimEnd());
  });
  return rows;
}

function adviceWords(day: SchemeDay | undefined, titles: ReadonlyMap<string, string>): string {
  if (!day) return '';
  if (day.verdict === 'nothing') return '–';
  if (day.verdict === 'uncertain') return `too uncertain to say: ${day.all.slice(0, 2).map((r) => `${titles.get(r.ruleId)} ${Math.round(100 * r.chance)} %`).join(', ')}`;
  return day.said.map((r) => `${titles.get(r.ruleId)} ${Math.round(100 * r.chance)} %`).join(', ');
}

/** Everything a rule advises in one line. */
export function adviceText(advice: RuleAdvice): string {
  const parts = [
    ...advice.emphasis.map((e) => `${e.direction === 'steady' ? 'steady' : e.direction} ${e.what}`),
    advice.favour.length > 0 ? `favour ${advice.favour.join(', ')}` : '',
    advice.leave.length > 0 ? `leave ${advice.leave.join(', ')}` : '',
    advice.fastingHours === null ? '' : `${advice.fastingHours} hours without food over the night`,
    advice.energyKcal === null ? '' : `${Math.round(advice.energyKcal)} kcal a day`,
    advice.carbohydrateG === null ? '' : `${Math.round(advice.carbohydrateG)} g carbohydrate a day`,
    advice.proteinG === null ? '' : `${Math.round(advice.proteinG)} g protein a day`,
    advice.training ? `training: ${advice.training}` : '',
    advice.heatAndCold ? `heat and cold: ${advice.heatAndCold}` : '',
    advice.workload ? `work: ${advice.workload}` : '',
    advice.sleep ? `sleep: ${advice.sleep}` : '',
  ];
  return parts.filter((p) => p !== '').join('; ');
}

function schemeNotes(report: CycleReport, say: (text: string) => void): void {
  const scheme: Scheme = report.scheme.scheme;
  for (const rule of scheme.rules) say(`${rule.title}: ${adviceText(rule.advice)}. Evidence: ${rule.evidence.replaceAll('-', ' ')}; ${rule.source.replaceAll('-', ' ')}.`);
  for (const change of report.scheme.changes) say(`${scheme.rules.find((r) => r.id === change.ruleId)?.title ?? change.ruleId}: ${boundedAdviceNames[change.what]} was ${change.done === 'removed' ? 'taken out' : `raised to ${Math.round(change.floor ?? 0)}`}.`);
  const c = report.comparison;
  if (c) say(`Counted in fixed days this scheme would say something else on ${dayCount(Math.round(c.days.mean))} of a cycle of about ${Math.round(c.cycleLength)} (eight times in ten ${c.days.low} to ${c.days.high}).`);
  say(noTrialFound);
}

function menuLines(report: CycleReport, say: (text: string) => void): void {
  for (const item of report.menuChange ?? []) {
    if (item.kind === 'too-few') say(`${item.item}: too few cycles to compare (${item.before} before the change, ${item.after} after; at least ${item.needed} on each side are needed).`);
    else say(`${item.item}: ${item.difference <= 0 ? '' : '+'}${item.difference.toFixed(1)} points after the change (95 % ${item.low.toFixed(1)} to ${item.high.toFixed(1)}; chance ${item.adjusted.toFixed(2)} after allowing for all items): ${item.clear ? 'more than chance, but not proof of the menu' : 'it may well be chance'}.`);
  }
}
