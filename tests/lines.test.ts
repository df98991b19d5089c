import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { MeasureSystem } from '../src/core/quantity/index.ts';
import { foods, units, weighText, type WeighedLine } from './weighing/lines.ts';

/** One answered line of tests/cases/lines (its README tells what each field means). */
interface Row {
  line: string;
  kind?: 'heading';
  quantity: number | { low: number; high: number } | null;
  unit: string | null;
  vague?: true;
  measures?: MeasureSystem;
  each?: { quantity: number; unit: string };
  total?: { quantity: number; unit: string };
  foods: string[];
  near?: string[];
  grams: number | null;
  tolerance?: number;
}

const folder = new URL('./cases/lines/', import.meta.url);
const rows = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .flatMap((name) => (parse(readFileSync(new URL(name, folder), 'utf8')) as Row[]).map((row) => ({ ...row, file: name })))
  .filter((row) => row.kind !== 'heading');

/** The ingredient that the line is about: read alone, its first food. */
const answers = rows.map((row) => ({ row, got: weighText(row.line, { measures: row.measures ?? (row.file === 'us-cups.yaml' ? 'us' : 'uk'), servings: 4 })[0] }));

const close = (a: number, b: number): boolean => Math.abs(a - b) <= 0.01 * Math.max(Math.abs(b), 0.01);

function quantityIsRight(row: Row, got: WeighedLine): boolean {
  const amount = got.line.amount;
  if (row.quantity === null) return amount === null || amount.vague || amount.unit === 'some';
  if (!amount) return false;
  const { low, value, high } = amount.quantity;
  return typeof row.quantity === 'number' ? close(value, row.quantity) : close(low, row.quantity.low) && close(high, row.quantity.high);
}

/** Bare counts may be written null or piece; a word that is part of the food's name may be a unit or not. */
function unitIsRight(row: Row, got: WeighedLine): boolean {
  const unit = got.line.amount?.unit ?? null;
  if (unit === row.unit) return true;
  if (row.quantity === null) return true;
  const bare = (id: string | null): boolean => id === null || id === 'piece' || (units.find(id)?.inName ?? false);
  return bare(unit) && bare(row.unit);
}

function measuresAreRight(row: Row, got: WeighedLine): boolean {
  const amount = got.line.amount;
  const stated = [amount?.each, amount?.total];
  return [row.each, row.total].every((wanted) => wanted === undefined || stated.some((m) => m && close(m.quantity.value, wanted.quantity) && m.unit === wanted.unit) || (amount?.unit === wanted.unit && close(amount.quantity.value, wanted.quantity)));
}

function foodIsRight(row: Row, got: WeighedLine): boolean {
  const { code, nearness } = got.match;
  if (code === null) return row.foods.length === 0;
  return row.foods.includes(code) || (nearness === 'near' && (row.near?.includes(code) ?? false));
}

function gramsAreRight(row: Row, got: WeighedLine): boolean {
  if (row.grams === null) return true;
  const value = got.weighing.grams?.value;
  return value !== undefined && Math.abs(value / row.grams - 1) <= (row.tolerance ?? 0.02) + 0.01;
}

const told = (got: WeighedLine | undefined): string => {
  if (!got) return 'nothing read';
  const { line, match, weighing } = got;
  const name = match.code === null ? 'no food' : `${match.code} ${foods.get(match.code).name}`;
  return `${line.amount?.quantity.value ?? '–'} ${line.amount?.unit ?? '–'} | ${line.food.name} [${line.food.qualifiers.join(', ')}] | ${match.entry?.name ?? match.via}, ${match.form ?? ''}: ${name} (${match.nearness}) | ${weighing.grams ? weighing.grams.value.toFixed(1) : '–'} g`;
};

function share(what: string, isRight: (row: Row, got: WeighedLine) => boolean, wanted: (row: Row) => string): number {
  const misses = answers.filter(({ row, got }) => !got || !isRight(row, got));
  const right = 1 - misses.length / answers.length;
  console.log(`${what}: ${(100 * right).toFixed(1)} % of ${answers.length} lines\n${misses.map(({ row, got }) => `  ${row.file} “${row.line}” wanted ${wanted(row)} got ${told(got)}`).join('\n')}`);
  return right;
}

describe('lines answered by hand', () => {
  it('are read with the amount and unit that is written, 95 in 100', () => {
    const right = share('amounts and units', (row, got) => quantityIsRight(row, got) && unitIsRight(row, got) && measuresAreRight(row, got), (row) => `${JSON.stringify(row.quantity)} ${row.unit} ${row.each ? `each ${row.each.quantity} ${row.each.unit}` : ''}${row.total ? `total ${row.total.quantity} ${row.total.unit}` : ''}`);
    expect(right).toBeGreaterThanOrEqual(0.95);
  });

  it('lead to a food that an examiner accepts, 90 in 100', () => {
    const right = share('foods', foodIsRight, (row) => (row.foods.length > 0 ? row.foods.map((code) => `${code} ${foods.find(code)?.name}`).slice(0, 3).join(' or ') : `no food${row.near ? ` or near ${row.near.join()}` : ''}`));
    expect(right).toBeGreaterThanOrEqual(0.9);
  });

  it('seldom lead to a wrong food without a word about it', () => {
    const silent = answers.filter(({ row, got }) => got && got.match.code !== null && !foodIsRight(row, got) && got.match.nearness === 'same' && got.match.note === null);
    console.log(`wrong foods without a note: ${silent.length}\n${silent.map(({ row, got }) => `  “${row.line}” ${told(got)}`).join('\n')}`);
    expect(silent.length / answers.length).toBeLessThanOrEqual(0.02);
  });

  it('weigh within what a careful practitioner accepts, 90 in 100', () => {
    const right = share('grams', gramsAreRight, (row) => `${row.grams} g ± ${100 * (row.tolerance ?? 0)} %`);
    expect(right).toBeGreaterThanOrEqual(0.9);
  });

  it('that give nothing to go on get no weight, or one that is called usual', () => {
    for (const { row, got } of answers) {
      if (row.grams !== null || row.vague || !got?.weighing.grams || row.quantity !== null) continue;
      expect(got.weighing.findings.map((f) => f.code), row.line).toContain('usual-amount');
    }
  });
});
