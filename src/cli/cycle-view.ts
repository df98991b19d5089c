import type { CycleWords } from '../messages/cycle-words.ts';
import { clip, columns, pad, paint, wrap, type Screen } from './screen.ts';

/** A cycle report as a terminal page; red flags first. */
export function cycleView(words: CycleWords, schemeName: string, screen: Screen): string {
  const out: string[] = [];
  const section = (title: string, lines: readonly string[], mark = ''): void => {
    if (lines.length === 0) return;
    out.push('', paint(title, 'bold', screen));
    for (const line of lines) out.push(...wrap(`${mark}${line}`, screen.width - 2).map((row) => `  ${row}`));
  };
  section('Please read first', [...words.urgent, ...(words.crisisLine ? [words.crisisLine] : [])], '! ');
  section('Questions', words.questions.map((q) => q.text), '? ');
  section('Forecast', [...words.forecast, words.warning]);
  if (words.plain) section('Food', [...words.plain, `The scheme “${schemeName}” is not shown: it gives way.`]);
  else if (words.days.length > 0) {
    out.push('', paint(`Days, with the scheme “${schemeName}”`, 'bold', screen), ...dayTable(words, screen));
    for (const rule of words.rules) out.push(...wrap(`${rule.title}: ${rule.text}. Evidence: ${rule.evidence}.`, screen.width - 2).map((row) => `  ${row}`));
    for (const note of words.schemeNotes) out.push(...wrap(note, screen.width - 2).map((row) => `  ${row}`));
  }
  section('About the record', words.notes);
  section('For a doctor, by published criteria', words.milder);
  section('Day notes', words.dayNotes);
  return `${out.join('\n').replace(/^\n/, '')}\n`;
}

function dayTable({ days, rules }: CycleWords, screen: Screen): string[] {
  const widest = (texts: readonly string[]): number => Math.max(...texts.map(columns));
  const short = (long: string): string => long.replace(/^(\w+) (\d+) (\w{3})\w* \d+$/, '$1 $2 $3');
  const dayWidth = widest(days.map((d) => short(d.long))) + 1;
  const phaseWidth = widest(['Likely phases', ...days.map((d) => d.phases)]) + 1;
  const fixedWidth = widest(['In fixed days', ...days.map((d) => d.fixed)]);
  const adviceWidth = Math.max(18, Math.min(widest(['Advice', ...days.map((d) => d.advice)]) + 1, screen.width - dayWidth - phaseWidth - fixedWidth - 5));
  const row = (cells: readonly [string, string, string, string]): string =>
    clip(`  ${pad(cells[0], dayWidth)} ${pad(cells[1], phaseWidth)} ${rules.length > 0 ? `${pad(clip(cells[2], adviceWidth), adviceWidth)} ${cells[3]}` : ''}`, screen.width).trimEnd();
  return [paint(row(['Day', 'Likely phases', 'Advice', 'In fixed days']), 'dim', screen), ...days.map((d) => row([short(d.long), d.phases, d.advice, d.fixed]))];
}
