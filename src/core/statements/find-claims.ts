import { claimClasses, type Claim, type ClaimClass, type Polarity } from './claim.ts';
import { kitchenClaims } from './kitchen-talk.ts';
import { matchPattern, type PhrasePattern, type ReadSentence } from './phrase-pattern.ts';
import { describedClaims, mentionClaims } from './mention-claims.ts';
import { polarityOf } from './polarity.ts';
import { polarityCues } from './polarity-cues.ts';
import { weighedPolarity } from './polarity-weights.ts';
import { seenClaims } from './read-claims.ts';
import { relationClaims, type FoundClaim } from './relations.ts';
import type { Sentence } from './sentences.ts';
import { signsOf } from './signs.ts';
import { tokensOf } from './tokens.ts';
import type { StatementVocabulary } from './vocabulary.ts';
import { mentionsOf } from './word-lists.ts';

const breakWords = new Set(['but', 'because', 'although', 'though', 'while', 'whereas', 'unless']);

/** Tokens of a sentence, what they mention, and where its clauses break. */
export function readSentence(sentence: Sentence, vocabulary: StatementVocabulary): ReadSentence {
  const tokens = tokensOf(sentence.text, sentence.start, { forms: vocabulary.words.forms, known: (word) => vocabulary.tree.words.has(word), seen: vocabulary.seen });
  const breaks = tokens.map((t) => (t.kind === 'mark' ? /^[.!?;:()\u2014\u2013\u2026]$/.test(t.word) : breakWords.has(t.word)));
  return { tokens, mentions: mentionsOf(tokens, vocabulary.tree), breaks };
}

const others = /^(i|my|she|her|he|his|they|their|client|clients|friend|sister|mum|daughter|mother|we|our)$/;

