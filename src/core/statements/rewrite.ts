import { isNutrientId, nutrient as nutrientOf } from '../foods/index.ts';
import type { Claim } from './claim.ts';
import type { HealthFinding } from './health-claims.ts';
import type { LawGround } from './law-ground.ts';
import { topicsOf } from './judge-effect.ts';
import { referenceValue } from './law.ts';
import { inPortion } from './on-basis.ts';
import type { RewriteTemplate } from './statement-rules.ts';

/** Three meaningful figures at most. */
export function figureText(value: number): string {
  if (value >= 100) return String(Math.round(value));
  if (value >= 10) return String(Number(value.toFixed(1)));
  return String(Number(value.toFixed(2)));
}

/** A nutrient that may stand in a rewrite, best first. */
interface Candidate {
  readonly id: string;
  readonly permitted: string | null;
}

/** Holds under every law that was asked for. */
function holdsAll(grounds: readonly LawGround[], id: string, kind: 'source' | 'high' | 'low'): boolean {
  return grounds.every((g) => {
    const nutrient = id === 'folate' && !g.nutrition.some((f) => f.nutrient === 'folate') ? 'folate-dfe' : id;
    return g.nutrition.some((f) => f.nutrient === nutrient && f.rule.claim === kind && f.judged.standing === 'holds');
  });
}

function permittedFor(grounds: readonly LawGround[], about: { readonly nutrients: readonly string[]; readonly topics: readonly string[] } | null): HealthFinding[] {
  const [first, ...rest] = grounds;
  if (!first) return [];
  return first.health.filter((h) => h.judged.standing === 'holds' && h.rule.nutrient !== 'food' && h.effect.lead !== 'whole'
    && (about === null || ((about.nutrients.length === 0 || about.nutrients.includes(h.rule.nutrient)) && h.effect.topics.some((t) => about.topics.includes(t))))
    && rest.every((g) => g.health.some((other) => other.effect.id === h.effect.id && other.judged.standing === 'holds')));
}

function candidatesFor(need: RewriteTemplate['needs'], claim: Claim, grounds: readonly LawGround[]): Candidate[] {
  const [first] = grounds;
  if (!first) return [];
  const topics = topicsOf(claim, first.rules.topicOf);
  switch (need) {
    case 'source':
    case 'high':
    case 'low':
      return claim.nutrients.filter((id) => holdsAll(grounds, id, need)).map((id) => ({ id, permitted: null }));
    case 'permitted':
      return permittedFor(grounds, { nutrients: claim.nutrients.filter(isNutrientId), topics }).map((h) => ({ id: h.rule.nutrient, permitted: h.sentence }));
    case 'anyPermitted':
      return permittedFor(grounds, null).map((h) => ({ id: h.rule.nutrient, permitted: h.sentence }));
    case 'anySource': {
      const order = [...first.health].sort((a, b) => b.relevance - a.relevance).map((h) => h.rule.nutrient as string);
      const relevant = new Set(first.health.filter((h) => h.relevance > 0).map((h) => h.rule.nutrient as string));
      const all = first.nutrition.filter((f) => f.rule.claim === 'source' && f.judged.standing === 'holds').map((f) => f.nutrient as string);
      const rank = (id: string): number => (relevant.has(id) ? order.indexOf(id) : 1000 + ((first.rules.rewrites.prefer.indexOf(id) + 1 || 900)));
      return all.filter((id) => id !== 'sodium' && id !== 'chloride' && id !== 'fluoride' && holdsAll(grounds, id, 'source')).sort((a, b) => rank(a) - rank(b)).map((id) => ({ id, permitted: null }));
    }
  }
}

function filled(template: string, candidate: Candidate, grounds: readonly LawGround[]): string | null {
  const [ground] = grounds;
  if (!ground) return null;
  const { plate, rules } = ground;
  const name = rules.rewrites.names[candidate.id];
  if (name === undefined) return null;
  const amount = isNutrientId(candidate.id) ? inPortion(plate, [candidate.id]) : null;
  const reference = isNutrientId(candidate.id) ? referenceValue(rules.references, ground.law, candidate.id) : null;
  // The lower end, rounded down by the checker's own allowance, so that the figure is safe to say.
  const slots: Record<string, string | null> = {
    nutrient: name,
    permitted: candidate.permitted,
    dish: plate.title,
    amount: amount === null || !isNutrientId(candidate.id) || amount.atLeast ? null : `${figureText(amount.range.value)} ${nutrientOf(candidate.id).unit}`,
    share: amount === null || reference === null || amount.atLeast ? null : String(Math.floor((amount.range.value / reference) * 100)),
  };
  let missing = false;
  const text = template.replace(/\{(\w+)\}/g, (_, slot: string) => {
    const value = slots[slot] ?? null;
    if (value === null) missing = true;
    return value ?? '';
  });
  return missing ? null : text;
}

const inlineFor: readonly (readonly [RegExp, string])[] = [
  [/^(packed with|packed full of|packs in|loaded with|laden with|full of|rich in|high in|bursting with|brimming with|crammed with|stuffed with|teeming with|heaving with|overflowing with|swimming in|abundant in)\b.*$/i, 'a source of'],
  [/^(packs|contains|has|provides|delivers|boasts)\b.*$/i, 'is a source of'],
];

/** Her own sentence with only the claim's stretch changed, where the grammar allows it. */
function inline(claim: Claim, sentence: { readonly text: string; readonly start: number }, grounds: readonly LawGround[]): string | null {
  if (claim.class !== 'nutrient-content') return null;
  const own = claim.nutrients.find((n) => holdsAll(grounds, n, 'source'));
  const id = own ?? candidatesFor('anySource', claim, grounds)[0]?.id;
  const name = id === undefined ? undefined : grounds[0]?.rules.rewrites.names[id];
  const start = claim.start - sentence.start;
  const fit = inlineFor.find(([pattern]) => pattern.test(claim.span));
  if (!fit || name === undefined) return null;
  return `${sentence.text.slice(0, start)}${fit[1]} ${name}${sentence.text.slice(start + claim.span.length)}`;
}

/**
 * Sentences that could be said instead, best first, filled with this dish's figures. `allowed` is the
 * checker itself: what it does not pass is not offered.
 */
export function rewritesFor(claim: Claim, sentence: { readonly text: string; readonly start: number }, grounds: readonly LawGround[], allowed: (text: string) => boolean): string[] {
  const rules = grounds[0]?.rules.rewrites;
  if (!rules) return [];
  const offers: string[] = [];
  const offer = (text: string | null): void => {
    if (text !== null && offers.length < 3 && !offers.includes(text) && allowed(text)) offers.push(text);
  };
  offer(inline(claim, sentence, grounds));
  for (const template of rules.templates[claim.class] ?? []) {
    for (const candidate of candidatesFor(template.needs, claim, grounds).slice(0, 2)) offer(filled(template.text, candidate, grounds));
  }
  if (offers.length === 0) for (const text of rules.plain) offer(text);
  return offers;
}
