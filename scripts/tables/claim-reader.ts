import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { gramBucketCount, tagNames } from '../../src/core/statements/index.ts';

const matrix = z.strictObject({ rows: z.int().positive(), width: z.int().positive(), scales: z.base64(), values: z.base64() });
const direction = z.strictObject({ input: matrix, state: matrix, bias: z.base64() });
const file = z.strictObject({
  made: z.looseObject({ by: z.string(), on: z.iso.date(), rows: z.int(), corpusSha256: z.string() }),
  tags: z.array(z.string()), words: z.string(), signs: z.array(z.string()), buckets: z.int(), hidden: z.int(),
  tables: z.array(z.strictObject({ words: matrix, signs: matrix, grams: matrix, layers: z.array(z.strictObject({ forward: direction, backward: direction })).min(1), out: matrix, outBias: z.base64(), follow: z.base64(), first: z.base64(), last: z.base64() })).min(1),
});
export type ClaimReaderFile = z.infer<typeof file>;

/** The fitted readers of claims as scripts/fit-claims.ts wrote it; its tags, buckets and table sizes must be those of the code. */
export function compileClaimReader(data: string): ClaimReaderFile {
  const name = 'data/statements/claim-reader.json';
  const read = file.safeParse(JSON.parse(readFileSync(join(data, 'statements/claim-reader.json'), 'utf8')));
  if (!read.success) throw new Error(`${name}: ${z.prettifyError(read.error)}`);
  const { tags, words, signs, buckets, tables } = read.data;
  if (tags.join() !== tagNames.join()) throw new Error(`${name}: its tags are not those of src/core/statements/claim-tags.ts; run scripts/fit-claims.ts again`);
  if (buckets !== gramBucketCount || tables.some((t) => t.grams.rows !== gramBucketCount)) throw new Error(`${name}: pieces of words should fall into ${gramBucketCount} buckets`);
  if (tables.some((t) => t.words.rows !== words.split(' ').length + 1 || t.signs.rows !== signs.length)) throw new Error(`${name}: words and signs should have a row each, and unknown words one`);
  return read.data;
}
