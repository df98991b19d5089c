import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { claimClasses, polarities } from '../../../src/core/statements/index.ts';

const load = (name: string): unknown => parse(readFileSync(join(import.meta.dirname, 'held-out-2', name), 'utf8'));
const Id = z.string().regex(/^h\d{3}$/);
const Claims = z.array(z.strictObject({ span: z.string().min(2), class: z.enum(claimClasses), polarity: z.enum(polarities), subject: z.string().optional() }));
const sentences = z.array(z.strictObject({ id: Id, text: z.string().min(8) })).parse(load('sentences.yaml'));
const labelsOf = (name: string) => z.array(z.strictObject({ id: Id, claims: Claims })).parse(load(name));
const first = labelsOf('labels-a.yaml');
const second = labelsOf('labels-b.yaml');
const settled = z.array(z.strictObject({ id: Id, text: z.string(), claims: Claims })).parse(load('labels.yaml'));

/** What a row claims without its words: every class with its polarity, in no order. */
const kinds = (claims: z.infer<typeof Claims>): string => claims.map((claim) => `${claim.class} ${claim.polarity}`).sort().join(', ');

describe('the second held-out set', () => {
  it('has 330 sentences, none twice, labelled in order by both labellings and settled', () => {
    const ids = sentences.map((row) => row.id);
    expect(ids).toEqual(Array.from({ length: 330 }, (_, i) => `h${String(i + 1).padStart(3, '0')}`));
    expect(new Set(sentences.map((row) => row.text.toLowerCase())).size).toBe(330);
    for (const rows of [first, second, settled]) expect(rows.map((row) => row.id)).toEqual(ids);
    expect(settled.map((row) => row.text)).toEqual(sentences.map((row) => row.text));
  });
  it('copies every span from its sentence, once', () => {
    for (const rows of [first, second, settled]) rows.forEach((row, i) => row.claims.forEach(({ span }) => expect(sentences[i]?.text.split(span).length, row.id).toBeGreaterThanOrEqual(2)));
  });
  it('settles only what the two labellings see differently', () => {
    const moved = settled.filter((row, i) => {
      const a = kinds(first[i]?.claims ?? []);
      return a === kinds(second[i]?.claims ?? []) && a !== kinds(row.claims);
    });
    expect(moved.map((row) => row.id)).toEqual([]);
  });
  it('has claims of every class and polarity, sentences with nothing to check, and sentences with more than one claim', () => {
    const claims = settled.flatMap((row) => row.claims);
    for (const name of claimClasses) expect(claims.filter((c) => c.class === name).length, name).toBeGreaterThanOrEqual(15);
    for (const name of polarities) expect(claims.filter((c) => c.polarity === name).length, name).toBeGreaterThanOrEqual(5);
    expect(settled.filter((row) => row.claims.length === 0).length).toBeGreaterThanOrEqual(45);
    expect(settled.filter((row) => row.claims.length > 1).length).toBeGreaterThanOrEqual(65);
  });
});
