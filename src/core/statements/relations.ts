import type { ClaimClass } from './claim.ts';
import type { ReadSentence } from './phrase-pattern.ts';
import type { Mention } from './word-lists.ts';

/** A claim before polarity and overlaps are settled; tokens `start` to `end` (excluded). */
export interface FoundClaim {
  readonly class: ClaimClass;
  readonly start: number;
  readonly end: number;
  readonly relation: string | null;
}

type ObjectKind = 'condition' | 'complaint' | 'sign' | 'hurt' | 'low-state' | 'good-state' | 'body' | 'hormone' | 'cycle' | 'weight' | 'toxin' | 'medicine' | 'supplement' | 'nutrient' | 'risk';
const objectKinds: readonly ObjectKind[] = ['complaint', 'condition', 'sign', 'hormone', 'cycle', 'weight', 'low-state', 'risk', 'good-state', 'medicine', 'supplement', 'toxin', 'nutrient', 'body', 'hurt'];
const isObject = (list: string): list is ObjectKind => (objectKinds as readonly string[]).includes(list);

const ill: readonly string[] = ['condition', 'complaint', 'sign', 'hurt'];

/** An object with its place; neighbours written together are one ("muscle cramps": a complaint). */
interface Obj {
  readonly kind: ObjectKind;
  readonly start: number;
  readonly end: number;
}

/** "Tummy trouble", "weak bones": a part of the body or the cycle with a word of illness beside it. */
function illObjectAt(sentence: ReadSentence, at: number): Obj | null {
  const named = (from: number): number => Math.max(0, ...(sentence.mentions[from] ?? []).filter((m) => ['body', 'part', 'hormone', 'cycle'].includes(m.list)).map((m) => m.end));
  const listed = (from: number, list: string): number => Math.max(0, ...(sentence.mentions[from] ?? []).filter((m) => m.list === list).map((m) => m.end));
  const noun = named(at);
  if (noun > 0 && listed(noun, 'illNoun') > 0 && !sentence.breaks[noun]) return { kind: 'complaint', start: at, end: listed(noun, 'illNoun') };
  const word = listed(at, 'illWord');
  const before = sentence.tokens[at - 1]?.word ?? '';
  if (word > 0 && named(word) > 0 && !sentence.breaks[word] && !/^(the|a|an)$/.test(before)) return { kind: 'complaint', start: at, end: named(word) };
  return null;
}

function objectAt(sentence: ReadSentence, at: number, depth = 0): Obj | null {
  const ailing = illObjectAt(sentence, at);
  if (ailing) return ailing;
  const gerund = /ing$|in'$/.test(sentence.tokens[at]?.word ?? '');
  const here = (sentence.mentions[at] ?? []).filter((m) => m.list !== 'hurt' || gerund);
  const longest = Math.max(0, ...here.filter((m) => isObject(m.list)).map((m) => m.end));
  if (longest === 0) return null;
  if (here.some((m) => m.list === 'food' && m.end > longest)) return null;
  const [kind] = here.filter((m) => m.end === longest && isObject(m.list)).map((m) => m.list as ObjectKind).sort((a, b) => objectKinds.indexOf(a) - objectKinds.indexOf(b));
  if (kind === undefined) return null;
  const next = depth < 2 ? objectAt(sentence, longest, depth + 1) : null;
  const comma = sentence.breaks[longest];
  if (next && !comma && !(next.kind === 'supplement') && !(ill.includes(kind) && (next.kind === 'body' || next.kind === 'good-state'))) return { kind: next.kind === 'body' || next.kind === 'nutrient' ? kind : next.kind, start: at, end: next.end };
  if ((kind === 'body' || kind === 'nutrient') && (sentence.mentions[longest] ?? []).some((m) => m.list === 'food' && !['this', 'it', 'these', 'that', 'they', 'those', 'one'].includes(m.phrase)) && !sentence.breaks[longest]) return kind === 'body' ? null : { kind, start: at, end: longest };
  return { kind, start: at, end: longest };
}

