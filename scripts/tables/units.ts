import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { measureSystems, type Unit } from '../../src/core/quantity/index.ts';
import { knownSources } from './known-sources.ts';

const size = z.strictObject({ value: z.number().positive(), spread: z.number().min(0).max(0.9), source: z.string(), locator: z.string().min(1) });
const flag = z.boolean().default(false);
const unit = z.strictObject({
  id: z.string().regex(/^[a-z-]+$/),
  kind: z.enum(['mass', 'volume', 'length', 'count']),
  one: z.string(),
  many: z.string(),
  words: z.array(z.string()).min(1),
  exact_words: z.array(z.string()).default([]),
  vague: flag,
  container: flag,
  holds: flag,
  in_name: flag,
  spoon: flag,
  sizes: z.partialRecord(z.enum([...measureSystems, 'any']), size).default({}),
});

/** data/units.yaml, checked: every size has a known source, no spelling belongs to two units. */
export function compileUnits(data: string): Unit[] {
  const rows = z.array(unit).parse(parse(readFileSync(join(data, 'units.yaml'), 'utf8')));
  const sources = knownSources(data);
  const owner = new Map<string, string>();
  for (const row of rows) {
    if ((row.kind === 'count') !== (Object.keys(row.sizes).length === 0)) throw new Error(`units.yaml: ${row.id}: a count has no size, everything else has one`);
    if (row.kind !== 'count' && !row.sizes.any) throw new Error(`units.yaml: ${row.id}: give a size for \`any\``);
    for (const { source } of Object.values(row.sizes)) if (!sources.has(source)) throw new Error(`units.yaml: ${row.id}: unknown source ${source}`);
    for (const word of [...row.words, ...row.exact_words]) {
      const other = owner.get(word);
      if (other !== undefined) throw new Error(`units.yaml: "${word}" belongs to ${other} and to ${row.id}`);
      owner.set(word, row.id);
    }
    if (row.words.some((word) => word !== word.toLowerCase())) throw new Error(`units.yaml: ${row.id}: words are lower case`);
  }
  return rows.map(({ exact_words: exactWords, in_name: inName, ...row }) => ({ ...row, exactWords, inName }));
}
