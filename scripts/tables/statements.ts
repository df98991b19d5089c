import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { clauses, healthRules, nutritionRules, referenceValues } from './statement-rules.ts';

function check<T>(file: string, schema: z.ZodType<T>, value: unknown): T {
  const read = schema.safeParse(value);
  if (!read.success) throw new Error(`data/${file}: ${z.prettifyError(read.error)}`);
  return read.data;
}

/** The rule sets, words, evidence and cautions of statements; every source id must be in `sources`. */
export function compileStatements(data: string, sources: ReadonlySet<string>) {
  const read = <T>(file: string, schema: z.ZodType<T>): T => check(file, schema, parse(readFileSync(join(data, file), 'utf8')));
  const rules = {
    references: read('parameters/statements/reference-values.yaml', referenceValues),
    nutrition: read('parameters/statements/nutrition-claims.yaml', nutritionRules),
    health: read('parameters/statements/health-claims.yaml', healthRules),
    clauses: read('parameters/statements/clauses.yaml', clauses),
  };
  const cited = [...rules.references, ...rules.nutrition, ...rules.clauses].map((row) => row.source);
  for (const source of cited) if (!sources.has(source)) throw new Error(`no source ${source} in data/sources`);
  return rules;
}