const fillers = new Set(['your', 'my', 'her', 'his', 'our', 'their', 'the', 'a', 'an', 'any', 'all', 'those', 'that', 'these', 'this', 'every', 'some', 'of', 'even', 'those', 'with', 'and', 'or', 'also', 'both', 'more', 'better', 'normal', 'healthy', 'strong', 'worst', 'annoying', 'nasty', 'dreaded', 'horrible', 'awful', 'monthly', 'bad', 'women', 'woman', 'who', 'have', 'anyone', 'as', 'well', 'nor', 'for', 'to', 'in', 'on', 'lower', 'against', 'whole', 'bit', 'pesky']);

/** Further objects joined by commas, "and" or "or". */
function joinedObjects(sentence: ReadSentence, first: Obj): Obj[] {
  const objects = [first];
  let at = first.end;
  for (;;) {
    let next = at;
    let joined = false;
    while (next < sentence.tokens.length && next - at < 5) {
      const token = sentence.tokens[next];
      if (token === undefined) break;
      if ([',', '&', '/', '+'].includes(token.word) || ['and', 'or', 'nor', 'plus'].includes(token.word)) joined = true;
      else if (!fillers.has(token.word) || objectAt(sentence, next) !== null) break;
      next++;
    }
    const object = joined ? objectAt(sentence, next) : null;
    if (!object) return objects;
    objects.push(object);
    at = object.end;
  }
}

/** Complaints made of a part and a word of illness, for readers that look for mentions. */
export function ailingAt(sentence: ReadSentence, at: number): { readonly start: number; readonly end: number } | null {
  return illObjectAt(sentence, at);
}

/** The object that a relation reaches from a token on: at most `most` other words before it, within the clause. */
function nutrientAt(sentence: ReadSentence, at: number): Obj | null {
  const end = Math.max(0, ...(sentence.mentions[at] ?? []).filter((m) => m.list === 'nutrient').map((m) => m.end));
  return end > 0 ? { kind: 'nutrient', start: at, end } : null;
}

function reachObject(sentence: ReadSentence, reached: { readonly from: number; readonly most: number; readonly nutrients?: boolean }, unless: (at: number) => boolean = () => false): Obj | null {
  const { from, most, nutrients = false } = reached;
  for (let at = from; at < sentence.tokens.length && at - from <= most; at++) {
    if (sentence.breaks[at] || sentence.tokens[at]?.word === ',') return null;
    const object = (nutrients ? nutrientAt(sentence, at) : null) ?? objectAt(sentence, at);
    if (object) return object;
    if (unless(at)) return null;
  }
  return null;
}

type Group = 'treat' | 'down' | 'good' | 'give' | 'content' | 'low' | 'purpose' | 'setAside';

const strongCure = /^(cure|heal|remedy|medicate|cure you of|heal you of|heal you from|reverse)$/;
const calming = /^(calm|soothe|settle|ease|relieve|protect|protect against|shield|take care of|quieten|calm down|unblock|loosen|manage|control|clear|clear up|lighten)/;
const helping = /^(help|good|great|best|better|do wonders|work|kind|gentle|brilliant|wonderful|lovely|fantastic|amazing|excellent|superb|ideal|perfect|support|improve|soothe|calm|settle|ease|manage|easy on|a must|a gift|food for|assist|make|benefit|target|fab|magic)/;
const weakContent = new Set(['have', 'have got', 'got', 'carry', 'hold', 'hide', 'house', 'include', 'feature', 'add', 'get your', 'there is', 'here is', 'bit of', 'touch of', 'amount of', 'helping of', 'serving of', 'bowl of', 'plate of', 'mug of', 'spoonful of', 'jar of', 'pure', 'so much', 'pack', 'contain', 'come with', 'bring in', 'nothing but', 'a lot of', 'plenty of', 'lots of', 'loads of', 'king of', 'queen of', 'star of', 'shot of', 'dose of', 'kick of', 'thanks to its', 'thanks to their', 'bowlful of']);
const kitchenNutrients = new Set(['salt', 'sugar', 'starch', 'fat', 'alcohol', 'dairy', 'gluten', 'calorie', 'sweetener', 'copper', 'iron pan']);

