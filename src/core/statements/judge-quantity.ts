import { nutrient as nutrientOf, type NutrientId } from '../foods/index.ts';
import type { Claim } from './claim.ts';
import { byTable, known, lawNutrient, manner, together, verdict, type ClaimContext } from './law-ground.ts';
import { referenceValue } from './law.ts';
import { inPortion, nutrientsOf, onBasis, type BasisAmount } from './on-basis.ts';
import { inUnit, statedAmount, type StatedAmount } from './stated-amount.ts';
import type { LawVerdict, Reason, VerdictKind } from './verdict.ts';

// Figures may be rounded as labels round them: 5 % either way.
const rounding = 0.05;

function standing(found: BasisAmount, wanted: number, bound: StatedAmount['bound']): VerdictKind {
  const { low, value, high } = found.range;
  if (bound === 'at-least') return low >= wanted * (1 - rounding) ? 'say' : value >= wanted * (1 - rounding) ? 'near' : found.atLeast ? 'unknown' : 'short';
  if (bound === 'at-most') return found.atLeast ? (low > wanted ? 'short' : 'unknown') : high <= wanted * (1 + rounding) ? 'say' : value <= wanted * (1 + rounding) ? 'near' : 'short';
  if (wanted >= value * (1 - rounding) && wanted <= value * (1 + rounding)) return found.atLeast ? 'near' : 'say';
  if (wanted < value) return low >= wanted ? 'say' : 'near'; // It gives more than was said.
  return wanted <= high ? 'near' : found.atLeast ? 'unknown' : 'short';
}

/** On which weight of the dish the stated amount would be true, grams; null when it never can be. */
function gramsForIt(context: ClaimContext, id: NutrientId, wanted: number): number | null {
  const per100 = onBasis(context.ground.plate, [id], '100g');
  return per100 === null || per100.range.value <= 0 ? null : (wanted / per100.range.value) * 100;
}

/** Whether a figure alone counts as "contains", so that the law's source condition must hold too. */
function contains(id: NutrientId): boolean {
  return ['vitamin', 'mineral'].includes(nutrientOf(id).group) || id === 'protein' || id === 'fibre' || id === 'alpha-linolenic' || id === 'epa-dha';
}

function judgeOne(id: NutrientId, stated: StatedAmount, context: ClaimContext): LawVerdict {
  const { ground } = context;
  const unit = nutrientOf(id).unit;
  const reference = referenceValue(ground.rules.references, ground.law, lawNutrient(ground, id) as NutrientId);
  const wanted = stated.kind === 'amount' ? inUnit(stated.value, stated.unit, unit, id) : reference === null ? null : stated.value * reference;
  const found = inPortion(ground.plate, nutrientsOf(id));
  if (wanted === null) return verdict(ground, 'unknown', { reasons: [{ code: 'no-reference', data: { nutrient: id } }] });
  if (found === null) return verdict(ground, 'unknown', { reasons: [{ code: 'no-data', data: { nutrient: id } }] });
  const kind = standing(found, wanted, stated.bound);
  const reasons: Reason[] = [{ code: `quantity-${kind}`, data: { nutrient: id, unit, wanted, low: found.range.low, value: found.range.value, high: found.range.high, atLeast: found.atLeast ? 1 : 0, reference, share: stated.kind === 'share' ? stated.value : null } }];
  if (kind === 'short') reasons.push({ code: 'true-of-weight', data: { nutrient: id, grams: gramsForIt(context, id, wanted), portion: ground.plate.portionG.value } });
  if (kind !== 'say') return verdict(ground, kind, { reasons, clauses: ground.rules.verdicts.quantified?.[ground.law].clauses ?? [] });
  const source = ground.nutrition.find((f) => f.nutrient === lawNutrient(ground, id) && f.rule.claim === 'source');
  if (contains(id) && (ground.law === 'eu' || ground.law === 'gb') && source?.judged.standing !== 'holds') {
    return verdict(ground, source?.judged.standing === 'estimate' ? 'near' : 'short', { reasons: [...reasons, { code: 'figure-but-no-source', data: { nutrient: id } }], clauses: source ? [source.rule.clause] : [], measurements: source?.judged.by ?? [] });
  }
  const low = ground.nutrition.find((f) => f.nutrient === id && f.rule.claim === 'low');
  if (!contains(id) && stated.bound === 'at-most' && low && low.judged.standing !== 'holds') {
    return verdict(ground, 'short', { reasons: [...reasons, { code: 'only-means-low', data: { nutrient: id } }], clauses: [low.rule.clause], measurements: low.judged.by });
  }
  return verdict(ground, 'say', { reasons, nutrition: source ? [source] : [], clauses: source ? [source.rule.clause] : [] });
}

const order: readonly VerdictKind[] = ['not-lawful', 'short', 'unknown', 'proof', 'near', 'say-with', 'say', 'free'];

/** The stretches of a joined statement ("25 g protein, 11 g fibre") that each state one amount. */
function parts(span: string): string[] {
  const split = span.split(/,|\band\b|&|\bplus\b/).filter((p) => /\d|day|half|third|quarter|need/i.test(p));
  return split.length > 1 ? split : [span];
}

/** A figure or a share of a day held against the portion, with its range. */
export function judgeQuantity(claim: Claim, context: ClaimContext): LawVerdict {
  const { ground } = context;
  const bits = parts(claim.span);
  const ids = claim.nutrients.length > 0 ? claim.nutrients : /calorie|kcal|cals/i.test(claim.span) ? ['energy'] : [];
  const each = ids.filter(known).map((id, i) => {
    const stated = statedAmount(bits[Math.min(i, bits.length - 1)] ?? claim.span);
    return stated === null ? byTable(ground, 'quantified', [{ code: 'no-figure', data: {} }]) : judgeOne(id, stated, context);
  });
  if (each.length === 0) return verdict(ground, 'unknown', { reasons: [{ code: 'no-figure', data: {} }, ...manner(claim)] });
  const kind = order.find((k) => each.some((v) => v.kind === k)) ?? 'unknown';
  return together(ground, kind, each, manner(claim));
}
