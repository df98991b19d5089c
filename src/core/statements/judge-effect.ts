import type { Claim } from './claim.ts';
import type { HealthFinding } from './health-claims.ts';
import { byTable, manner, plainWords, verdict, type ClaimContext } from './law-ground.ts';
import type { Reason } from './verdict.ts';
import { kindOfStanding, type LawVerdict } from './verdict.ts';

/** The topics of permitted wordings that a claim speaks of. */
export function topicsOf(claim: Claim, topicOf: Readonly<Record<string, string>>): string[] {
  return [...new Set(claim.objects.map((o) => topicOf[o]).filter((t): t is string => t !== undefined))];
}

/** A permitted wording that the sentence uses as the list prints it. */
function usedWording(context: ClaimContext): HealthFinding | null {
  const text = plainWords(context.sentence);
  const at = context.ground.wordings.findIndex((wording) => text.includes(wording));
  return context.ground.health[at] ?? null;
}

const food = /\b(this|it|these|bowl|dish|soup|stew|salad|eat|eating|food|plate|recipe|seeds?|broth|meal|cook|smoothie|curry|breakfast|dinner)\b/i;

/** Physiology without any food in the sentence: nothing is said of the dish. */
function isPhysiology(claim: Claim, context: ClaimContext): boolean {
  return claim.class === 'cycle-hormone' && claim.nutrients.length === 0 && claim.foods.length === 0 && !food.test(context.sentence);
}

/**
 * A statement on a function of the body, the cycle or hormones. In the EU and Great Britain only
 * permitted wordings of a nutrient that the dish is a source of; elsewhere such statements need her own evidence.
 */
export function judgeEffect(claim: Claim, context: ClaimContext): LawVerdict {
  const { ground } = context;
  if (isPhysiology(claim, context)) return verdict(ground, 'free', { reasons: [{ code: 'physiology', data: {} }] });
  const listed = ground.law === 'eu' || ground.law === 'gb';
  const used = usedWording(context);
  if (used) {
    const clause = ground.law === 'eu' ? ['eu-432', 'eu-art-10-2'] : ground.law === 'gb' ? ['gb-432'] : ground.law === 'us' ? ['us-101-93', 'us-ftc'] : ['codex-cxg23-8'];
    const kind = kindOfStanding[used.judged.standing];
    const reasons: Reason[] = [{ code: `wording-${kind}`, data: { wording: used.sentence, nutrient: used.rule.nutrient } }, ...(used.rule.tell === undefined ? [] : [{ code: `tell-${used.rule.tell}`, data: {} }]), ...(listed ? [{ code: 'varied-diet', data: {} }] : [{ code: 'own-evidence', data: {} }])];
    return verdict(ground, kind === 'say' ? 'say-with' : kind, { clauses: clause, reasons, measurements: used.judged.by, health: [used] });
  }
  const topics = topicsOf(claim, ground.rules.topicOf);
  const named = ground.health.filter((h) => (claim.nutrients.length === 0 || claim.nutrients.includes(h.rule.nutrient)) && h.effect.topics.some((t) => topics.includes(t)));
  const botanical = context.botanicals.length > 0 && claim.nutrients.length === 0;
  const base = byTable(ground, botanical ? 'botanical' : claim.class, [{ code: botanical ? 'botanical' : claim.class, data: { what: claim.span, food: context.botanicals[0] ?? '' } }, ...manner(claim)]);
  const open = named.filter((h) => h.judged.standing === 'holds');
  const near = named.filter((h) => h.judged.standing === 'estimate');
  const hint: Reason[] = open.length > 0 ? [{ code: 'permitted-wording', data: { wording: open[0]?.sentence ?? '' } }] : near.length > 0 ? [{ code: 'permitted-near', data: { wording: near[0]?.sentence ?? '' } }] : named.length > 0 ? [{ code: 'permitted-short', data: { wording: named[0]?.sentence ?? '' } }] : [{ code: 'no-permitted-wording', data: {} }];
  return { ...base, reasons: [...base.reasons, ...hint], health: [...open, ...near].slice(0, 3), measurements: [...open, ...near, ...named].slice(0, 1).flatMap((h) => h.judged.by) };
}
