import type { DishReport, Explanation, LineReport, NutrientReport } from '../app/dish-report.ts';
import { gramsText, percent } from '../messages/numbers.ts';
import { barelyUnknown } from '../messages/portion.ts';
import { bar, clip, pad, paint, wrap, type Screen } from './screen.ts';

const groupTitles: Record<string, string> = { energy: '', macronutrient: 'What it is made of', 'fatty-acid': 'Fats', vitamin: 'Vitamins', mineral: 'Minerals', other: 'Others' };

function lineRow(line: LineReport, screen: Screen): string[] {
  const grams = line.gramsG === null ? '?' : gramsText(line.gramsG.value);
  const room = Math.max(24, Math.floor((screen.width - 14) * 0.46));
  const food = line.food.tableName === null ? 'no food in the tables' : line.food.tableName;
  const mark = line.food.nearness === 'same' ? '' : line.food.nearness === 'near' ? '≈ ' : '∅ ';
  const row = `  ${pad(grams, 9, 'right')}  ${pad(clip(line.text.replace(/\s+/g, ' '), room), room)}  ${mark}${clip(food, screen.width - room - 16)}`;
  const notes = [line.eatenWords, line.food.note, ...line.findings.map((f) => f.text)].filter((n): n is string => n !== null);
  return [line.eatenShare === 0 ? paint(row, 'dim', screen) : row, ...notes.flatMap((note) => wrap(note, screen.width - 13).map((part) => paint(`${' '.repeat(13)}${part}`, 'dim', screen)))];
}

function nutrientRow(n: NutrientReport, screen: Screen): string | null {
  if (n.state === 'not-in-tables') return null;
  const name = pad(n.name, 32);
  if (n.portion === null) return paint(`  ${name}  ${n.words}`, 'dim', screen);
  const share = n.reference?.share ?? null;
  const range = n.portion.high > n.portion.low ? `${rangeText(n)}` : '';
  const meter = share === null ? pad('', 18) : `${bar(share, 12)} ${pad(percent(share), 5, 'right')}`;
  const partial = n.state === 'partial' && n.unknownShare >= barelyUnknown ? ` ${percent(n.unknownShare)} of the weight unknown` : '';
  const from = n.top.slice(0, 2).map((t) => `${clip(t.name, 20)} ${percent(t.share)}`).join(', ');
  return clip(`  ${name}${pad((n.words.split(';')[0] ?? '').replace('at least', '≥'), 12)} ${pad(paintRange(range), 17)} ${meter}  ${from}${partial}`, screen.width);
}

function rangeText(n: NutrientReport): string {
  const figures = (value: number): string => (value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2));
  return n.portion === null ? '' : `${figures(n.portion.low)}–${figures(n.portion.high)}`;
}

const paintRange = (text: string): string => (text === '' ? '' : `(${text})`);

/** A dish as a terminal page. */
export function dishView(report: DishReport, screen: Screen): string {
  const out: string[] = [];
  const heading = (text: string): void => {
    out.push('', paint(text, 'bold', screen));
  };
  out.push(paint(report.title ?? 'A dish without a name', 'bold', screen), report.servings.words);
  const weight = report.pot.portionWeightG;
  out.push(`One portion weighs about ${gramsText(weight.value)} (${gramsText(weight.low)} to ${gramsText(weight.high)}). ${report.energy.words}`);
  heading('In short');
  for (const sentence of report.reading) out.push(...wrap(`• ${sentence}`, screen.width - 2).map((part, i) => (i === 0 ? `  ${part}` : `    ${part}`)));

  heading('Lines');
  let section: string | null = null;
  for (const line of report.lines) {
    if (line.section !== section) {
      section = line.section;
      if (section !== null) out.push(paint(`  ${section}`, 'dim', screen));
    }
    out.push(...lineRow(line, screen));
  }

  for (const [group, title] of Object.entries(groupTitles)) {
    if (title === '') continue;
    const rows = report.nutrients.filter((n) => n.group === group).map((n) => nutrientRow(n, screen)).filter((row): row is string => row !== null);
    if (rows.length === 0) continue;
    heading(title);
    out.push(...rows);
  }
  const absent = report.nutrients.filter((n) => n.state === 'not-in-tables').map((n) => n.name.toLowerCase());
  if (absent.length > 0) out.push('', ...wrap(`Not in the tables (so not known, not nothing): ${absent.join(', ')}.`, screen.width).map((t) => paint(t, 'dim', screen)));

  const general = report.findings.filter((f) => f.lineId === null);
  if (general.length > 0) {
    heading('To look at');
    for (const finding of general) out.push(...wrap(`${finding.severity === 'question' ? '?' : '!'} ${finding.text}`, screen.width - 2).map((t) => `  ${t}`));
  }
  if (report.cautions.length > 0) {
    heading('Cautions');
    for (const caution of report.cautions) out.push(...wrap(`• ${caution.text} (${caution.source})`, screen.width - 2).map((t, i) => (i === 0 ? `  ${t}` : `    ${t}`)));
  }
  const reference = report.nutrients.find((n) => n.reference !== null)?.reference;
  if (reference) out.push('', ...wrap(`Shares are of a day’s reference intake: ${report.choices.lifeStage}, ${report.choices.authority}. Ask for the path of any number with --explain, for example --explain magnesium.`, screen.width).map((t) => paint(t, 'dim', screen)));
  for (const text of report.attributions) out.push(...wrap(text, screen.width).map((t) => paint(t, 'dim', screen)));
  return `${out.join('\n')}\n`;
}

/** The path of one number as a terminal page. */
export function explanationView(explanation: Explanation, screen: Screen): string {
  const out = [paint(explanation.title, 'bold', screen), ...explanation.summary.flatMap((s) => wrap(s, screen.width))];
  for (const part of explanation.parts) {
    out.push('', `${paint(part.line, 'bold', screen)}${part.share === null ? '' : `  ${bar(part.share, 12)} ${percent(part.share)}`}`);
    for (const step of part.steps) {
      out.push(...wrap(step.words, screen.width - 4).map((t, i) => (i === 0 ? `  ${t}` : `    ${t}`)));
      if (step.source !== null) out.push(...wrap(step.source, screen.width - 6).map((t) => paint(`      ${t}`, 'dim', screen)));
    }
  }
  if (explanation.uncertainty.length > 0) {
    out.push('', paint('Where the range comes from', 'bold', screen));
    for (const cause of explanation.uncertainty) out.push(`  ${bar(cause.share, 12)} ${pad(percent(cause.share), 5, 'right')}  ${cause.words}`);
  }
  return `${out.join('\n')}\n`;
}