function withNutrient(group: Group, relation: Mention): ClaimClass | null {
  if (group === 'content' || group === 'give') return 'nutrient-content';
  if (group === 'low') return 'nutrient-content';
  if (group === 'good' && /^(boost|raise|increase|top up|replenish|restore|improve|absorb|take up|soak up|lift|bring back|put back|replace)/.test(relation.phrase)) return 'function';
  return null;
}

function withBody(group: Group, relation: Mention, kind: ObjectKind): ClaimClass | null {
  if (group === 'treat') return 'disease';
  if (group === 'good') return 'function';
  if (group === 'give') return 'function';
  if (group === 'down') return kind === 'body' && calming.test(relation.phrase) ? 'function' : null;
  if (group === 'purpose') return kind === 'good-state' || /^for$|^for my$|^with your$/.test(relation.phrase) ? 'function' : null;
  return kind === 'good-state' && group === 'content' ? 'function' : null;
}

/** The class of a claim by its relation and what it acts on; null when the two make none. */
function classOf(group: Group, relation: Mention, kind: ObjectKind): ClaimClass | null {
  switch (kind) {
    case 'condition':
    case 'complaint':
    case 'sign':
    case 'hurt':
      if (group === 'treat' || group === 'down' || group === 'purpose') return 'disease';
      return group === 'good' && helping.test(relation.phrase) ? 'disease' : null;
    case 'low-state':
      if (group === 'treat') return strongCure.test(relation.phrase) ? 'disease' : 'function';
      return group === 'down' || group === 'good' || group === 'purpose' ? 'function' : null;
    case 'risk':
      if (group === 'treat' || group === 'down') return 'disease';
      return group === 'good' || group === 'give' || group === 'purpose' ? 'function' : null;
    case 'good-state':
    case 'body':
      return withBody(group, relation, kind);
    case 'hormone':
    case 'cycle':
      return group === 'treat' || group === 'down' || group === 'good' || group === 'give' || (group === 'purpose' && !/^(when|on|through|during|with your|on days of)$/.test(relation.phrase)) ? 'cycle-hormone' : null;
    case 'weight':
      return group === 'down' || group === 'treat' || group === 'good' || group === 'give' || group === 'purpose' ? 'weight' : null;
    case 'toxin':
      return group === 'down' || group === 'treat' || group === 'good' ? 'absolute' : group === 'low' ? 'absolute' : null;
    case 'medicine':
      return group === 'setAside' ? 'disease' : null;
    case 'supplement':
      return group === 'setAside' ? 'comparison' : null;
    case 'nutrient':
      return withNutrient(group, relation);
  }
}

const reach: Record<Group, number> = { treat: 4, down: 5, good: 4, give: 4, content: 4, low: 3, purpose: 4, setAside: 3 };
const spoiler = /^(class|course|clinic|ward|treated|diagnosed|doctor|nurse|talk|podcast|group|charity|test|tested|operation|research|workshop|lesson)$/;

