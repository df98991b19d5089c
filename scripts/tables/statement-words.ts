import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { claimClasses, type StatementWords } from '../../src/core/statements/index.ts';

const phraseList = z.string().transform((text) => text.split(',').map((p) => p.trim()).filter((p) => p !== ''));
const lists = z.record(z.string(), phraseList);
const formsSchema = z.strictObject({ irregular: z.record(z.string(), z.string()), spelling: z.array(z.tuple([z.string(), z.string()])), ise: z.array(z.string()) });
const patternsSchema = z.strictObject({
  lists,
  lines: z.array(z.strictObject({ class: z.enum(claimClasses), words: z.string().min(2), needs: z.string().optional(), keep: z.string().optional() })),
});

/** The words of statements: every file of data/statements/words. */
export function compileStatementWords(data: string): StatementWords {
  const read = <T>(name: string, schema: z.ZodType<T>): T => {
    const file = `statements/words/${name}.yaml`;
    const result = schema.safeParse(parse(readFileSync(join(data, file), 'utf8')));
    if (!result.success) throw new Error(`data/${file}: ${z.prettifyError(result.error)}`);
    return result.data;
  };
  const nutrients = read('nutrients', lists);
  const nutrientOf = Object.fromEntries(Object.entries(nutrients).flatMap(([id, phrases]) => phrases.map((phrase) => [phrase, id])));
  const prefixed = (prefix: string, from: Record<string, readonly string[]>): Record<string, readonly string[]> => Object.fromEntries(Object.entries(from).map(([name, phrases]) => [`${prefix}${name}`, phrases]));
  const patterns = read('patterns', patternsSchema);
  return {
    forms: read('forms', formsSchema),
    lists: {
      ...read('health', lists), ...read('things', lists), ...patterns.lists,
      ...prefixed('rel:', read('relations', lists)), ...prefixed('frame:', read('frames', lists)),
      nutrient: Object.keys(nutrientOf),
      percent: ['%', 'percent', 'per cent'],
    },
    nutrientOf,
    patterns: patterns.lines.map(({ class: kind, words, needs }) => ({ class: kind, words, ...(needs === undefined ? {} : { needs }) })),
  };
}
