import type { Polarity } from './claim.ts';
import type { ReadSentence } from './phrase-pattern.ts';
import type { FoundClaim } from './relations.ts';

/** A stretch of tokens with its class. */
export type ClaimPlace = Omit<FoundClaim, 'relation'>;

const strongBreak = (word: string): boolean => /^[;:()\u2014\u2013.!?\u2026]$/.test(word);
const has = (sentence: ReadSentence, at: number, list: string): number => Math.max(0, ...(sentence.mentions[at] ?? []).filter((m) => m.list === list).map((m) => m.end));

/** Where the clause that holds a claim begins: after the last strong mark or "but". */
function clauseStart(sentence: ReadSentence, claim: ClaimPlace): number {
  for (let i = claim.start - 1; i >= 0; i--) {
    const word = sentence.tokens[i]?.word ?? '';
    if (strongBreak(word) || word === 'but' || word === 'yet' || word === 'however') return i + 1;
  }
  return 0;
}

function inQuestion(sentence: ReadSentence, claim: ClaimPlace): boolean {
  const from = clauseStart(sentence, claim);
  const opening = sentence.tokens.slice(Math.max(from, claim.start - 4), claim.start).map((t) => t.word).join(' ');
  if (/(^|, )(is|are|does|do|can|will|would|could) (it|they|this|that|these)( \w+)?$/.test(opening) && !/\b(what|how)\b/.test(opening)) return true;
  for (let i = claim.end; i < sentence.tokens.length; i++) {
    const word = sentence.tokens[i]?.word ?? '';
    if (word === '?') return true;
    if (/^[.!;\u2026]$/.test(word)) return false;
  }
  return false;
}

/** Claims whose stretch holds their subject, so that a denial may stand inside it. */
const carriesSubject = new Set(['kitchen-science', 'cycle-hormone', 'endorsement', 'comparison']);

/** A denial that reaches a claim: within seven words before it, not across a comma that starts a new thought. */
function isDenied(sentence: ReadSentence, claim: ClaimPlace): boolean {
  const from = Math.max(clauseStart(sentence, claim), claim.start - 12);
  for (let i = from; i < claim.start; i++) {
    const end = has(sentence, i, 'frame:negation');
    if (end === 0 || end > claim.start) continue;
    if (has(sentence, i, 'frame:notNegation') > 0 || has(sentence, i - 1, 'frame:notNegation') > i) continue;
    const rest = sentence.tokens.slice(end, claim.start);
    if (rest.length > 8) continue;
    const commas = rest.filter((t) => t.word === ',').length;
    const joined = rest.some((t) => ['and', 'because', 'so', 'which', 'that\'s', 'it\'s', 'if', 'when', 'until', 'unless', 'without', 'since', 'just', 'only', 'enough'].includes(t.word));
    if (commas > 0 && !rest.some((t) => ['or', 'nor'].includes(t.word)) && commas < 2) continue;
    if (joined && !rest.some((t) => ['claim', 'claiming', 'say', 'saying', 'promise', 'promising', 'believe', 'evidence', 'proof'].includes(t.word))) continue;
    const conditional = sentence.tokens.slice(from, i).some((t) => ['if', 'unless', 'when'].includes(t.word)) && /n't$|^not$/.test(sentence.tokens[i]?.word ?? '');
    if (conditional) continue;
    return true;
  }
  for (let i = claim.start + 1; i < claim.end && carriesSubject.has(claim.class); i++) {
    if (has(sentence, i, 'frame:negation') > 0 && has(sentence, i, 'frame:notNegation') === 0 && !sentence.tokens.slice(i, claim.end).some((t) => t.word === ',') && /^(not|never|cannot|isn't|aren't|doesn't|don't|won't|can't|didn't|wasn't)$/.test(sentence.tokens[i]?.word ?? '')) return true;
  }
  for (let i = claim.end; i < sentence.tokens.length && i - claim.end <= 4; i++) {
    if (strongBreak(sentence.tokens[i]?.word ?? '')) return false;
    if (has(sentence, i, 'frame:deniedAfter') > 0) return true;
  }
  return false;
}

