import type { CycleReport } from '../app/cycle-report.ts';
import type { CriterionId, DayForecast, Phase, RecordFinding, RecordFindingCode, ReferralFlag, Urgency } from '../core/cycle/index.ts';
import type { ReferralLine } from '../core/people/index.ts';
import { dayCount, daySpan, longDay } from './days.ts';

/** Said on screen, in print, in the calendar file and in the docs. */
export const notForContraception = 'Not for contraception and not for trying to conceive: a calendar cannot tell when ovulation is.';
export const notMedicine = 'Education, not medicine. Nothing here is a diagnosis.';
/** Beside every scheme of phase rules. */
export const noTrialFound = 'No trial was found that supports menus by phase, seeds in turn, or foods that “balance hormones”. These are the practitioner’s own rules.';

export const phaseNames: Record<Phase, string> = {
  period: 'Period',
  'before-ovulation': 'Before ovulation',
  'around-ovulation': 'Around ovulation',
  'after-ovulation': 'After ovulation',
  'before-period': 'Before the period',
};

const findingWords: Record<RecordFindingCode, (d: RecordFinding['data']) => string> = {
  'ambiguous-order': (d) => `“${d['text']}” can be ${d['dayFirst']} or ${d['monthFirst']}. Which comes first in your dates, the day or the month? (--order day-first or --order month-first)`,
  'mixed-order': () => 'Some dates can only have the day first and others only the month first. Please write them one way, best as 2026-03-09.',
  'unreadable-line': (d) => `There is no date that can be read in “${d['text']}”. The line was left out. Write a date as 2026-03-09.`,
  'no-such-day': (d) => `There is no such day as “${d['text']}”. Which day was meant?`,
  'no-dates': () => 'No first day of a period was found. Put one date on a line, for example 2026-03-09.',
  'year-guessed': (d) => `“${d['text']}” has no year; it was read as ${d['day']}.`,
  'future-date': (d) => `${d['day']} is still to come. Was another year meant? It was left out.`,
  'very-old-date': (d) => `${d['day']} is very long ago. Was another year meant? It was left out.`,
  'same-day-twice': (d) => `${d['day']} stands twice; it counts once.`,
  'too-near': (d) => `${d['day']} is only ${dayCount(Number(d['days']))} after ${d['before']}. Is it the same bleed, or spotting? It was not counted as a start.`,
  'bleed-not-start': (d) => `There was bleeding on ${d['day']}, ${dayCount(Number(d['days']))} after a start. It was not counted as a new period. Was it one?`,
  'long-gap': (d) => `There is a gap of ${dayCount(Number(d['days']))} between ${d['from']} and ${d['to']}. It tells nothing about cycles and was not used.`,
  'bad-cell': (d) => `${d['day']}: “${d['text']}” in the column ${d['column']} cannot be read and was left out. Ratings go from 1 to 6.`,
  'age-unlikely': (d) => `An age of ${d['age']} is unlikely for a cycle record. Please check it.`,
};

/** A question or a note about the record. */
export function recordFindingText(finding: RecordFinding): string {
  const where = finding.line === null ? '' : `Line ${finding.line}: `;
  return where + findingWords[finding.code](finding.data);
}

export const urgencyNames: Record<Urgency, string> = { now: 'Now', soon: 'Soon', mention: 'At the next visit', note: 'To know' };

const flagWords: Record<CriterionId, (f: ReferralFlag) => string> = {
  'bleeding-after-menopause': (f) => `Bleeding more than a year after the last period (${f.data['day']}). Discuss with a doctor this week.`,
  soaking: () => 'A pad or tampon soaked in one or two hours. If it goes on, or you feel faint, get help today.',
  'severe-mood': () => 'Very dark thoughts. You need not wait or be sure: talk to someone today.',
  'pregnancy-possible': (f) => (f.data['late'] === undefined ? 'Pregnancy is possible. Take a test, and discuss it with a doctor or midwife.' : `The period is ${dayCount(Number(f.data['late']))} late for a woman whose cycles are regular (about ${dayCount(Number(f.data['usual']))}). Pregnancy is possible: take a test.`),
  'no-bleeding': (f) => (f.data['since'] === undefined ? 'No periods. Discuss with a doctor; take a pregnancy test first.' : `No bleeding for ${dayCount(Number(f.data['days']))} (since ${f.data['since']}). Discuss with a doctor; take a pregnancy test first.`),
  'bleeding-between': (f) => `Bleeding between periods (last on ${f.data['day']}; in ${f.met} of ${f.of} cycles). Discuss with a doctor.`,
  'bleeding-after-sex': () => 'Bleeding after sex. Discuss with a doctor.',
  'pelvic-pain': () => 'Pain or pressure low in the belly. Discuss with a doctor.',
  'low-energy': () => 'Signs of eating too little for what the body does. Discuss with a doctor or dietitian; no fasting and no low-energy eating.',
  'persistently-long': (f) => `The last ${f.met} cycles were all longer than ${dayCount(Number(f.data['days']))}. Discuss with a doctor.`,
  heavy: () => 'Periods that she calls heavy. Her own judgement is the measure: discuss with a doctor.',
  frequency: (f) => `${f.met} of ${f.of} cycles were outside ${f.data['shortest']} to ${f.data['longest']} days (${f.data['lengths']}). ${f.met === 1 ? 'Once is common and need not mean anything.' : 'Discuss with a doctor.'}`,
  duration: (f) => `${f.met} of ${f.of} periods lasted longer than ${dayCount(Number(f.data['days']))} (up to ${f.data['longest']}). ${f.met === 1 ? 'Once is common.' : 'Discuss with a doctor.'}`,
  'sudden-change': (f) => `Cycles have changed from about ${f.data['before']} to about ${f.data['now']} days. Discuss with a doctor.`,
  regularity: (f) => `Shortest to longest ${f.data['shortest']} to ${f.data['longest']} days: a span of ${f.data['span']}, where up to ${f.data['allowed']} is called regular.${f.data['single'] === 1 ? ' One single cycle makes the difference.' : ''} Taken to the letter this rule marks two women in five.`,
  transition: (f) => (f.met === null ? `No bleeding for ${dayCount(Number(f.data['days']))}: from the forties on this can be the change towards menopause.` : `Neighbouring cycles differ by ${dayCount(Number(f.data['days']))} and more: from the forties on this can be the change towards menopause.`),
};

