import type { ReadSentence } from './phrase-pattern.ts';
import type { FoundClaim } from './relations.ts';

const endOf = (sentence: ReadSentence, at: number, ...lists: readonly string[]): number => Math.max(0, ...(sentence.mentions[at] ?? []).filter((m) => lists.includes(m.list)).map((m) => m.end));
const aboutBody = /^(your|body|absorb|absorbs|absorption|bodies|gut|digest|digestion|stomach|tummy|belly|hormones?|me|us|women)$/;
// Words of the pot that are also everyday words: alone they tell nothing.
const plainProcess = /^(heat|water|pan|air|oven|oil|butter|sugar|salt|flour|protein|raw|fridge|minute|light|rest|cool|ground|store|cut|lemon|toast|yolk|enzyme|gluten)$/;
const change = /^(leak|carry|let|relax|help|seep|drip|end|build|cut|gentle|sit|lose|retain|preserve|destroy|kill|break|wreck|release|unlock|leach|soften|tenderize|caramelize|thicken|brown|emulsify|split|curdle|evaporate|dissolve|oxidize|concentrate|intensify|sweeten|activate|denature|gelatinize|swell|survive|ferment|convert|react|touch|fade|wipe|burn|suffer|become|form|turn|double|halve|reduce|lower|free|draw|wash|keep|hold|stop|seal|raise|increase|develop|create|tame|mellow|deepen|give|leave|make|take|bring|trap|change|protect|set|firm|speed|slow|need|stay|vanish|escape|cook|boil|pass|go|toughen|crisp|melt|bind|stand|withstand)$/;

// What the pot does to nutrients, whoever is said to do it.
const spoiling = /^(kill|destroy|wipe|burn|leach|boil|wash|oxidize|evaporate|survive|fade|suffer|dissolve|degrade|seep|leak|touch)$/;

function spanOf(sentence: ReadSentence, verb: number, things: readonly number[]): FoundClaim {
  const end = Math.max(endOf(sentence, verb, 'kitchenVerb'), ...things.map((p) => endOf(sentence, p, 'kitchenObject', 'nutrient', 'process')));
  return { class: 'kitchen-science', start: Math.min(verb, ...things), end, relation: 'kitchen' };
}

interface Clause {
  readonly from: number;
  readonly to: number;
}

function clauses(sentence: ReadSentence): Clause[] {
  const out: Clause[] = [];
  let from = 0;
  sentence.tokens.forEach((token, i) => {
    const hard = sentence.breaks[i] && token.kind === 'mark';
    const more = sentence.tokens[from]?.word === 'the' && /^(longer|more|less|finer|hotter|thinner|slower)$/.test(sentence.tokens[from + 1]?.word ?? '');
    const soft = token.word === 'but' || !more && (token.word === ',' && /^(and|so|then|but|which|it|that|the|i|we|you|lid)$/.test(sentence.tokens[i + 1]?.word ?? '') && i - from > 2);
    if (!hard && !soft) return;
    out.push({ from, to: i });
    from = i + 1;
  });
  return [...out, { from, to: sentence.tokens.length }];
}

/** What happens in the pot: a process, what it does, and to what, within one clause that does not speak of the body. */
export function kitchenClaims(sentence: ReadSentence): FoundClaim[] {
  return clauses(sentence).flatMap(({ from, to }): FoundClaim[] => {
    const places = Array.from({ length: Math.max(0, to - from) }, (_, i) => from + i);
    if (places.some((i) => aboutBody.test(sentence.tokens[i]?.word ?? ''))) return [];
    const processes = places.filter((i) => endOf(sentence, i, 'process') > 0);
    const strong = processes.filter((i) => !plainProcess.test(sentence.tokens[i]?.word ?? ''));
    const objects = places.filter((i) => endOf(sentence, i, 'kitchenObject') > 0);
    const nutrients = places.filter((i) => endOf(sentence, i, 'nutrient') > 0);
    const verbs = places.filter((i) => endOf(sentence, i, 'kitchenVerb') > 0 && sentence.tokens[i]?.joined !== true && sentence.tokens[i]?.word !== 'brown' && sentence.tokens[i]?.forms.some((f) => change.test(f)) === true);
    const verb = verbs.find((v) => [...processes, ...objects, ...nutrients].some((p) => p < v)) ?? verbs[0];
    if (verb === undefined) {
      const talk = strong.some((p) => /ing$/.test(sentence.tokens[p]?.word ?? '')) && nutrients.some((n) => !strong.includes(n)) ? [...strong, ...nutrients] : [];
      return talk.length === 0 || from !== 0 ? [] : [spanOf(sentence, Math.min(...talk), talk)];
    }
    const first = sentence.tokens[from];
    const ordered = first?.forms.some((f) => (sentence.mentions[from] ?? []).some((m) => m.list === 'cookVerb' && m.phrase === f)) === true && !/ing$/.test(first.word);
    const gerunds = strong.filter((p) => /ing$/.test(sentence.tokens[p]?.word ?? ''));
    const plainTalk = !ordered && gerunds.length > 0 && nutrients.some((n) => !strong.includes(n));
    const things = [...new Set([...objects, ...nutrients, ...processes])].filter((p) => p !== verb);
    const telling = nutrients.length + objects.length;
    const keeping = !ordered && nutrients.length > 0 && verbs.some((v) => sentence.tokens[v]?.forms.some((f) => /^(lose|keep|hold|retain|preserve|break|destroy|take|leave)$/.test(f))) && (processes.some((p) => !nutrients.includes(p) && !/^(raw|oil|salt|sugar|butter|fridge|acid|protein|minute|rest|cool)$/.test(sentence.tokens[p]?.word ?? '')) || /ing$/.test(first?.word ?? ''));
    const forming = objects.length > 0 && verbs.some((v) => sentence.tokens[v]?.forms.some((f) => /^(seal|trap|thicken|emulsify|caramelize|denature|gelatinize|tenderize)$/.test(f))) && !ordered;
    const enough = plainTalk || keeping || forming || (ordered ? nutrients.length > 0 && verbs.some((v) => v > from) : (strong.length > 0 && telling > 0) || objects.filter((o) => !strong.includes(o)).length > 1 || (processes.length > 1 && telling > 0));
    const spoilt = verbs.some((v) => sentence.tokens[v]?.forms.some((f) => spoiling.test(f)));
    if (spoilt && nutrients.length > 0 && !ordered) return [spanOf(sentence, verb, things)];
    if (!enough || things.length < 2) return [];
    return [spanOf(sentence, verb, things)];
  });
}
