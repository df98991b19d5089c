import type { Claim } from './claim.ts';
import { known, lawNutrient, manner, noSuchContentClaim, together, verdict, type ClaimContext } from './law-ground.ts';
import type { ClaimKind, NutritionFinding } from './nutrition-claims.ts';
import { kindOfStanding, type LawVerdict, type Reason, type VerdictKind } from './verdict.ts';

// How strong a content claim is, by its words. What promises much is held to "high" (Reg. 1924/2006 Art. 8: any claim
// likely to have the same meaning; 21 CFR 101.54(b): high, rich in, excellent source of).
const freeWords = /\bfree\b|\bno\b|\bzero\b|\bwithout\b|\bnot any\b|\bsugarless\b|\bfree from\b/;
const addedWords = /\badded\b|\bunsweetened\b|\bunsalted\b/;
const veryLowWords = /\bvery low\b/;
const lowWords = /\blow\b|\bhardly\b|\bbarely\b|\bnext to no\b/;
const highWords = /\b(packed|pack|packs|loaded|laden|bursting|brimming|crammed|stuffed|teeming|full|rich|high|excellent|powerhouse|bomb|star|superstar|king|queen|champion|goldmine|treasure|dense|overflowing|heaving|swimming|abundant|galore|plenty|lots|loads|tons|heaps|bags|masses|oodles|hero|jackpot|monster|hit|blast|boost|extra|best|great|brilliant|fantastic|amazing|cracking|mega|huge|serious|big)\b/;

/** The strength of a nutrient content claim; what says less, light or more is a comparison (judge-comparison.ts). */
export function contentKind(span: string): ClaimKind {
  const text = span.toLowerCase();
  if (addedWords.test(text)) return 'none-added';
  if (veryLowWords.test(text)) return 'very-low';
  if (freeWords.test(text)) return 'free';
  if (lowWords.test(text)) return 'low';
  return highWords.test(text) ? 'high' : 'source';
}

const worst: Record<VerdictKind, number> = { 'not-lawful': 0, short: 1, unknown: 2, proof: 3, near: 4, 'say-with': 5, say: 6, free: 7 };
const unlisted = new Set(['micronutrients', 'antioxidants', 'phytoestrogens', 'sulphur-compounds', 'spices-actives', 'tryptophan', 'electrolytes', 'starch', 'lycopene', 'lutein-zeaxanthin', 'caffeine', 'carbohydrate']);
const kitchenFree = new Set(['gluten', 'lactose', 'dairy', 'alcohol']);

/** A food of the dish of which the claim would be true in 100 g as it goes into the pot; null when there is none. */
function rawFoodWith(id: string, found: NutritionFinding, context: ClaimContext): string | null {
  const limit = found.judged.by.find((m) => m.kind === 'atLeast' && (m.per === '100g' || m.per === '100ml'))?.limit;
  if (limit === undefined || !known(id)) return null;
  const per100 = context.ground.plate.foods.map((f) => ({ name: f.name, amount: f.portionG !== null && f.portionG > 0 ? ((f.gives[id] ?? 0) / f.portionG) * 100 : 0 }));
  const best = per100.reduce((a, b) => (b.amount > a.amount ? b : a), { name: '', amount: 0 });
  return best.amount >= limit ? best.name : null;
}

function ofNutrient(id: string, wanted: ClaimKind, context: ClaimContext): LawVerdict {
  const { ground } = context;
  const nutrient = lawNutrient(ground, id);
  const finding = (kind: ClaimKind): NutritionFinding | undefined => ground.nutrition.find((f) => f.nutrient === nutrient && f.rule.claim === kind);
  if (kitchenFree.has(id)) return verdict(ground, 'say-with', { clauses: ground.law === 'eu' && id === 'gluten' ? ['eu-gluten'] : [], reasons: [{ code: 'free-from', data: { nutrient: id } }] });
  if (id === 'cultures') return verdict(ground, ground.law === 'eu' || ground.law === 'gb' ? 'not-lawful' : 'proof', { clauses: ground.law === 'eu' ? ['eu-art-10-1'] : ground.law === 'gb' ? ['gb-art-10'] : [], reasons: [{ code: 'cultures', data: {} }] });
  const found = finding(wanted);
  if (!found || unlisted.has(id)) return noSuchContentClaim(ground, id, wanted, ground.law === 'us' && id === 'antioxidants' ? 'us-101-54-g' : undefined);
  const kind = kindOfStanding[found.judged.standing];
  const lesser = wanted === 'high' ? finding('source') : wanted === 'free' ? finding('low') : undefined;
  const reasons: Reason[] = [{ code: `content-${kind}`, data: { nutrient: id, kind: wanted } }];
  const raw = kind === 'short' ? rawFoodWith(id, found, context) : null;
  if (raw !== null) reasons.push({ code: 'true-of-raw-food', data: { nutrient: id, kind: raw } });
  if (kind !== 'say' && lesser && lesser.judged.standing === 'holds') reasons.push({ code: 'lesser-holds', data: { nutrient: id, kind: lesser.rule.claim } });
  const tell = found.rule.tell === 'name-the-component' && found.judged.by[0]?.per !== 'component' ? undefined : found.rule.tell;
  const lifted: VerdictKind = kind === 'say' && tell !== undefined ? 'say-with' : kind;
  if (tell !== undefined) reasons.push({ code: `tell-${tell}`, data: { nutrient: id, kind: wanted } });
  return verdict(ground, lifted, { clauses: [found.rule.clause], reasons, measurements: found.judged.by, nutrition: lesser ? [found, lesser] : [found] });
}

/** A nutrient content claim held against the dish: the worst of its nutrients stands. */
export function judgeContent(claim: Claim, context: ClaimContext): LawVerdict {
  const wanted = contentKind(claim.span);
  const { ground } = context;
  if (claim.nutrients.length === 0) return noSuchContentClaim(ground, '', wanted);
  const each = claim.nutrients.map((id) => ofNutrient(id, wanted, context));
  const kind = each.map((v) => v.kind).reduce((a, b) => (worst[b] < worst[a] ? b : a));
  return together(ground, kind, each, manner(claim));
}
