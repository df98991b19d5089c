import type { NutrientUnit } from '../core/foods/index.ts';

const whole = new Intl.NumberFormat('en-GB');

/** A number with three meaningful figures at most and no figure that means nothing: 1,234 · 84 · 8.4 · 0.84 · 0.08. */
export function figure(value: number): string {
  const size = Math.abs(value);
  if (size >= 1000) return whole.format(Math.round(value));
  if (size >= 99.5) return value.toFixed(0);
  if (size >= 9.95) return trim(value.toFixed(1));
  if (size >= 0.995) return trim(value.toFixed(2));
  if (size === 0) return '0';
  return size < 0.005 ? 'under 0.01' : trim(value.toFixed(2));
}

function trim(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A nutrient amount with its unit. */
export function amount(value: number, unit: NutrientUnit): string {
  return `${figure(value)} ${unit}`;
}

/** Grams as a cook reads them: whole above 10, one decimal below. */
export function gramsText(value: number): string {
  if (value >= 1000) return `${trim((value / 1000).toFixed(2))} kg`;
  if (value >= 10) return `${Math.round(value)} g`;
  return `${trim(value.toFixed(1)) || '0'} g`;
}

/** A share as whole percent; small ones as "under 1 %". */
export function percent(share: number): string {
  const value = share * 100;
  if (value > 0 && value < 0.5) return 'under 1 %';
  return `${Math.round(value)} %`;
}

/** "about a third of a day's": the nearest everyday fraction of a day. */
export function dayShare(share: number): string {
  const known: [number, string][] = [
    [0.1, 'a tenth of a day’s'], [0.125, 'an eighth of a day’s'], [1 / 6, 'a sixth of a day’s'], [0.2, 'a fifth of a day’s'], [0.25, 'a quarter of a day’s'],
    [1 / 3, 'a third of a day’s'], [0.4, 'two fifths of a day’s'], [0.5, 'half a day’s'], [0.6, 'three fifths of a day’s'], [2 / 3, 'two thirds of a day’s'], [0.75, 'three quarters of a day’s'],
    [1, 'a whole day’s'], [1.5, 'one and a half days’'], [2, 'two days’'], [3, 'three days’'], [4, 'four days’'],
  ];
  if (share > 4.5) return `more than ${Math.floor(share)} days’`;
  const [near, words] = known.reduce((best, now) => (Math.abs(Math.log(now[0] / share)) < Math.abs(Math.log(best[0] / share)) ? now : best));
  const off = share / near - 1;
  if (off < -0.06) return `nearly ${words}`;
  if (off > 0.06) return `a little over ${words}`;
  return words;
}

/** "a, b and c". */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