function excluded(sentence: ReadSentence, relation: Mention, group: Group, object: Obj): boolean {
  const before = sentence.tokens[relation.start - 1]?.word ?? '';
  const word = sentence.tokens[object.start]?.word ?? '';
  const gap = object.start - relation.end;
  if (group === 'purpose' && (spoiler.test(before) || (relation.phrase === 'for' && /^(ready|thanks|look|looking|wait|waiting|ask|asking|time|sorry)$/.test(before)))) return true;
  if (group === 'content' && weakContent.has(relation.phrase)) {
    if (gap > 3 || object.kind !== 'nutrient') return true;
    if (/^(on|onto|up|off)$/.test(sentence.tokens[relation.end]?.word ?? '')) return true;
    if (sentence.tokens.slice(object.start, object.end).some((t) => t.forms.some((f) => kitchenNutrients.has(f)))) return true;
    if (relation.phrase === 'add' && /^(i|we|now|then|and|next)?$/.test(before) && object.kind !== 'nutrient') return true;
  }
  if (object.kind === 'weight' && (before === 'weight' || sentence.tokens[object.start - 1]?.word === 'for' && sentence.tokens[object.start - 2]?.word === 'weight')) return true;
  if (group === 'low' && sentence.tokens.slice(relation.end, object.start).some((t) => t.word === 'enough')) return true;
  if (group === 'low' && /^(no|zero|without|without any|nil|hardly any|free of|free from)$/.test(relation.phrase) && gap > 2) return true;
  if (group === 'low' && object.kind === 'nutrient' && /^(copper|iron)$/.test(word) && relation.phrase === 'no') return true;
  if (relation.phrase === 'iron' || (relation.phrase === 'lose' && object.kind !== 'weight' && !ill.includes(object.kind))) return true;
  if (['sort', 'drop', 'cut', 'clear', 'level', 'lift', 'form', 'shape', 'smooth', 'grow', 'process', 'flush', 'make', 'produce', 'create', 'release', 'mend', 'cushion', 'oil', 'warm', 'lower', 'reduce', 'raise', 'thicken', 'brighten', 'firm', 'tone', 'open up', 'melt'].includes(relation.phrase) && object.kind === 'body' && !sentence.tokens.slice(relation.end, object.start).some((t) => /^(your|our|my|her|their|you|tired|dry|dull)$/.test(t.word))) return true;
  const ofFood = group === 'purpose' && (sentence.mentions[relation.start - 1] ?? []).some((m) => m.list === 'food' && m.end === relation.start);
  if (!ofFood && object.kind === 'body' && sentence.tokens[object.start - 1]?.word === 'the' && /^(skin|bone|eye|back|cell|joint|throat|tissue|ear)s?$/.test(word)) return true;
  if (object.kind === 'body' && (sentence.mentions[object.start - 1] ?? []).some((m) => m.list === 'food' && m.end === object.start && !['this', 'it', 'these', 'that', 'they', 'those', 'one', 'food'].includes(m.phrase))) return true;
  if (object.kind === 'low-state' && sentence.tokens[object.start - 1]?.word === 'the' && /^(tired|sluggish|groggy|heavy|dull|dry|wired|weary|stressed|nervous|grumpy)/.test(word)) return true;
  return false;
}

function groupsAt(sentence: ReadSentence, at: number): Mention[] {
  const found = (sentence.mentions[at] ?? []).filter((m) => m.list.startsWith('rel:'));
  const longest = new Map<string, Mention>();
  for (const m of found) if ((longest.get(m.list)?.end ?? 0) < m.end) longest.set(m.list, m);
  return [...longest.values()];
}

const mainGroups: readonly Group[] = ['treat', 'down', 'good', 'give', 'content', 'low', 'purpose', 'setAside'];

function fromRelation(sentence: ReadSentence, relation: Mention, group: Group): FoundClaim[] {
  const first = reachObject(sentence, { from: relation.end, most: reach[group], nutrients: group === 'content' || group === 'low' }, (at) => (sentence.mentions[at] ?? []).some((m) => m.list === 'rel:treat' || (m.list === 'food' && group === 'purpose' && m.end - m.start === 1 && !['this', 'it', 'one'].includes(m.phrase) && at > relation.end)));
  if (!first || excluded(sentence, relation, group, first)) return [];
  const claims: FoundClaim[] = [];
  let start = relation.start;
  for (const object of joinedObjects(sentence, first)) {
    const kind = classOf(group, relation, object.kind);
    if (kind === null) break;
    const last = claims.at(-1);
    if (last?.class === kind) claims[claims.length - 1] = { ...last, end: object.end };
    else claims.push({ class: kind, start, end: object.end, relation: relation.phrase });
    start = object.end + 1;
    const after = sentence.tokens[start];
    if (after !== undefined && /^(and|or|,)$/.test(sentence.tokens[object.end]?.word ?? '') && fillers.has(after.word) && /^(and|or|nor)$/.test(after.word)) start += 1;
  }
  return claims;
}

