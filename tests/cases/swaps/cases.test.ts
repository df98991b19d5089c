import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { readDishTables } from '../../../src/adapters/tables/index.ts';
import { matchLine, swapRanker } from '../../../src/core/dish/index.ts';
import { testSwaps } from '../../swap-tables.ts';

interface Case { readonly line: string; readonly expect: string; readonly why: string }
const cases = parse(readFileSync(join(import.meta.dirname, 'cases.yaml'), 'utf8')) as Case[];
const tables = readDishTables();
const ranker = swapRanker(testSwaps, tables.index.entries, tables.foods);

function ranked(text: string): string[] {
  const line = tables.read(`Ingredients\n${text}\n`).lines[0];
  if (!line) throw new Error(`no line was read from ${text}`);
  const match = matchLine(line, tables.index, tables.units);
  return ranker.rank({ entry: match.entry, form: match.form, food: match.code === null ? null : tables.foods.find(match.code) }, 40).map((o) => (o.form === o.entry.usual || o.entry.name !== match.entry?.name ? o.entry.name : `${o.entry.name} (${o.form})`));
}

describe('60 swaps by hand', () => {
  it('has 60 cases, each with its reason', () => {
    expect(cases.length).toBeGreaterThanOrEqual(60);
    expect(cases.every((c) => c.why.length > 5)).toBe(true);
  });
  it('ranks the expected food among the first three for 85 % of them', () => {
    const missed = cases.filter((c) => !ranked(c.line).slice(0, 3).includes(c.expect)).map((c) => `${c.line}: ${c.expect} is not in ${ranked(c.line).slice(0, 5).join(', ')}`);
    expect((cases.length - missed.length) / cases.length, missed.join('\n')).toBeGreaterThanOrEqual(0.85);
  });
  it('offers every expected food somewhere in its list', () => {
    expect(cases.filter((c) => !ranked(c.line).includes(c.expect)).map((c) => c.line)).toEqual([]);
  });
});
