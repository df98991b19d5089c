import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { readDishTables } from '../../../src/adapters/tables/index.ts';
import { lineAllergens, matchLine } from '../../../src/core/dish/index.ts';
import { allergenReader } from '../../../src/core/foods/index.ts';
import { testAllergens } from '../../allergen-tables.ts';

interface Case { readonly line: string; readonly contains?: string[]; readonly warned?: string[]; readonly unsure?: string[]; readonly absent?: string[] }
const cases = parse(readFileSync(join(import.meta.dirname, 'lines.yaml'), 'utf8')) as Case[];
const tables = readDishTables();
const reader = allergenReader(testAllergens, tables.index.entries);

describe('what a line holds, on 120 lines made by hand', () => {
  it('has 120 lines or more', () => expect(cases.length).toBeGreaterThanOrEqual(120));

  it.each(cases)('tells $line', ({ line: text, contains = [], warned = [], unsure = [], absent = [] }) => {
    const line = tables.read(`Ingredients\n${text}\n`).lines[0];
    if (!line) throw new Error(`no line was read from ${text}`);
    const match = matchLine(line, tables.index, tables.units);
    const { states } = lineAllergens({ line, match, food: match.code === null ? null : tables.foods.find(match.code) }, reader);
    const told = (id: string): string => `${id}: ${states.get(id)?.state ?? 'nothing'}`;
    expect(contains.map(told)).toEqual(contains.map((id) => `${id}: contains`));
    for (const id of warned) expect(['contains', 'may'], told(id)).toContain(states.get(id)?.state);
    for (const id of unsure) expect(states.get(id)?.state, told(id)).not.toBe('not');
    expect(absent.map(told)).toEqual(absent.map((id) => `${id}: not`));
  });
});

describe('what a line holds, on lines made after the tables stood', () => {
  const later = parse(readFileSync(join(import.meta.dirname, 'later-lines.yaml'), 'utf8')) as { readonly line: string; readonly holds: string[] }[];
  const state = ({ line: text, holds }: (typeof later)[number]): (string | undefined)[] => {
    const line = tables.read(`Ingredients\n${text}\n`).lines[0];
    if (!line) throw new Error(`no line was read from ${text}`);
    const match = matchLine(line, tables.index, tables.units);
    const { states } = lineAllergens({ line, match, food: match.code === null ? null : tables.foods.find(match.code) }, reader);
    return holds.map((id) => states.get(id)?.state);
  };
  it.each(later)('never denies $holds in $line', (one) => expect(state(one)).not.toContain('not'));
  it('warns of nine in ten of them in so many words', () => {
    const told = later.flatMap(state);
    expect(told.filter((s) => s === 'contains' || s === 'may').length / told.length).toBeGreaterThanOrEqual(0.9);
  });
});
