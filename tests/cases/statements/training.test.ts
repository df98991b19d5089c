import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compileClaimReader } from '../../../scripts/tables/claim-reader.ts';
import { claimClasses, polarities } from '../../../src/core/statements/index.ts';
import { folderSum, readMarkedFolder } from './marked-rows.ts';
import { readRows } from './score.ts';

const here = import.meta.dirname;
const folder = join(here, 'training');
const rows = readMarkedFolder(folder);
const wordsOf = (text: string): string[] => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim().split(' ');
const runLength = 6;
const runsOf = (text: string): string[] => {
  const words = wordsOf(text);
  return words.slice(0, Math.max(0, words.length - runLength + 1)).map((_, i) => words.slice(i, i + runLength).join(' '));
};

describe('the sentences that the claim reader is fitted to', () => {
  it('are many, and hold every class and polarity many times', () => {
    expect(rows.length).toBeGreaterThan(20_000);
    const claims = rows.flatMap((row) => row.claims);
    for (const name of claimClasses) expect(claims.filter((c) => c.class === name).length, name).toBeGreaterThan(1000);
    for (const name of polarities) expect(claims.filter((c) => c.polarity === name).length, name).toBeGreaterThan(1000);
    expect(rows.filter((row) => row.claims.length === 0).length / rows.length).toBeGreaterThan(0.1);
  });
  it('share no run of six words with the held-out sentences', () => {
    const heldOut = new Set(readRows(join(here, 'held-out-2/labels.yaml')).flatMap((row) => runsOf(row.text)));
    expect(rows.filter((row) => runsOf(row.text).some((run) => heldOut.has(run))).map((row) => row.id)).toEqual([]);
  });
  it('hold none of the double-labelled sentences', () => {
    const labelled = new Set(['dev-1.yaml', 'held-out-1.yaml', 'held-out-2/labels.yaml'].flatMap((file) => readRows(join(here, file)).map((row) => wordsOf(row.text).join(' '))));
    expect(rows.filter((row) => labelled.has(wordsOf(row.text).join(' '))).map((row) => row.id)).toEqual([]);
  });
  it('are those that data/statements/claim-reader.json was fitted to', () => {
    const { made } = compileClaimReader(join(here, '../../../data'));
    expect(made.corpusSha256).toBe(folderSum(folder));
    expect(made.rows).toBe(rows.length);
  });
});