/** Whether what a turn of phrase needs beside itself is there. */
function needsMet(pattern: PhrasePattern, sentence: ReadSentence, at: { start: number; end: number }): boolean {
  const words = sentence.tokens.map((t) => t.word);
  const inSpan = words.slice(at.start, at.end);
  switch (pattern.needs) {
    case null:
      return true;
    case 'person':
      return words.some((w) => others.test(w) || w === 'your');
    case 'help':
      return words.some((w) => /^(help|helps|perfect|great|ideal|lets|make|makes)$/.test(w));
    case 'advice':
      return !words.slice(0, at.start).some((w) => /^(i|she|he|they|client|her|who|have|has|we)$/.test(w)) && inSpan.some((w) => /^(never|not|don't|please)$/.test(w));
    case 'gerund':
      return inSpan.some((w) => /ing$|in'$/.test(w));
    case 'effect':
      return !words.some((w) => /^(soak|chill|cure|marinate|leave|rest|set|freeze|prove|drain|please|impress|serve|steep|brine)$/.test(w)) && words.some((w) => /^(work|works|working|feel|feels|glow|glows|gone|skin|results|result|cure|cures|change|changes|energy|sleep|better|pain|cramps|calm|heal|heals|body|boost|boosts|hormones|difference|mood|period|you|your)$/.test(w));
    case 'notadvice':
      return !inSpan.some((w) => /^(never|not|don't)$/.test(w)) && !words.slice(0, at.start).some((w) => /^(never|not|don't|please|before)$/.test(w));
    case 'recovery':
      return words.some((w) => /^(since|after|now|months?|weeks?|days?|eating|soup|bowl|broth|stew|diet|this|thanks|finally|porridge)$/.test(w));
    case 'threat':
      return words.slice(0, at.start).some((w) => /^(skip|miss|without|eat|sugar|every|leave|forget|ignore|go|drop|watch|see)$/.test(w)) && words.slice(0, at.start).some((w) => /^(and|without|day|watch|see|until|before|while)$/.test(w));
    case 'allergen':
      return !inSpan.some((w) => /^(rich|healthy|good|more)$/.test(w));
    case 'hygiene':
      return words.some((w) => /^(rice|chicken|turkey|poultry|mince|meat|bean|beans|egg|eggs|leftovers|leftover|burger|burgers|pork|kidney|duck|fish|sausage|sausages)$/.test(w));
    case 'care':
      return words.some((w) => /^(careful|limit|medicine|medicines|medication|tablet|tablets|warfarin|statin|statins|pregnant|pregnancy|interact|interacts|interfere|thinner|thinners|ask|avoid|pharmacist|doctor|clash|clashes|pressure|pill|pills)$/.test(w));
    default:
      return true;
  }
}

function patternClaims(sentence: ReadSentence, vocabulary: StatementVocabulary): FoundClaim[] {
  const found: FoundClaim[] = [];
  sentence.tokens.forEach((token, at) => {
    const patterns = new Set<PhrasePattern>();
    for (const form of token.forms) for (const pattern of vocabulary.byWord.get(form) ?? []) patterns.add(pattern);
    for (const mention of sentence.mentions[at] ?? []) for (const pattern of vocabulary.byList.get(mention.list) ?? []) patterns.add(pattern);
    if (token.kind === 'number') for (const pattern of vocabulary.byNumber) patterns.add(pattern);
    for (const pattern of patterns) {
      const place = matchPattern(pattern, sentence, at);
      if (place && needsMet(pattern, sentence, place)) found.push({ class: pattern.class as ClaimClass, ...place, relation: null });
    }
  });
  return found;
}

/** Kitchen words that look like health words: "cure the salmon", "heal the crack in the dough", "detox my fridge". */
const kitchenGuard = /^(salmon|ham|bacon|fish|meat|egg|dough|crack|pan|skillet|fridge|freezer|cupboard|oven|yolk|wok|knife|board|jar|gravlax|trout|olive|pot|pastry|kitchen|diary|inbox|phone|wardrobe|drawer|pantry)s?$/;

function isKitchenSense(sentence: ReadSentence, claim: FoundClaim): boolean {
  const lastWord = sentence.tokens[claim.end - 1];
  if (lastWord?.word === 'miracle' && /^(we|i|you|that|if|how|it|anyone|there|nobody)$/.test(sentence.tokens[claim.end]?.word ?? '')) return true;
  if (claim.class !== 'disease' && claim.class !== 'absolute') return false;
  const first = sentence.tokens[claim.start];
  if (!first?.forms.some((f) => ['cure', 'heal', 'detox', 'cleanse', 'remedy', 'purge', 'doctor', 'mend', 'fix', 'rescue', 'treat', 'spot', 'reset', 'miracle', 'magic'].includes(f))) return false;
  return sentence.tokens.slice(claim.start + 1, claim.end + 4).some((t) => kitchenGuard.test(t.word));
}

const precedence = new Map<ClaimClass, number>(claimClasses.map((c, i) => [c, i]));
// What happens in the pot is not said of the plate: it comes before content and comparisons.
const potFirst = new Set<ClaimClass>(['nutrient-content', 'comparison', 'quantified']);

function rankOf(claim: FoundClaim): number {
  return claim.class === 'kitchen-science' ? (precedence.get('comparison') ?? 0) - 0.5 : (precedence.get(claim.class) ?? 99);
}

/** Overlaps settled: the class that comes first wins, then the longer stretch. */
function settled(found: readonly FoundClaim[]): FoundClaim[] {
  const chosen: FoundClaim[] = [];
  const ordered = [...found].sort((a, b) => rankOf(a) - rankOf(b) || b.end - b.start - (a.end - a.start) || a.start - b.start);
  for (const claim of ordered) if (!chosen.some((c) => claim.start < c.end && c.start < claim.end)) chosen.push(claim);
  const inOrder = chosen.sort((a, b) => a.start - b.start);
  return inOrder.filter((c) => !(potFirst.has(c.class) && inOrder.some((k) => k.class === 'kitchen-science' && k !== c && Math.abs(k.start - c.end) < 2)));
}

/** What the turns of phrase, the relations and the mentions of a sentence make of it. */
export function ruleClaims(read: ReadSentence, vocabulary: StatementVocabulary): FoundClaim[] {
  const found = [...patternClaims(read, vocabulary), ...relationClaims(read), ...kitchenClaims(read), ...describedClaims(read)].filter((c) => !isKitchenSense(read, c));
  const firm = settled(found);
  return [...firm, ...mentionClaims(read, firm)].sort((a, b) => a.start - b.start);
}

interface ReadClaim {
  readonly class: ClaimClass;
  readonly start: number;
  readonly end: number;
  readonly polarity: Polarity;
  readonly chance: number | null;
  readonly because: readonly string[];
}

/** Claims and how they are meant: by the fitted reader, to which turns of phrase and grammar are signs; without it by these alone. */
function readClaims(read: ReadSentence, vocabulary: StatementVocabulary): ReadClaim[] {
  const turns = ruleClaims(read, vocabulary);
  const { senses, fitted } = vocabulary.ground;
  if (fitted === null) return turns.map((turn) => ({ ...turn, polarity: polarityOf(read, turn), chance: null, because: [] }));
  return seenClaims(read, signsOf(read, senses, turns), { reader: fitted.reader, turns }).map((claim) => ({ ...claim, polarity: weighedPolarity(polarityCues(read, claim, polarityOf(read, claim)), fitted.polarity) }));
}

// Words of the list of foods that only point at one, or are mostly something else.
const pointing = new Set(['this', 'it', 'these', 'that', 'they', 'those', 'one', 'cut', 'root']);
// Words of the list that name nobody in particular.
const anybody = new Set(['you', 'we', 'everyone', 'everybody', 'people', 'adult']);

function peopleOf(read: ReadSentence): string[] {
  const named = read.mentions.flat().filter((m) => (m.list === 'who' && !anybody.has(m.phrase)) || (m.list === 'riskGroup' && /^(pregnan|breast|toddler|infant|bab|newborn|elderly|small child|under )/.test(m.phrase)));
  return [...new Set(named.map((m) => read.tokens.slice(m.start, m.end).map((t) => t.text.toLowerCase()).join(' ')))];
}

const objectLists = new Set(['condition', 'complaint', 'sign', 'body', 'hormone', 'cycle', 'low-state', 'good-state', 'risk', 'weight']);

const mostRemembered = 5000;

/** The claims of one sentence, in order. A sentence read before (a rewrite comes up again and again) is not read anew. */
export function findClaims(sentence: Sentence, vocabulary: StatementVocabulary): Claim[] {
  const { read } = vocabulary;
  const known = read.get(sentence.text);
  const claims = known ?? claimsIn({ text: sentence.text, start: 0, end: sentence.text.length }, vocabulary);
  if (!known && read.size < mostRemembered) read.set(sentence.text, claims);
  return claims.map((claim) => ({ ...claim, start: claim.start + sentence.start, end: claim.end + sentence.start }));
}

function claimsIn(sentence: Sentence, vocabulary: StatementVocabulary): Claim[] {
  const read = readSentence(sentence, vocabulary);
  const foods = [...new Set(read.mentions.flat().filter((m) => m.list === 'food' && !pointing.has(m.phrase)).map((m) => m.phrase))];
  const people = peopleOf(read);
  return readClaims(read, vocabulary).map(({ class: kind, start: from, end: to, polarity, chance, because }) => {
    const inside = read.mentions.slice(from, to).flat().filter((m) => m.end <= to);
    const start = read.tokens[from]?.start ?? sentence.start;
    const end = read.tokens[to - 1]?.end ?? sentence.end;
    return {
      class: kind, polarity, start, end,
      span: sentence.text.slice(start - sentence.start, end - sentence.start),
      nutrients: [...new Set(inside.filter((m) => m.list === 'nutrient').map((m) => vocabulary.words.nutrientOf[m.phrase] ?? m.phrase))],
      objects: [...new Set(inside.filter((m) => objectLists.has(m.list)).map((m) => m.phrase))],
      foods, people, chance, because,
    };
  });
}
