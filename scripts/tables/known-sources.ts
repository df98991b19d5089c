import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';

/** The ids of every source listed under data/sources/. */
export function knownSources(data: string): Set<string> {
  const folder = join(data, 'sources');
  return new Set(readdirSync(folder).filter((name) => name.endsWith('.yaml')).flatMap((name) => (parse(readFileSync(join(folder, name), 'utf8')) as { id: string }[]).map(({ id }) => id)));
}
