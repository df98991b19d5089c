import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { claimClasses, evidenceGrades, lawIds, type StatementRules } from '../../src/core/statements/index.ts';
import { clauses, disclosureLevels, healthRules, nutritionRules, referenceValues } from './statement-rules.ts';
import { compileStatementWords } from './statement-words.ts';

function check<T>(file: string, schema: z.ZodType<T>, value: unknown): T {
  const read = schema.safeParse(value);
  if (!read.success) throw new Error(`data/${file}: ${z.prettifyError(read.error)}`);
  return read.data;
}

const classVerdict = z.strictObject({ verdict: z.enum(['not-lawful', 'substantiate', 'with-listed-claim', 'free']), clauses: z.array(z.string()).min(1) });
const verdicts = z.partialRecord(z.enum([...claimClasses, 'botanical']), z.record(z.enum(lawIds), classVerdict)) as unknown as z.ZodType<StatementRules['verdicts']>;
const topics = z.record(z.string(), z.string().transform((text) => text.split(',').map((w) => w.trim())));
const template = z.strictObject({ needs: z.enum(['source', 'high', 'low', 'permitted', 'anySource', 'anyPermitted']), text: z.string() });
const rewrites = z.strictObject({ names: z.record(z.string(), z.string()), templates: z.partialRecord(z.enum(claimClasses), z.array(template)), plain: z.array(z.string()).min(1), prefer: z.array(z.string()) }) as unknown as z.ZodType<StatementRules['rewrites']>;
const evidence = z.array(z.strictObject({
  id: z.string(), about: z.array(z.array(z.string()).min(1)).min(1), statement: z.string(), grade: z.enum(evidenceGrades), finding: z.string(), citation: z.string(),
  doi: z.string().regex(/^10\.\S+$/).nullable(), population: z.string(), dose: z.string().nullable(), doseG: z.number().positive().nullable(), doseFood: z.array(z.string()), checked: z.enum(['abstract', 'secondary', 'memory']),
}));
const cautions = z.array(z.strictObject({
  id: z.string(), text: z.string(),
  when: z.strictObject({ words: z.array(z.string()).optional(), classes: z.array(z.enum(claimClasses)).optional(), foods: z.array(z.string()).optional(), client: z.array(z.string()).optional() }).refine((w) => Object.keys(w).length > 0, 'say when'),
  source: z.string(), locator: z.string(), checked: z.string(),
})) as unknown as z.ZodType<StatementRules['cautions']>;

const referenceAmounts = z.array(z.strictObject({ words: z.array(z.string()).min(1), grams: z.number().positive(), dryGrams: z.number().positive().optional(), group: z.enum(['none', 'protein', 'dairy', 'grain', 'vegetable']), meat: z.boolean().optional() })) as unknown as z.ZodType<StatementRules['referenceAmounts']>;

function unique(file: string, ids: readonly string[]): void {
  const twice = ids.find((id, i) => ids.indexOf(id) !== i);
  if (twice !== undefined) throw new Error(`data/${file}: ${twice} stands twice`);
}

/** The rule sets, words, evidence and cautions of statements; every source, clause and topic that is named must be there. */
export function compileStatements(data: string, sources: ReadonlySet<string>): StatementRules {
  const read = <T>(file: string, schema: z.ZodType<T>): T => check(file, schema, parse(readFileSync(join(data, file), 'utf8')));
  const topicLists = read('parameters/statements/topics.yaml', topics);
  const rules: StatementRules = {
    references: read('parameters/statements/reference-values.yaml', referenceValues),
    nutrition: read('parameters/statements/nutrition-claims.yaml', nutritionRules),
    levels: read('parameters/statements/disclosure-levels.yaml', disclosureLevels),
    health: read('parameters/statements/health-claims.yaml', healthRules),
    clauses: read('parameters/statements/clauses.yaml', clauses),
    verdicts: read('parameters/statements/verdicts.yaml', verdicts),
    topicOf: Object.fromEntries(Object.entries(topicLists).flatMap(([topic, words]) => words.map((word) => [word, topic]))),
    rewrites: read('statements/rewrites.yaml', rewrites),
    evidence: read('statements/evidence/library.yaml', evidence),
    cautions: read('parameters/statements/cautions.yaml', cautions),
    referenceAmounts: read('parameters/statements/racc.yaml', referenceAmounts),
    words: compileStatementWords(data),
  };
  unique('statements/evidence/library.yaml', rules.evidence.map((n) => n.id));
  unique('parameters/statements/nutrition-claims.yaml', rules.nutrition.map((n) => n.id));
  unique('parameters/statements/disclosure-levels.yaml', rules.levels.map((row) => row.kind));
  unique('parameters/statements/health-claims.yaml', rules.health.flatMap((h) => h.effects.map((e) => e.id)));
  for (const source of [...rules.references, ...rules.nutrition, ...rules.levels, ...rules.clauses, ...rules.cautions].map((row) => row.source)) if (!sources.has(source)) throw new Error(`no source ${source} in data/sources`);
  const clauseIds = new Set(rules.clauses.map((c) => c.id));
  for (const row of Object.values(rules.verdicts)) for (const v of Object.values(row)) for (const id of v.clauses) if (!clauseIds.has(id)) throw new Error(`data/parameters/statements/verdicts.yaml: there is no clause ${id}`);
  return rules;
}
