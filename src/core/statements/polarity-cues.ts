import type { ClaimClass, Polarity } from './claim.ts';
import type { ReadSentence } from './phrase-pattern.ts';

const before = 12;
const after = 8;
const edge = '\u00a6';
const clauseMark = /^[;:()\u2014\u2013.!?\u2026]$/;

/** A short text that speaks for a polarity: "-2 not" is "not" two words before the claim. */
export type Cue = string;

/** What speaks for how a claim is meant: the words before, in and after it, and what the grammar of denials, hedges, questions and reports made of it. */
export function polarityCues(sentence: ReadSentence, claim: { readonly class: ClaimClass; readonly start: number; readonly end: number }, byGrammar: Polarity): Cue[] {
  const word = (i: number): string => sentence.tokens[i]?.word ?? edge;
  const cues = new Set<Cue>(['always', `grammar ${byGrammar}`, `class ${claim.class}`, `grammar class ${byGrammar} ${claim.class}`]);
  let clause = 0;
  for (let d = 1; d <= before && claim.start - d >= 0; d++) {
    const i = claim.start - d;
    if (clauseMark.test(word(i)) || word(i) === 'but') clause++;
    const where = clause > 0 ? 'far' : d <= 3 ? `${d}` : d <= 6 ? 'near' : 'same';
    cues.add(`-${where} ${word(i)}`);
    if (clause === 0) {
      cues.add(`- ${word(i)}`);
      cues.add(`-- ${word(i)} ${word(i + 1)}`);
    } else cues.add(`-- far ${word(i)} ${word(i + 1)}`);
    for (const { list } of sentence.mentions[i] ?? []) if (list.startsWith('frame:') || list === 'authority' || list === 'who') cues.add(`-${where} list ${list}`);
  }
  for (let i = claim.start; i < claim.end; i++) cues.add(`in ${word(i)}`);
  cues.add(`in first ${word(claim.start)}`);
  cues.add(`in two ${word(claim.start)} ${word(claim.start + 1)}`);
  clause = 0;
  for (let d = 0; d < after && claim.end + d < sentence.tokens.length; d++) {
    const i = claim.end + d;
    cues.add(`+${clause > 0 ? 'far' : d < 2 ? `${d}` : 'near'} ${word(i)}`);
    cues.add(`++ ${word(i)} ${word(i + 1)}`);
    for (const { list } of sentence.mentions[i] ?? []) if (list.startsWith('frame:')) cues.add(`+${clause > 0 ? 'far' : 'near'} list ${list}`);
    if (clauseMark.test(word(i))) clause++;
  }
  cues.add(`first ${word(0)}`);
  cues.add(`first two ${word(0)} ${word(1)}`);
  cues.add(`first three ${word(0)} ${word(1)} ${word(2)}`);
  cues.add(`last ${word(sentence.tokens.length - 1)}`);
  return [...cues];
}
