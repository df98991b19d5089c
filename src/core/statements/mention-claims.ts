import type { ClaimClass } from './claim.ts';
import type { ReadSentence } from './phrase-pattern.ts';
import { ailingAt, type FoundClaim } from './relations.ts';
import type { Mention } from './word-lists.ts';

const illLists: readonly string[] = ['condition', 'complaint', 'sign'];
const hormonal = /^(hormones?|hormone .*|hormonal .*|estrogen|progesterone|testosterone|cortisol|insulin|thyroid|thyroid .*|prolactin|oxytocin|stress hormone|sex hormone|female hormone|endocrine system|luteal phase|follicular phase|ovulation|ovary|womb|uterus|fertility|libido|egg quality|menopause|perimenopause)$/;

const pureHormone = /^(estrogen|estradiol|progesterone|testosterone|cortisol|prolactin|insulin|thyroid|thyroid hormone|oxytocin|androgen|hormone)$/;

const inSentence = (sentence: ReadSentence, list: string): boolean => sentence.mentions.some((here) => here.some((m) => m.list === list));

/** A part of the body next to a word of distress is a complaint that is only described. */
function described(sentence: ReadSentence, at: number): Mention | null {
  const part = (sentence.mentions[at] ?? []).filter((m) => m.list === 'body' || m.list === 'part').sort((a, b) => b.end - a.end)[0];
  const beforePart = sentence.tokens[at - 1]?.word ?? '';
  if (!part || /^(the|its|crisp|chicken|fish|salmon|potato|lemon|orange)$/.test(beforePart) || /^(skins|hearts|stones)$/.test(sentence.tokens[at]?.word ?? '')) return null;
  for (let i = Math.max(0, at - 3); i < Math.min(sentence.tokens.length, part.end + 4); i++) {
    if (i >= at && i < part.end) continue;
    const distress = (sentence.mentions[i] ?? []).find((m) => m.list === 'distress');
    const broken = Array.from({ length: Math.abs(i - at) }, (_, k) => sentence.breaks[Math.min(i, at) + k]).some(Boolean);
    if (distress && !broken) return { list: 'sign', phrase: distress.phrase, start: Math.min(at, i), end: Math.max(part.end, distress.end) };
  }
  return null;
}

function longestAt(sentence: ReadSentence, at: number, wanted: (m: Mention) => boolean): Mention | null {
  const here = sentence.mentions[at] ?? [];
  const found = here.filter(wanted).sort((a, b) => b.end - a.end)[0];
  if (!found) return null;
  return here.some((m) => m.list === 'food' && m.end > found.end) ? null : found;
}

const haves = new Set(['have', "i've", "she's", 'with', 'get', 'suffer', 'live', 'living']);

/** Whether a complaint only happens to be named: a diagnosis told, a topic of a class, an idiom. */
function onlyNamed(sentence: ReadSentence, mention: Mention): boolean {
  const effect = inSentence(sentence, 'frame:effect');
  if (inSentence(sentence, 'frame:mention')) return true;
  if (sentence.tokens[mention.end]?.joined && !sentence.tokens[mention.end]?.forms.some((f) => /^(friendly|free|proof|safe|fighting|busting)$/.test(f))) return true;
  if (sentence.tokens.length <= 9 && sentence.tokens.some((t) => t.word === '?')) return false;
  const before = sentence.tokens.slice(Math.max(0, mention.start - 3), mention.start);
  const owned = before.some((t) => t.forms.some((f) => haves.has(f)));
  const conditional = sentence.tokens.slice(0, mention.start).some((t) => ['if', 'when', 'anyone', 'those', 'for'].includes(t.word));
  if (owned && !conditional) return !effect;
  return !(effect || inSentence(sentence, 'food') || sentence.tokens.some((t) => t.word === '?') || sentence.tokens.some((t) => ['your', 'you'].includes(t.word)));
}

const yours = (sentence: ReadSentence): boolean => sentence.tokens.some((t) => /^(your|yours|you)$/.test(t.word));

function ailing(sentence: ReadSentence, at: number): Mention | null {
  const place = ailingAt(sentence, at);
  return place === null ? null : { list: 'complaint', phrase: 'ailing', ...place };
}

const firstOf = (sentence: ReadSentence, list: string): Mention | null => sentence.mentions.flat().find((m) => m.list === list) ?? null;

/** A word of safety or a group at risk with a word of warning. */
function guardedCaution(sentence: ReadSentence): FoundClaim | null {
  const danger = firstOf(sentence, 'riskGroup') ?? firstOf(sentence, 'danger');
  const atRisk = sentence.mentions.flat().find((m) => m.list === 'riskGroup' && /^(pregnant|pregnancy|breastfeeding|expecting|warfarin|blood thinners?|anticoagulant|levothyroxine|thyroxine|statins?|under f.*|under t.*|toddlers|babies under.*|infants?|weaning|maoi|lithium|metformin)$/.test(m.phrase));
  const warn = firstOf(sentence, 'warn') ?? firstOf(sentence, 'professional') ?? (inSentence(sentence, 'food') ? (atRisk ?? null) : null);
  if (!danger || !warn || inSentence(sentence, 'frame:mention')) return null;
  const last = sentence.tokens.at(-1)?.kind === 'mark' ? sentence.tokens.length - 1 : sentence.tokens.length;
  return { class: 'caution', start: Math.min(danger.start, warn.start), end: Math.max(danger.end, warn.end, Math.min(last, Math.max(danger.end, warn.end) + 4)), relation: 'mention' };
}