function isReported(sentence: ReadSentence, claim: ClaimPlace): boolean {
  const from = clauseStart(sentence, claim);
  for (let i = from; i < claim.start; i++) {
    const frame = has(sentence, i, 'frame:reportedFrame');
    if (frame > 0 && frame <= claim.start) return true;
    const reporter = has(sentence, i, 'frame:reporter');
    if (reporter === 0 || reporter > claim.start) continue;
    for (let j = reporter; j < claim.start && j - reporter <= 5; j++) {
      const verb = has(sentence, j, 'frame:reporting');
      if (sentence.tokens[j]?.word === ',' && j > reporter) break;
      if (verb > 0 && verb <= claim.start + 0) return true;
    }
  }
  // "…, says my grandmother", "…, according to tradition"
  for (let i = claim.end; i < sentence.tokens.length && i - claim.end <= 6; i++) {
    const word = sentence.tokens[i]?.word ?? '';
    if (/^[;.!?]$/.test(word)) break;
    if (sentence.tokens[i - 1]?.word === ',' || i === claim.end || /^["\u201d\u2019']$/.test(sentence.tokens[i - 1]?.word ?? '')) {
      if (has(sentence, i, 'frame:reportedFrame') > 0 && /^(according|apparently|supposedly|allegedly|reportedly|they|word|i|claims|so)$/.test(word)) return true;
      if (/^(say|says|said|claims|claim|swears|reckons|insists|or so)$/.test(word)) return true;
      const reporter = Math.max(has(sentence, i, 'frame:reporter'), has(sentence, i + 1, 'frame:reporter'), has(sentence, i + 2, 'frame:reporter'));
      if (reporter > 0 && [reporter, reporter + 1, reporter + 2].some((j) => /^(certain|sure|convinced|adamant|swear|believed)$/.test(sentence.tokens[j]?.word ?? ''))) return true;
      if (reporter > 0 && /^(say|says|said|claim|claims|swears|reckon|reckons|tell|tells|told|insists|suggests|used)$/.test(sentence.tokens[reporter]?.word ?? '')) return true;
    }
  }
  return false;
}

function isHedged(sentence: ReadSentence, claim: ClaimPlace): boolean {
  const from = Math.max(clauseStart(sentence, claim), claim.start - 9);
  for (let i = from; i < claim.start; i++) {
    const end = has(sentence, i, 'frame:hedge');
    if (end === 0 || end > claim.start + 1) continue;
    const word = sentence.tokens[i]?.word ?? '';
    if (word === 'can' && end - i === 1) continue;
    if (['should', 'chance'].includes(word)) continue;
    if (['could', 'might', 'may'].includes(word) && sentence.tokens.slice(i, claim.start).filter((t) => t.word === ',').length > 0) continue;
    if (/n't$/.test(word)) continue;
    return true;
  }
  if (sentence.tokens[claim.start]?.word === 'can' && sentence.tokens[claim.start + 1]?.word === 'help') return true;
  for (let i = claim.end; i < sentence.tokens.length && i - claim.end <= 3; i++) {
    if (/^(perhaps|maybe|possibly|hopefully)$/.test(sentence.tokens[i]?.word ?? '')) return true;
    if (has(sentence, i, 'frame:hedge') - i >= 2 && sentence.tokens[i - 1]?.word === ',') return true;
  }
  return false;
}

/** How a claim is meant, by the words around it; the first that fits: question, negated, reported, hedged, asserted. */
export function polarityOf(sentence: ReadSentence, claim: ClaimPlace): Polarity {
  if (inQuestion(sentence, claim)) return 'question';
  if (claim.class !== 'caution' && isDenied(sentence, claim)) return 'negated';
  if (isReported(sentence, claim)) return 'reported';
  if (claim.class !== 'caution' && isHedged(sentence, claim)) return 'hedged';
  return 'asserted';
}
