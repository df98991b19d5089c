import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';

const sourceSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]+$/),
  title: z.string().min(3),
  publisher: z.string(),
  year: z.number().int().nullable(),
  licence: z.string(),
  edition: z.string().optional(),
  attribution: z.string().optional(),
  address: z.string().optional(),
  from_memory: z.boolean().optional(),
});

export type Source = z.infer<typeof sourceSchema>;

/** Reads data/sources/*.yaml; throws on a malformed source and on an id that stands twice. */
export function compileSources(data: string): Source[] {
  const folder = join(data, 'sources');
  const byId = new Map<string, string>();
  return readdirSync(folder).filter((name) => name.endsWith('.yaml')).sort().flatMap((name) => {
    const read = z.array(sourceSchema).safeParse(parse(readFileSync(join(folder, name), 'utf8')) ?? []);
    if (!read.success) throw new Error(`data/sources/${name}: ${z.prettifyError(read.error)}`);
    for (const source of read.data) {
      const before = byId.get(source.id);
      if (before) throw new Error(`data/sources/${name}: the source ${source.id} already stands in ${before}`);
      byId.set(source.id, name);
    }
    return read.data;
  });
}
