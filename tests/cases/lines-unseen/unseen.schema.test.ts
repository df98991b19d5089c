import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { Code, Measure, Range, Remark, State, unitIds } from '../lines/row-parts.ts';

const here = new URL('./', import.meta.url);
const tuned = new URL('../lines/', import.meta.url);

const Unit = z.string().refine((unit) => unitIds.has(unit), 'no such unit');

const Row = z
  .strictObject({
    line: z.string().min(2),
    quantity: z.union([z.number().positive(), Range, z.null()]),
    unit: Unit.nullable(),
    size: z.enum(['small', 'medium', 'large']).optional(),
    vague: z.literal(true).optional(),
    measures: z.enum(['uk', 'us', 'au']).optional(),
    each: Measure.optional(),
    total: Measure.optional(),
    foods: z.array(Code),
    near: z.array(Code).min(1).optional(),
    state: State.nullable(),
    grams: z.number().positive().nullable(),
    tolerance: z.number().min(0.02).max(0.9).optional(),
    remarks: z.array(Remark).min(1).optional(),
    why: z.string().min(4),
  })
  .refine((row) => (row.grams === null) === (row.tolerance === undefined), 'a tolerance belongs to grams, and grams to a tolerance')
  .refine((row) => new Set([...row.foods, ...(row.near ?? [])]).size === row.foods.length + (row.near ?? []).length, 'a code stands twice')
  .refine((row) => row.near === undefined || row.foods.length === 0, 'near relatives are for foods the tables lack');

const yamlIn = (folder: URL): string[] => readdirSync(folder).filter((name) => name.endsWith('.yaml')).sort();
const files = yamlIn(here);
const read = (file: string) => z.array(Row).parse(parse(readFileSync(new URL(file, here), 'utf8')));
const plain = (line: string): string => line.trim().toLowerCase().replace(/\s+/g, ' ');

/** The lines of the set that the reader was made with; only compared, never shown. */
const tunedLines = new Set(
  yamlIn(tuned)
    .flatMap((file) => z.array(z.object({ line: z.string() })).parse(parse(readFileSync(new URL(file, tuned), 'utf8'))))
    .map((row) => plain(row.line)),
);

describe('the set of ingredient lines that nobody tuned the reader on', () => {
  it('has one file a style of writing', () => {
    expect(files).toEqual([
      'alternatives-and-extras.yaml', 'australian.yaml', 'confused-or-lacking.yaml', 'dictated.yaml', 'everyday-uk.yaml', 'everyday-us.yaml', 'indian-english.yaml',
      'magazine-and-packs.yaml', 'numbers.yaml', 'old-fashioned.yaml', 'parts-and-sizes.yaml', 'shorthand.yaml', 'typos.yaml',
    ]);
  });

  it.each(files)('has only complete rows with codes that the tables hold in %s', (file) => {
    expect(read(file).length).toBeGreaterThan(14);
  });

  it('holds at least 260 lines and none of them twice', () => {
    const lines = files.flatMap(read).map((row) => plain(row.line));
    expect(lines.length).toBeGreaterThanOrEqual(260);
    expect(lines.filter((line, at) => lines.indexOf(line) !== at)).toEqual([]);
  });

  it('shares no line with the set in tests/cases/lines', () => {
    expect(tunedLines.size).toBeGreaterThan(400);
    expect(files.flatMap(read).filter((row) => tunedLines.has(plain(row.line))).map((row) => row.line)).toEqual([]);
  });

  it('holds at least 25 lines with a slip of the pen and 25 with a food that is lacking or easily confused', () => {
    expect(read('typos.yaml').length).toBeGreaterThanOrEqual(25);
    expect(read('confused-or-lacking.yaml').length).toBeGreaterThanOrEqual(25);
  });
});
