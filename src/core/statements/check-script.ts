import type { NutrientId } from '../foods/index.ts';
import type { Claim } from './claim.ts';
import { evidenceFor, type EvidenceMatch, type EvidenceNote } from './evidence.ts';
import { findClaims } from './find-claims.ts';
import type { Emphasis } from './health-claims.ts';
import { judgeClaim } from './judge-claim.ts';
import { lawGround, type LawGround } from './law-ground.ts';
import { languageOf, type Language } from './language.ts';
import type { LawId } from './law.ts';
import type { Plate } from './plate.ts';
import { rewritesFor } from './rewrite.ts';
import { cautionsFor, type SentenceCaution } from './sentence-cautions.ts';
import { sentencesOf, type Sentence } from './sentences.ts';
import type { StatementRules } from './statement-rules.ts';
import { passes, type JudgedClaim } from './verdict.ts';
import type { StatementVocabulary } from './vocabulary.ts';

export interface SayInput {
  readonly plate: Plate;
  /** A dish it is compared with, for "reduced" and "increased"; null when none. */
  readonly other: Plate | null;
  readonly laws: readonly LawId[];
  readonly emphasis: Emphasis;
  /** Tags of the client or audience that cautions ask for. */
  readonly client: readonly string[];
  /** Her own evidence notes, beside the library's. */
  readonly ownNotes: readonly EvidenceNote[];
  /** The day for which it is asked. */
  readonly on: string;
}

export interface CheckedSentence {
  readonly sentence: Sentence;
  readonly claims: readonly CheckedClaim[];
  /** True when every claim may be said under every law that was asked for. */
  readonly sayable: boolean;
  /** What can be said in its place; null when it can stand or nothing passes. */
  readonly instead: Instead | null;
  readonly evidence: readonly EvidenceMatch[];
  readonly cautions: readonly SentenceCaution[];
}

/** A sentence to say in place of another, with the nutrients that words beside it must name. */
export interface Instead {
  readonly text: string;
  readonly disclose: readonly NutrientId[];
}

export interface CheckedClaim extends JudgedClaim {
  readonly rewrites: readonly string[];
}

export type CheckedScript =
  | { readonly kind: 'checked'; readonly sentences: readonly CheckedSentence[]; readonly grounds: readonly LawGround[] }
  | { readonly kind: 'not-checked'; readonly why: Language | 'too-long' };

/** Longest script that is read, characters: about 30,000 words. */
export const longestScript = 200_000;

/** A checker for one dish: everything about the dish is worked out once. */
export interface Checker {
  readonly grounds: readonly LawGround[];
  sentence(sentence: Sentence): CheckedSentence;
  /** Whether every claim of a text passes under every law. */
  allows(text: string): boolean;
}

function botanicalsOf(claims: readonly Claim[], words: StatementRules['words']): string[] {
  const herbs = new Set(words.lists['botanical'] ?? []);
  return [...new Set(claims.flatMap((c) => c.foods).filter((f) => herbs.has(f)))];
}

export function checkerFor(input: SayInput, rules: StatementRules, vocabulary: StatementVocabulary): Checker {
  const grounds = input.laws.map((law) => lawGround(law, { plate: input.plate, other: input.other, rules, emphasis: input.emphasis, on: input.on }));
  const judged = (sentence: Sentence): JudgedClaim[] => {
    const claims = findClaims(sentence, vocabulary);
    const botanicals = botanicalsOf(claims, rules.words);
    return claims.map((claim) => ({ claim, verdicts: grounds.map((ground) => judgeClaim(claim, { ground, sentence: sentence.text, botanicals })) }));
  };
  const fine = (claims: readonly JudgedClaim[]): boolean => claims.every((c) => c.verdicts.every((v) => passes(v.kind)));
  const remembered = new Map<string, boolean>();
  const allows = (text: string): boolean => {
    const before = remembered.get(text);
    if (before !== undefined) return before;
    const answer = sentencesOf(text).every((sentence) => fine(judged(sentence)));
    remembered.set(text, answer);
    return answer;
  };
  const instead = (claims: readonly CheckedClaim[]): Instead | null => {
    const text = claims.find((c) => c.rewrites.length > 0)?.rewrites[0];
    return text === undefined ? null : { text, disclose: [...new Set(sentencesOf(text).flatMap((s) => judged(s)).flatMap((c) => c.verdicts).flatMap((v) => v.disclose))] };
  };
  const notes = [...input.ownNotes, ...rules.evidence];
  return {
    grounds,
    allows,
    sentence: (sentence) => {
      const claims = judged(sentence).map((c): CheckedClaim => ({ ...c, rewrites: c.verdicts.every((v) => passes(v.kind)) ? [] : rewritesFor(c.claim, sentence, grounds, allows) }));
      const found = claims.map((c) => c.claim);
      return {
        sentence, claims, sayable: fine(claims), instead: fine(claims) ? null : instead(claims),
        evidence: evidenceFor(sentence.text, found, { notes, plate: input.plate }),
        cautions: cautionsFor(rules.cautions, { sentence: sentence.text, claims: found, plate: input.plate, client: input.client }),
      };
    },
  };
}

/** Checks a script sentence by sentence. A text in no language that has rules is not checked, and that is said. */
export function checkScript(text: string, input: SayInput, rules: StatementRules, vocabulary: StatementVocabulary): CheckedScript {
  if (text.length > longestScript) return { kind: 'not-checked', why: 'too-long' };
  const language = languageOf(text);
  if (language !== 'english') return { kind: 'not-checked', why: language };
  const checker = checkerFor(input, rules, vocabulary);
  return { kind: 'checked', sentences: sentencesOf(text).map((s) => checker.sentence(s)), grounds: checker.grounds };
}
