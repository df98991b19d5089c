import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { claimClasses, findClaims, sentencesOf, type Claim, type ClaimClass, type Polarity, type StatementVocabulary } from '../../../src/core/statements/index.ts';

export interface LabelledClaim {
  readonly span: string;
  readonly class: ClaimClass;
  readonly polarity: Polarity;
  /** Where the stretch begins in the row's text, characters. */
  readonly start: number;
}
export interface LabelledRow {
  readonly id: string;
  readonly text: string;
  readonly claims: readonly LabelledClaim[];
}

export interface Score {
  readonly sentences: number;
  readonly classes: Readonly<Record<ClaimClass, { readonly hit: number; readonly missed: number; readonly extra: number }>>;
  /** Share of sentences whose set of classes is exactly right (an empty set counts as "opinion"). */
  readonly exact: number;
  /** Share of labelled claims whose stretch was found with the right class, and of rows without claims that were left alone. */
  readonly accuracy: number;
  readonly polarity: number;
  readonly wrong: readonly { readonly id: string; readonly text: string; readonly missed: readonly string[]; readonly extra: readonly string[]; readonly polarity: readonly string[] }[];
}

export function readRows(file: string): LabelledRow[] {
  const rows = parse(readFileSync(file, 'utf8')) as { id: string; text: string; claims: Omit<LabelledClaim, 'start'>[] }[];
  return rows.map(({ id, text, claims }) => ({ id, text, claims: claims.map((c) => ({ ...c, start: text.indexOf(c.span) })) }));
}

/** The claims of a row's text, offsets within the text. */
export function claimsOf(text: string, vocabulary: StatementVocabulary): Claim[] {
  return sentencesOf(text).flatMap((sentence) => findClaims(sentence, vocabulary));
}

/** A stretch is found when the two overlap by at least half of the shorter (the labelling guide's rule). */
function overlaps(a: { start: number; end: number }, b: { start: number; end: number }): boolean {
  const shared = Math.min(a.end, b.end) - Math.max(a.start, b.start);
  return shared > 0 && shared * 2 >= Math.min(a.end - a.start, b.end - b.start);
}

export function scoreRows(rows: readonly LabelledRow[], vocabulary: StatementVocabulary): Score {
  const classes = Object.fromEntries(claimClasses.map((c) => [c, { hit: 0, missed: 0, extra: 0 }])) as Record<ClaimClass, { hit: number; missed: number; extra: number }>;
  const wrong: Score['wrong'][number][] = [];
  let exact = 0;
  let right = 0;
  let total = 0;
  let polarityRight = 0;
  let hits = 0;
  for (const row of rows) {
    const found = claimsOf(row.text, vocabulary);
    const used = new Set<Claim>();
    const missed: string[] = [];
    const polarity: string[] = [];
    for (const label of row.claims) {
      const place = { start: label.start, end: label.start + label.span.length };
      const match = found.find((c) => c.class === label.class && !used.has(c) && overlaps(c, place)) ?? found.find((c) => c.class === label.class && overlaps(c, place));
      total++;
      if (match) {
        used.add(match);
        classes[label.class].hit++;
        right++;
        hits++;
        if (match.polarity === label.polarity) polarityRight++;
        else polarity.push(`${label.span}: ${label.polarity}, read as ${match.polarity}`);
      } else {
        classes[label.class].missed++;
        missed.push(`${label.class}: ${label.span}`);
      }
    }
    const extra = found.filter((c) => !used.has(c) && !row.claims.some((l) => l.class === c.class && overlaps(c, { start: l.start, end: l.start + l.span.length })));
    for (const c of extra) classes[c.class].extra++;
    if (row.claims.length === 0) {
      total++;
      if (found.length === 0) right++;
    }
    const want = [...new Set(row.claims.map((c) => c.class))].sort().join();
    if (want === [...new Set(found.map((c) => c.class))].sort().join()) exact++;
    if (missed.length + extra.length + polarity.length > 0) wrong.push({ id: row.id, text: row.text, missed, extra: extra.map((c) => `${c.class}: ${c.span}`), polarity });
  }
  return { sentences: rows.length, classes, exact: exact / rows.length, accuracy: right / total, polarity: hits === 0 ? 1 : polarityRight / hits, wrong };
}

export function recallOf(score: Score, c: ClaimClass): number {
  const { hit, missed } = score.classes[c];
  return hit + missed === 0 ? 1 : hit / (hit + missed);
}
export function precisionOf(score: Score, c: ClaimClass): number {
  const { hit, extra } = score.classes[c];
  return hit + extra === 0 ? 1 : hit / (hit + extra);
}