export function flagText(flag: ReferralFlag): string {
  return flagWords[flag.id](flag);
}

export const referralLines: Record<ReferralLine, string> = {
  'midwife-or-doctor': 'Please talk to your midwife or doctor about what to eat now.',
  'doctor-or-dietitian': 'Please talk to a doctor or a registered dietitian before any change in how you eat.',
  'eating-disorder-service': 'Please talk to your care team or an eating-disorder service. Rules about food can make things harder; you do not need any.',
  'diabetes-team': 'Please talk to your diabetes team before any change in carbohydrate or meal times: your medicine is set to what you eat.',
};

/** What stands in place of a scheme for a woman whose bounds ask for it. */
export const plainFoodAdvice = 'Plain food advice: regular meals through the day; starchy food, protein and vegetables at each; enough to be satisfied; nothing left out because of the date.';

const because: Record<string, string> = {
  pregnancy: 'pregnancy', breastfeeding: 'breastfeeding', 'under-18': 'she is under 18', 'eating-disorder': 'an eating disorder, now or in the past', 'diabetes-medicine': 'medicine for diabetes', 'low-energy': 'signs of eating too little',
};
export const boundReason = (id: string): string => because[id] ?? id;

/** "Most likely Thu 3 December 2026; eight times in ten from 30 November to 7 December." */
export function forecastText(forecast: DayForecast): string {
  return `most likely ${longDay(forecast.likely)}; eight times in ten ${forecast.from === forecast.to ? `on ${daySpan(forecast.from, forecast.to)}` : `from ${daySpan(forecast.from, forecast.to)}`}`;
}

/** Where the forecast comes from, in one sentence. */
export function basisText(report: CycleReport): string {
  const { forecast } = report;
  if (!forecast) return '';
  if (forecast.basis === 'population') return 'This is a forecast from other women’s cycles (published figures): no whole cycle of hers is known yet.';
  const cycles = forecast.cyclesUsed === 1 ? '1 cycle of hers' : `${forecast.cyclesUsed} cycles of hers`;
  return `From ${cycles} and published figures for women in general. Usual length about ${Math.round(forecast.typicalLength.value)} days; it varies by about ${forecast.ownSpread.value.toFixed(1)} days either way.`;
}

/** Why there is no forecast. */
export function noForecastText(report: CycleReport): string {
  switch (report.whyNoForecast) {
    case 'no-start':
      return 'There is no first day of a period to count from, so no dates can be given. For women in general a cycle lasts about 29 days, most of them 21 to 35.';
    case 'no-phases':
      return `There are no phases to forecast: ${report.phaseUse.because.map((k) => k.label.toLowerCase()).join(', ')}. ${report.phaseUse.because.some((k) => k.id === 'combined-pill') ? 'A bleed in the break is a withdrawal bleed, not a period. ' : ''}Plan without phases.`;
    case 'too-long-ago':
      return 'The last start is more than 120 days ago. Has a period started since that was not written down? With the date, a forecast can be made.';
    case null:
      return '';
  }
}

/** A question when a start may have been left out. */
export function unrecordedText(report: CycleReport): string | null {
  const { forecast } = report;
  if (forecast === null || forecast.unrecordedChance < 0.15) return null;
  return `Has a period started since ${longDay(forecast.lastStart)} that was not written down? It is ${Math.round(100 * forecast.unrecordedChance)} % likely from her record. If none has, say so (--none-since).`;
}

/** Recorded cycles that are probably two. */
export function doubledText(report: CycleReport): string[] {
  return report.history.cycles.flatMap((c, i) => ((report.unrecorded[i] ?? 0) > 0.5 && c.length <= 150 ? [`The ${c.length} days from ${longDay(c.start)} are probably two cycles or more with a start left out (${Math.round(100 * report.unrecorded[i]!)} %); they are not averaged in.`] : []));
}

export const ratingAnswers: Record<CycleReport['ratings']['answer'], string> = {
  'no-ratings': 'No symptoms were rated.',
  'too-few-cycles': 'Two cycles with at least three ratings in the week before the period and in days 4 to 10 after it are needed before anything can be said.',
  met: 'In two cycles or more at least five symptoms, one of them of mood, rose before the period and fell after it by the published rule. A summary for a clinician, not a diagnosis.',
  'not-met': 'The published rule (five symptoms, 30 % change, two cycles) was not met. That does not make the symptoms any less real.',
};

