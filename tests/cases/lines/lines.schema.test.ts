import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { Code, Measure, Range, Remark, State, unitIds } from './row-parts.ts';

const here = new URL('./', import.meta.url);

/** Units that cooks write and data/units.yaml has no id for. */
const unlisted = new Set(['katori']);

const Unit = z.string().refine((unit) => unitIds.has(unit) || unlisted.has(unit), 'no such unit');

const Row = z
  .strictObject({
    line: z.string().min(2),
    kind: z.literal('heading').optional(),
    quantity: z.union([z.number().positive(), Range, z.null()]),
    unit: Unit.nullable(),
    size: z.enum(['small', 'medium', 'large']).optional(),
    vague: z.literal(true).optional(),
    measures: z.enum(['uk', 'us', 'au']).optional(),
    each: Measure.optional(),
    total: Measure.optional(),
    foods: z.array(Code),
    near: z.array(Code).min(1).optional(),
    also: z.array(z.strictObject({ food: Code, grams: z.number().positive() })).min(1).optional(),
    state: State.nullable(),
    grams: z.number().positive().nullable(),
    tolerance: z.number().min(0.02).max(0.9).optional(),
    remarks: z.array(Remark).min(1).optional(),
    why: z.string().min(4),
  })
  .refine((row) => (row.grams === null) === (row.tolerance === undefined), 'a tolerance belongs to grams, and grams to a tolerance')
  .refine((row) => new Set([...row.foods, ...(row.near ?? [])]).size === row.foods.length + (row.near ?? []).length, 'a code stands twice')
  .refine((row) => row.near === undefined || row.foods.length === 0, 'near relatives are for foods the tables lack')
  .refine((row) => row.kind === undefined || (row.foods.length === 0 && row.grams === null), 'a heading is no food');

const files = readdirSync(here).filter((name) => name.endsWith('.yaml')).sort();
const read = (file: string) => z.array(Row).parse(parse(readFileSync(new URL(file, here), 'utf8')));

describe('the written set of ingredient lines', () => {
  it('has one file a style of writing', () => {
    expect(files).toEqual([
      'australian.yaml', 'dictated.yaml', 'fractions-and-ranges.yaml', 'herbs-and-spices.yaml', 'indian-home.yaml', 'juice-zest-and-parts.yaml',
      'metric-uk.yaml', 'pieces-and-sizes.yaml', 'sections-and-remarks.yaml', 'shorthand.yaml', 'states.yaml', 'tins-and-packs.yaml',
      'tricky-names.yaml', 'typos.yaml', 'us-cups.yaml', 'vague.yaml', 'wholefoods.yaml',
    ]);
  });

  it.each(files)('has only complete rows with codes that the tables hold in %s', (file) => {
    expect(read(file).length).toBeGreaterThan(20);
  });

  it('holds at least 430 lines with an ingredient and none of them twice', () => {
    const rows = files.flatMap(read);
    const lines = rows.filter((row) => row.kind === undefined).map((row) => row.line.trim().toLowerCase().replace(/\s+/g, ' '));
    expect(lines.length).toBeGreaterThanOrEqual(430);
    expect(new Set(lines).size).toBe(lines.length);
  });

  it('asks for foods that the tables lack in at least one line of twenty', () => {
    const rows = files.flatMap(read).filter((row) => row.kind === undefined);
    expect(rows.filter((row) => row.foods.length === 0).length).toBeGreaterThanOrEqual(rows.length / 20);
  });

  it('holds stated weights narrow: a line given in grams alone is never left wider than two fifths', () => {
    for (const row of files.flatMap(read).filter((one) => one.unit === 'g')) expect(row.tolerance, row.line).toBeLessThanOrEqual(0.4);
  });
});
