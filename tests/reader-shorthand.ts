import type { Amount, IngredientLine, StatedMeasure, StepAction } from '../src/core/dish/index.ts';
import type { ReadLine } from '../src/core/dish/index.ts';
import type { Interval } from '../src/core/quantity/index.ts';

const figure = (value: number): string => String(Math.round(value * 1e4) / 1e4);
const range = ({ low, value, high }: Interval): string => (low === high ? figure(value) : `${figure(low)}..${figure(value)}..${figure(high)}`);
const stated = (name: string, measure: StatedMeasure | null): string => (measure ? ` ${name} ${range(measure.quantity)} ${measure.unit}` : '');

/** An amount in short: "2 tin each 400 g", "1 handful heaped vague"; `-` for none. */
export function shortAmount(amount: Amount | null): string {
  if (!amount) return '-';
  const { quantity, unit, size, fill, each, total, vague } = amount;
  return [range(quantity), unit ?? '', size ?? '', fill ?? '', vague ? 'vague' : ''].filter((part) => part !== '').join(' ') + stated('each', each) + stated('total', total);
}

/** A read line in short: amount | food | qualifiers, then `or`, `plus`, `#remark` and `!problem`. */
export function shortLine(line: ReadLine): string {
  const parts = [shortAmount(line.amount), line.food.name];
  if (line.food.qualifiers.length > 0) parts.push(line.food.qualifiers.join('; '));
  for (const other of line.instead) parts.push(`or ${shortAmount(other.amount)} ${[...other.food.qualifiers, other.food.name].join(' ')}`);
  for (const further of line.more) parts.push(`plus ${shortAmount(further)}`);
  for (const remark of line.remarks) parts.push(`#${remark}`);
  for (const problem of line.problems) parts.push(`!${problem.code}`);
  return parts.join(' | ');
}

/** One action in short: "simmer simmered 20 min lid-on low until thick | takes onions | pot oil, onions". */
export function shortAction(action: StepAction, lines: readonly IngredientLine[]): string {
  const names = (ids: readonly string[]): string => ids.map((id) => lines.find((line) => line.id === id)?.food.name ?? id).join(', ');
  const words = [
    action.verb,
    action.method ?? '',
    action.minutes ? `${range(action.minutes)} min` : '',
    action.celsius === null ? '' : `${action.celsius} °C`,
    action.lid === null ? '' : action.lid ? 'lid-on' : 'lid-off',
    action.heat ?? '',
    action.until === null ? '' : `until ${action.until}`,
  ].filter((word) => word !== '').join(' ');
  return [words, action.lines.length > 0 ? `takes ${names(action.lines)}` : '', action.inPot.length > 0 ? `pot ${names(action.inPot)}` : ''].filter((part) => part !== '').join(' | ');
}
