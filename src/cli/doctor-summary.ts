import type { CycleReport } from '../app/cycle-report.ts';
import { isoDate } from '../core/calendar/index.ts';
import { flagText, notMedicine, ratingAnswers, urgencyNames } from '../messages/cycle.ts';
import { wrap } from './screen.ts';

/** One page to take to a doctor: the record in figures, criteria met, ratings by the published rule. No advice, no forecast. */
export function doctorSummary(report: CycleReport, options: { crisisLine: string; width: number }): string {
  const out: string[] = [];
  const say = (text: string): void => {
    out.push(...wrap(text, options.width));
  };
  const { cycles } = report.history;
  const whole = cycles.filter((_, i) => (report.unrecorded[i] ?? 0) < 0.5);
  const lengths = whole.map((c) => c.length);
  const bleeds = whole.flatMap((c) => (c.bleedDays === null ? [] : [c.bleedDays]));
  const { person } = report.record;
  out.push(`Summary of a cycle record, ${isoDate(report.today)}`, '='.repeat(40));
  say(`Age: ${person.age ?? 'not given'}. ${person.states.length > 0 ? `Said: ${person.states.map((s) => s.id.replaceAll('-', ' ')).join(', ')}.` : 'No pregnancy, hormone or illness was mentioned.'}`);
  out.push('', 'Cycles');
  if (lengths.length === 0) say('No whole cycle is recorded.');
  else {
    say(`${lengths.length} whole cycles since ${isoDate(whole[0]!.start)}: ${lengths.slice(-12).join(', ')} days${lengths.length > 12 ? ' (the last 12)' : ''}. Shortest ${Math.min(...lengths)}, longest ${Math.max(...lengths)}, mean ${(lengths.reduce((a, b) => a + b, 0) / lengths.length).toFixed(1)}.`);
    if (whole.length < cycles.length) say(`${cycles.length - whole.length} longer gap(s) probably hold a start that was not written down and are left out.`);
  }
  if (bleeds.length > 0) say(`Days of bleeding: ${bleeds.slice(-12).join(', ')}.`);
  if (report.history.lastStart !== null) say(`Last start: ${isoDate(report.history.lastStart)} (${report.today - report.history.lastStart} days ago).`);
  const rough = report.record.starts.filter((s) => s.slack > 0).length;
  if (rough > 0) say(`${rough} start(s) are known only roughly.`);
  out.push('', 'Published criteria met');
  if (report.flags.length === 0) say('None.');
  for (const flag of report.flags) say(`- ${urgencyNames[flag.urgency]}: ${flagText(flag)} (${flag.source}: ${flag.locator})`);
  if (report.flags.some((f) => f.id === 'severe-mood')) say(options.crisisLine);
  out.push('', 'Daily ratings (1 to 6), week before the period against days 4 to 10 (Eisenlohr-Moul 2017)');
  say(ratingAnswers[report.ratings.answer]);
  for (const cycle of report.ratings.cycles.slice(-3))
    for (const item of cycle.items) say(`- ${isoDate(cycle.start)} ${item.item}: ${item.premenstrualMean.toFixed(1)} before, ${item.postmenstrualMean.toFixed(1)} after${item.change === null ? '' : `, change ${Math.round(100 * item.change)} %`}${item.passes ? ', meets the rule' : ''}`);
  out.push('');
  say(`${notMedicine} Written by the woman or her food practitioner with Truepot.`);
  return `${out.join('\n')}\n`;
}
