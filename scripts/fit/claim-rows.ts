import { beginTag, goOnTag, polarities, polarityCues, polarityOf, readSentence, ruleClaims, sentencesOf, signsOf, spokenFor, type Sign, type StatementVocabulary } from '../../src/core/statements/index.ts';
import type { LabelledRow } from '../../tests/cases/statements/score.ts';

/** A sentence made ready for fitting: its words with their signs and right tags, and each claim's cues with its right polarity. */
export interface PreparedSentence {
  readonly words: readonly string[];
  readonly signs: readonly (readonly Sign[])[];
  /** Numbers as in src/core/statements/claim-tags.ts. */
  readonly tags: readonly number[];
  /** Polarity as its place in `polarities`. */
  readonly claims: readonly { readonly cues: readonly string[]; readonly polarity: number }[];
}

/** Makes a labelled row ready for fitting; a claim that runs over two sentences is marked in both. */
export function prepareRow(row: LabelledRow, vocabulary: StatementVocabulary): PreparedSentence[] {
  const places = row.claims.map((claim) => ({ ...claim, end: claim.start + claim.span.length }));
  return sentencesOf(row.text).map((sentence) => {
    const read = readSentence(sentence, vocabulary);
    const tags = read.tokens.map(() => 0);
    const claims: PreparedSentence['claims'][number][] = [];
    for (const claim of places) {
      const kind = spokenFor.indexOf(claim.class);
      // A word belongs to a claim that takes in a part of it, a mark only to one that takes it in whole.
      const inside = read.tokens.flatMap((t, i) => (t.start < claim.end && t.end > claim.start && (t.kind !== 'mark' || (t.start >= claim.start && t.end <= claim.end)) ? [i] : []));
      const start = inside[0];
      if (start === undefined) continue;
      inside.forEach((i) => (tags[i] = i === start ? beginTag(kind) : goOnTag(kind)));
      const place = { class: claim.class, start, end: (inside.at(-1) ?? start) + 1 };
      claims.push({ cues: polarityCues(read, place, polarityOf(read, place)), polarity: polarities.indexOf(claim.polarity) });
    }
    return { words: read.tokens.map((t) => t.word), signs: signsOf(read, vocabulary.ground.senses, ruleClaims(read, vocabulary)), tags, claims };
  });
}
