import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { readMonths, type SeasonTable } from '../../src/core/dish/index.ts';
import { knownSources } from './known-sources.ts';

const text = z.string().trim().min(1);
const schema = z.strictObject({ region: text, name: text, source: text, checked_on: text, foods: z.record(text, text.refine((m) => readMonths(m) !== null, 'write months as 6-9')) });

/** data/tables/seasons/*.yaml: one region a file. */
export function compileSeasons(data: string, kitchenNames: ReadonlySet<string>): SeasonTable[] {
  const folder = join(data, 'tables/seasons');
  const sources = knownSources(data);
  return readdirSync(folder).filter((f) => f.endsWith('.yaml')).sort().map((file) => {
    const read = schema.safeParse(parse(readFileSync(join(folder, file), 'utf8')));
    if (!read.success) throw new Error(`data/tables/seasons/${file}: ${z.prettifyError(read.error)}`);
    if (!sources.has(read.data.source)) throw new Error(`data/tables/seasons/${file}: unknown source ${read.data.source}`);
    for (const name of Object.keys(read.data.foods)) if (!kitchenNames.has(name)) console.warn(`data/tables/seasons/${file}: the kitchen has no food called ${name}`);
    const { region, name, source, foods } = read.data;
    return { region, name, source, foods };
  });
}