const between = new Set(['be', 'have', 'has', 'had', 'is', 'are', 'was', 'were', 'just', 'all', 'completely', 'finally', 'almost', 'simply', 'never', 'slowly', 'totally', 'suddenly', 'have', 'started', 'start', 'began', 'begin', 'to', 'seem', 'seemed', 'will', 'would', "'ll", 'can', 'do', 'did', 'really', 'actually', 'gradually', 'literally', 'quickly', 'both', 'now', 'then', 'have', 'been', 'got', 'get', 'gets', "don't", "doesn't", "didn't", 'practically', 'basically', 'eventually', 'mostly', 'nearly', 'soon', 'so', 'much', 'may', 'might', 'could', 'even', 'also', 'always', 'pretty', 'well', 'did', 'a', 'lot', 'too', 'going', 'about', 'it', 'she', 'had', 'has', 'as', 'good', 'not', 'no', 'longer', 'honestly', 'magically', 'half', 'more', 'or', 'less', 'than', 'ever', 'noticeably', 'visibly', 'immediately', 'instantly', 'right', 'definitely']);

/** "My cramps were gone", "your gut will love you": an object, then what becomes of it. */
function fromSubject(sentence: ReadSentence, at: number): FoundClaim | null {
  const object = objectAt(sentence, at);
  if (!object) return null;
  const possessed = /^(my|your|her|his|their|our|the|those|these|that)$/.test(sentence.tokens[at - 1]?.word ?? '') ? at - 1 : at;
  for (let i = object.end; i < sentence.tokens.length && i - object.end <= 4; i++) {
    const here = sentence.mentions[i] ?? [];
    const vanish = here.filter((m) => m.list === 'rel:vanish').sort((a, b) => b.end - a.end)[0];
    const prosper = here.filter((m) => m.list === 'rel:prosper').sort((a, b) => b.end - a.end)[0];
    if (vanish && (ill.includes(object.kind) || object.kind === 'low-state' || object.kind === 'weight')) {
      return { class: object.kind === 'weight' ? 'weight' : object.kind === 'low-state' ? 'function' : 'disease', start: possessed, end: vanish.end, relation: vanish.phrase };
    }
    if (vanish && object.kind === 'risk' && /down|drop|fall|lower|under control/.test(vanish.phrase)) return { class: 'disease', start: possessed, end: vanish.end, relation: vanish.phrase };
    if (prosper && ['body', 'good-state', 'hormone', 'cycle', 'risk'].includes(object.kind) && (object.kind !== 'body' || possessed < at)) {
      return { class: object.kind === 'hormone' || object.kind === 'cycle' ? 'cycle-hormone' : 'function', start: possessed, end: prosper.end, relation: prosper.phrase };
    }
    if (!sentence.tokens[i]?.forms.some((f) => between.has(f))) return null;
  }
  return null;
}

const keepers = new Set(['keep', 'make', 'leave', 'get', 'hold', 'help', 'send', 'bring', 'take', 'turn']);

