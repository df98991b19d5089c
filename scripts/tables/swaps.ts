import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { dishRoles, keptQualities, type SwapTables } from '../../src/core/dish/index.ts';

const text = z.string().trim().min(1);
const values = z.record(text, z.number().min(0)).default({});
const schema = z.array(z.strictObject({
  id: text,
  roles: z.array(z.enum(dishRoles)).min(1),
  keeps: z.enum(keptQualities),
  tight: z.boolean().default(true),
  groups: z.array(z.array(text).min(1)).min(1),
  strength: values.refine((v) => Object.values(v).every((x) => x > 0), 'a strength must be above 0'),
  minutes: values,
}));

/** data/tables/swaps/families.yaml, checked against the kitchen names. A name that the kitchen has given up is told and skipped. */
export function compileSwaps(data: string, kitchenNames: ReadonlySet<string>): SwapTables {
  const file = 'tables/swaps/families.yaml';
  const read = schema.safeParse(parse(readFileSync(join(data, file), 'utf8')));
  if (!read.success) throw new Error(`data/${file}: ${z.prettifyError(read.error)}`);
  const seen = new Set<string>();
  for (const family of read.data) {
    if (seen.has(family.id)) throw new Error(`data/${file}: the family ${family.id} stands twice`);
    seen.add(family.id);
    const members = new Set(family.groups.flat());
    for (const key of [...Object.keys(family.strength), ...Object.keys(family.minutes)]) {
      if (!members.has(key.split('/')[0] ?? '')) throw new Error(`data/${file}: ${family.id} gives a value to ${key}, which is not in its groups`);
    }
    for (const name of members) if (!kitchenNames.has(name)) console.warn(`data/${file}: the kitchen has no food called ${name}`);
  }
  return { families: read.data };
}