/** Somebody with authority, or science, beside a word of approval and the food. */
function vouched(sentence: ReadSentence): FoundClaim | null {
  if (inSentence(sentence, 'frame:mention') || inSentence(sentence, 'process')) return null;
  const who = firstOf(sentence, 'authority');
  const vouch = firstOf(sentence, 'vouch') ?? (who === null ? null : firstOf(sentence, 'approve'));
  const proof = firstOf(sentence, 'proof');
  if (who && vouch && Math.abs(vouch.start - who.start) <= 9) return { class: 'endorsement', start: Math.min(who.start, vouch.start), end: Math.max(who.end, vouch.end), relation: 'mention' };
  return proof && inSentence(sentence, 'food') ? { class: 'endorsement', start: proof.start, end: proof.end, relation: 'mention' } : null;
}

const states = /^(sleep|deep sleep|digestion|immunity|immune system|immune function|circulation|energy level|mood|good mood|concentration|focus|memory|stamina|tiredness|fatigue|stress|stress level|afternoon slump|brain power|gut health|bone health|heart health|brain health|skin health|gut bacteria|gut flora|microbiome|nervous system|metabolism|alertness|calm|absorption|iron absorption|eyesight|energy)$/;

/** A part of her body or a state of it that the food is spoken of together with. */
function bodily(sentence: ReadSentence): FoundClaim | null {
  if (inSentence(sentence, 'frame:mention')) return null;
  const pot = inSentence(sentence, 'process') || !inSentence(sentence, 'food');
  for (let at = 0; at < sentence.tokens.length; at++) {
    const body = longestAt(sentence, at, (m) => m.list === 'body');
    const state = longestAt(sentence, at, (m) => (m.list === 'good-state' || m.list === 'low-state') && states.test(m.phrase));
    const owner = sentence.tokens.slice(Math.max(0, at - 2), at).some((t) => /^(your|our|women's|everybody's|everyone's)$/.test(t.word));
    const mine = sentence.tokens.slice(Math.max(0, at - 2), at).some((t) => /^(my|her)$/.test(t.word)) && sentence.tokens.some((t) => /^(since|after|now|until|when|whenever|because|never)$/.test(t.word));
    if (body && (owner || (mine && !pot) || (mine && sentence.tokens.some((t) => t.word === 'never')))) return { class: 'function', start: body.start, end: body.end, relation: 'mention' };
    if (pot && !owner) continue;
    if (state && (owner || mine || yours(sentence) || sentence.tokens[at - 1]?.word === 'for')) return { class: 'function', start: state.start, end: state.end, relation: 'mention' };
  }
  return null;
}

/**
 * Claims that only a mention gives away. A complaint named in talk about food is taken as a statement on
 * disease unless the words show that it is only named: missing one can harm, a needless warning cannot.
 */
/** A described complaint weighs more than what milder reading made of the same words. */
export function describedClaims(sentence: ReadSentence): FoundClaim[] {
  const found: FoundClaim[] = [];
  for (let at = 0; at < sentence.tokens.length; at++) {
    const mention = described(sentence, at);
    if (mention && !onlyNamed(sentence, mention) && inSentence(sentence, 'food')) found.push({ class: 'disease', start: mention.start, end: mention.end, relation: 'mention' });
  }
  return found.slice(0, 1);
}

export function mentionClaims(sentence: ReadSentence, taken: readonly FoundClaim[]): FoundClaim[] {
  const found: FoundClaim[] = [];
  const free = (start: number, end: number): boolean => ![...taken, ...found].some((c) => start < c.end && c.start < end);
  const effect = inSentence(sentence, 'frame:effect');
  const cautious = taken.some((c) => c.class === 'caution');
  const put = (mention: Mention | null, kind: ClaimClass): void => {
    if (mention && free(mention.start, mention.end) && !onlyNamed(sentence, mention)) found.push({ class: kind, start: mention.start, end: mention.end, relation: 'mention' });
  };
  for (let at = 0; at < sentence.tokens.length; at++) {
    if (!cautious && !taken.some((c) => c.class === 'disease')) put(longestAt(sentence, at, (m) => illLists.includes(m.list)) ?? ailing(sentence, at) ?? described(sentence, at), 'disease');
    if (!cautious && effect && taken.length === 0) put(longestAt(sentence, at, (m) => m.list === 'medicine'), 'disease');
    if (taken.length === 0 && found.length === 0) {
      if (effect) put(longestAt(sentence, at, (m) => m.list === 'weight'), 'weight');
      put(longestAt(sentence, at, (m) => m.list === 'hormone' && pureHormone.test(m.phrase)), 'cycle-hormone');
      if (effect || yours(sentence)) put(longestAt(sentence, at, (m) => (m.list === 'hormone' || m.list === 'cycle') && hormonal.test(m.phrase)), 'cycle-hormone');
    }
  }
  if (taken.length === 0 && found.length === 0) {
    for (const claim of [guardedCaution(sentence), vouched(sentence), bodily(sentence)]) if (claim && found.length === 0) found.push(claim);
  }
  return found.slice(0, 3);
}