/** "Keeps your blood pressure down", "makes your hair thicker". */
function fromKeeping(sentence: ReadSentence, at: number): FoundClaim | null {
  if (!sentence.tokens[at]?.forms.some((f) => keepers.has(f))) return null;
  const object = reachObject(sentence, { from: at + 1, most: 3 });
  if (!object) return null;
  const objects = joinedObjects(sentence, object);
  const end = objects.at(-1)?.end ?? object.end;
  for (let i = end; i < sentence.tokens.length && i - end <= 2; i++) {
    const here = sentence.mentions[i] ?? [];
    const down = here.filter((m) => m.list === 'rel:keepDown').sort((a, b) => b.end - a.end)[0];
    const good = here.filter((m) => m.list === 'rel:keepGood').sort((a, b) => b.end - a.end)[0];
    const relation = down && (!good || down.end >= good.end) ? { ...down, phrase: 'ease' } : good ? { ...good, phrase: 'help' } : null;
    if (relation) {
      const kind = classOf(relation.list === 'rel:keepDown' ? 'down' : 'good', relation, object.kind);
      return kind === null ? null : { class: kind, start: at, end: relation.end, relation: 'keep' };
    }
  }
  return null;
}

const plainNouns = /^(bowl|soup|stew|salad|smoothie|broth|tea|dish|recipe|breakfast|meal|food|diet|plan|supper|curry|dal|lunch|dinner|plate|fuel|hug|elixir|tonic|support|help|helper)$/;

/** "Bloat-busting", "hormone-balancing", "iron-rich", "high-protein", "salt-free". */
function fromCompound(sentence: ReadSentence, at: number): FoundClaim | null {
  const before = (sentence.mentions[at] ?? []).find((m) => m.list === 'rel:beforeContent' || m.list === 'rel:beforeLow');
  if (before) {
    const nutrient = (sentence.mentions[before.end] ?? []).filter((m) => m.list === 'nutrient').sort((a, b) => b.end - a.end)[0];
    const complaint = (sentence.mentions[at] ?? []).some((m) => m.list === 'complaint' && nutrient !== undefined && m.end >= nutrient.end);
    if (nutrient && !complaint && !(before.phrase === 'more' || before.phrase === 'less' || before.phrase === 'no')) return { class: 'nutrient-content', start: at, end: nutrient.end, relation: before.list === 'rel:beforeLow' ? 'low in' : 'rich in' };
  }
  const object = objectAt(sentence, at);
  if (!object) return null;
  const joined = sentence.tokens[object.end]?.joined === true;
  for (const m of (sentence.mentions[object.end] ?? []).slice().sort((a, b) => b.end - a.end)) {
    const claim = (kind: ClaimClass): FoundClaim => ({ class: kind, start: at, end: m.end, relation: m.phrase });
    if (m.list === 'rel:joinDown') {
      if (ill.includes(object.kind)) return claim('disease');
      if (object.kind === 'low-state' && !plainNouns.test(m.phrase)) return claim('function');
      if (object.kind === 'weight') return claim('weight');
      if (object.kind === 'risk' && /lower|reduc|bust|fight|beat/.test(m.phrase)) return claim('disease');
    }
    if (m.list === 'rel:joinGood') {
      if (object.kind === 'hormone' || object.kind === 'cycle') return claim('cycle-hormone');
      if ((object.kind === 'body' || object.kind === 'good-state' || object.kind === 'risk') && (joined || !plainNouns.test(m.phrase))) return claim('function');
    }
    if (m.list === 'rel:joinContent' && object.kind === 'nutrient') return claim('nutrient-content');
    if (m.list === 'rel:joinLow' && object.kind === 'nutrient') return claim('nutrient-content');
  }
  return null;
}

/** Every claim that the grammar of relations finds in a sentence. */
export function relationClaims(sentence: ReadSentence): FoundClaim[] {
  const found: FoundClaim[] = [];
  for (let at = 0; at < sentence.tokens.length; at++) {
    for (const relation of groupsAt(sentence, at)) {
      const group = mainGroups.find((g) => relation.list === `rel:${g}`);
      if (group) found.push(...fromRelation(sentence, relation, group));
    }
    for (const claim of [fromSubject(sentence, at), fromKeeping(sentence, at), fromCompound(sentence, at)]) if (claim) found.push(claim);
  }
  return found;
}
