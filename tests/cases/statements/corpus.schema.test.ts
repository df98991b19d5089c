import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { drawSplit } from './draw-split.ts';

const here = new URL('./', import.meta.url);
const load = (file: string): unknown => parse(readFileSync(new URL(file, here), 'utf8'));

const classes = [
  'nutrient-content', 'quantified', 'comparison', 'function', 'well-being', 'disease', 'weight',
  'endorsement', 'fear', 'absolute', 'cycle-hormone', 'kitchen-science', 'caution',
] as const;

const Id = z.string().regex(/^s\d{3}$/);
const Sentence = z.strictObject({ id: Id, text: z.string().min(8), context: z.string().min(8).optional() });
const Claim = z.strictObject({
  span: z.string().min(3),
  class: z.enum(classes),
  subject: z.string().min(2).optional(),
  polarity: z.enum(['asserted', 'negated', 'hedged', 'question', 'reported']),
});
const Label = z.strictObject({ id: Id, claims: z.array(Claim) });
const SplitFile = z.strictObject({ seed: z.int(), share: z.number().gt(0).lt(1), dev: z.array(Id), heldOut: z.array(Id) });

const sentences = z.array(Sentence).parse(load('sentences.yaml'));
const textOf = new Map(sentences.map((row) => [row.id, row.text]));
const ids = sentences.map((row) => row.id);
const sets = ['labels-a.yaml', 'labels-b.yaml', 'labels.yaml'] as const;
const labelsOf = (file: string) => z.array(Label).parse(load(file));
const first = labelsOf('labels-a.yaml');
const second = labelsOf('labels-b.yaml');
const settled = labelsOf('labels.yaml');
const settledOf = new Map(settled.map((row) => [row.id, row.claims]));
const Row = z.strictObject({ ...Sentence.shape, claims: z.array(Claim) });
const sides = [
  { file: 'dev-1.yaml', side: 'dev' },
  { file: 'held-out-1.yaml', side: 'heldOut' },
] as const;
const split = SplitFile.parse(load('split.yaml'));

type Claims = z.infer<typeof Label>['claims'];

/** Where each span stands in the text, -1 when it does not. A span that stands there twice is taken where it is first found free. */
function places(text: string, claims: Claims): { start: number; end: number }[] {
  const taken: { start: number; end: number }[] = [];
  for (const { span } of claims) {
    let start = text.indexOf(span);
    while (start !== -1 && taken.some((place) => start < place.end && place.start < start + span.length)) start = text.indexOf(span, start + 1);
    taken.push({ start, end: start + span.length });
  }
  return taken;
}

/** Letters and figures only, so that two sentences that differ by a comma count as one. */
const bare = (text: string) => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim();

function spread(kept: ReadonlySet<string>): Map<string, number> {
  const counts = new Map<string, number>(classes.map((name) => [name, 0]));
  for (const row of first) if (kept.has(row.id)) for (const claim of row.claims) counts.set(claim.class, (counts.get(claim.class) ?? 0) + 1);
  return counts;
}

describe('the statements corpus', () => {
  it('numbers at least 500 sentences without a gap and says none of them twice', () => {
    expect(sentences.length).toBeGreaterThanOrEqual(500);
    expect(ids).toEqual(sentences.map((_, at) => `s${String(at + 1).padStart(3, '0')}`));
    expect(new Set(sentences.map((row) => bare(row.text))).size).toBe(sentences.length);
  });

  it('keeps labels out of the file that the second labeller reads', () => {
    expect(sentences.flatMap((row) => Object.keys(row)).filter((key) => !['id', 'text', 'context'].includes(key))).toEqual([]);
  });

  it.each(sets)('labels every sentence once, in order (%s)', (file) => {
    expect(labelsOf(file).map((row) => row.id)).toEqual(ids);
  });

  it.each(sets)('copies every span from its text, and no two overlap (%s)', (file) => {
    const astray = labelsOf(file).flatMap((row) =>
      places(textOf.get(row.id) ?? '', row.claims).flatMap((place, at) => (place.start === -1 ? [`${row.id}: ${row.claims[at]?.span ?? ''}`] : [])),
    );
    expect(astray).toEqual([]);
  });

  it('has at least 25 claims of each class, every polarity, and a good share of sentences with nothing to check', () => {
    for (const [name, count] of spread(new Set(ids))) expect(count, name).toBeGreaterThanOrEqual(25);
    const polarities = first.flatMap((row) => row.claims.map((claim) => claim.polarity));
    for (const polarity of ['asserted', 'negated', 'hedged', 'question', 'reported'] as const) {
      expect(polarities.filter((one) => one === polarity).length, polarity).toBeGreaterThanOrEqual(20);
    }
    const plain = first.filter((row) => row.claims.length === 0).length / first.length;
    expect(plain).toBeGreaterThan(0.2);
    expect(plain).toBeLessThan(0.4);
  });
});

/** What a row claims without its words: every class with its polarity, in no order. */
const kinds = (claims: Claims) => claims.map((claim) => `${claim.class} ${claim.polarity}`).sort().join(', ');

describe('the settled labels', () => {
  it('keep what both labellings say of a sentence', () => {
    const moved = settled.flatMap((row, at) => {
      const a = kinds(first[at]?.claims ?? []);
      return a === kinds(second[at]?.claims ?? []) && a !== kinds(row.claims) ? [row.id] : [];
    });
    expect(moved).toEqual([]);
  });

  it('leave no class under 25 claims', () => {
    for (const name of classes) {
      expect(settled.flatMap((row) => row.claims).filter((claim) => claim.class === name).length, name).toBeGreaterThanOrEqual(25);
    }
  });

  it.each(sides)('stand beside their sentences in $file, which holds its side of the split and nothing else', ({ file, side }) => {
    const rows = z.array(Row).parse(load(file));
    expect(rows.map((row) => row.id)).toEqual(split[side]);
    const sentenceOf = new Map(sentences.map((row) => [row.id, row]));
    expect(rows).toEqual(rows.map(({ id }) => ({ ...sentenceOf.get(id), claims: settledOf.get(id) })));
  });

  it('are the two sides together', () => {
    const joined = sides.flatMap(({ file }) => z.array(Row).parse(load(file)).map(({ id, claims }) => ({ id, claims })));
    expect(joined.sort((a, b) => a.id.localeCompare(b.id))).toEqual(settled);
  });
});

describe('the split of the statements corpus', () => {
  it('puts every sentence on one side only', () => {
    expect([...split.dev, ...split.heldOut].sort()).toEqual([...ids].sort());
  });

  it('is the draw of the seed it states', () => {
    const rows = first.map((row) => ({ id: row.id, classes: row.claims.map((claim) => claim.class) }));
    expect(drawSplit(rows, split.seed, split.share)).toEqual({ dev: split.dev, heldOut: split.heldOut });
  });

  it('gives each class close to the stated share', () => {
    const dev = spread(new Set(split.dev));
    for (const [name, count] of spread(new Set(ids))) {
      const share = (dev.get(name) ?? 0) / count;
      expect(Math.abs(share - split.share), `${name}: ${String(share)}`).toBeLessThan(0.12);
    }
  });
});
