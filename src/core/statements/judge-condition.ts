import type { NutrientId } from '../foods/index.ts';
import type { Interval } from '../quantity/index.ts';
import type { Basis, Condition, ComparedCondition, ComponentCondition, Fact, LimitCondition, Measured } from './condition.ts';
import { referenceValue, type LawId, type ReferenceValues } from './law.ts';
import { onBasis, type BasisAmount } from './on-basis.ts';
import type { Plate, PlateFood, Said } from './plate.ts';

/** How a condition stands: `estimate` holds on the best estimate but not at the worse end of the range. */
export type Standing = 'holds' | 'estimate' | 'fails' | 'unknown';

/** One limit with the figure that was held against it. */
export interface Measurement {
  readonly nutrients: readonly NutrientId[];
  readonly per: Basis | 'component';
  readonly kind: 'atLeast' | 'above' | 'atMost' | 'below';
  readonly limit: number;
  /** Set when the limit is a share of the law's reference value. */
  readonly limitShare: number | null;
  readonly reference: number | null;
  readonly found: Interval | null;
  readonly atLeast: boolean;
  readonly standing: Standing;
  readonly food: string | null;
}

export interface Judged {
  readonly standing: Standing;
  /** The measurements that decide, most telling first. */
  readonly by: readonly Measurement[];
}

export interface JudgeContext {
  readonly plate: Plate;
  readonly law: LawId;
  readonly subject: NutrientId | null;
  readonly references: readonly ReferenceValues[];
  /** The dish it is compared with; null when there is none, and every comparison is then unknown. */
  readonly other: Plate | null;
}

const rank: Record<Standing, number> = { fails: 0, unknown: 1, estimate: 2, holds: 3 };
const hair = 1e-9;

function standingOf(found: BasisAmount | null, kind: Measurement['kind'], limit: number): Standing {
  if (found === null) return 'unknown';
  const passes = (x: number): boolean => {
    const slack = hair * Math.max(1, Math.abs(limit));
    return kind === 'atLeast' ? x >= limit - slack : kind === 'above' ? x > limit + slack : kind === 'atMost' ? x <= limit + slack : x < limit - slack;
  };
  const { low, value, high } = found.range;
  if (kind === 'atLeast' || kind === 'above') {
    if (passes(low)) return 'holds';
    if (passes(value)) return 'estimate';
    return found.atLeast ? 'unknown' : 'fails';
  }
  if (found.atLeast) return passes(low) ? 'unknown' : 'fails';
  if (passes(high)) return 'holds';
  return passes(value) ? 'estimate' : 'fails';
}

function measuredNutrients(of: Measured, subject: NutrientId | null): readonly NutrientId[] {
  if (of === 'subject') return subject === null ? [] : [subject];
  return typeof of === 'string' ? [of] : of;
}

function limitOf(condition: LimitCondition, reference: number | null): { kind: Measurement['kind']; limit: number; share: number | null } | null {
  if (condition.atLeastShare !== undefined) return reference === null ? null : { kind: 'atLeast', limit: condition.atLeastShare * reference, share: condition.atLeastShare };
  for (const kind of ['atLeast', 'above', 'atMost', 'below'] as const) {
    const limit = condition[kind];
    if (limit !== undefined) return { kind, limit, share: null };
  }
  return null;
}

function judgeLimit(condition: LimitCondition, context: JudgeContext): Judged {
  const nutrients = measuredNutrients(condition.of, context.subject);
  const [first] = nutrients;
  const reference = first === undefined ? null : referenceValue(context.references, context.law, first);
  const limit = limitOf(condition, reference);
  if (first === undefined || limit === null) return { standing: 'unknown', by: [] };
  const found = onBasis(context.plate, nutrients, condition.per);
  const standing = standingOf(found, limit.kind, limit.limit);
  return { standing, by: [{ nutrients, per: condition.per, kind: limit.kind, limit: limit.limit, limitShare: limit.share, reference, found: found?.range ?? null, atLeast: found?.atLeast ?? false, standing, food: null }] };
}

/** Compares per 100 g; the worse ends of both ranges decide whether it holds for sure. */
function judgeCompared(condition: ComparedCondition, context: JudgeContext): Judged {
  const nutrients = measuredNutrients(condition.of, context.subject);
  const [first] = nutrients;
  if (context.other === null || first === undefined) return { standing: 'unknown', by: [] };
  const here = onBasis(context.plate, nutrients, '100g');
  const there = onBasis(context.other, nutrients, '100g');
  const reference = referenceValue(context.references, context.law, first);
  if (here === null || there === null || here.atLeast || there.atLeast) return { standing: 'unknown', by: [] };
  const slack = hair * Math.max(1, there.range.value);
  const { less, more, moreShare } = condition;
  const passes = (mine: number, theirs: number): boolean => {
    if (less !== undefined) return mine <= theirs * (1 - less) + slack && (less === 0 || theirs > 0);
    if (more !== undefined) return mine >= theirs * (1 + more) - slack && mine > 0;
    return reference !== null && moreShare !== undefined && mine - theirs >= moreShare * reference - slack;
  };
  const worst = less !== undefined ? passes(here.range.high, there.range.low) : passes(here.range.low, there.range.high);
  const standing: Standing = worst ? 'holds' : passes(here.range.value, there.range.value) ? 'estimate' : 'fails';
  const limit = less !== undefined ? there.range.value * (1 - less) : more !== undefined ? there.range.value * (1 + more) : there.range.value + (moreShare ?? 0) * (reference ?? 0);
  return { standing, by: [{ nutrients, per: '100g', kind: less !== undefined ? 'atMost' : 'atLeast', limit, limitShare: null, reference, found: here.range, atLeast: false, standing, food: null }] };
}

function componentShare(food: PlateFood, nutrient: NutrientId, reference: number): number | null {
  const gives = food.gives[nutrient];
  if (gives === undefined || food.portionG === null || food.portionG <= 0 || food.raccG === null) return null;
  return ((gives / food.portionG) * food.raccG) / reference;
}

function judgeComponent(condition: ComponentCondition, context: JudgeContext): Judged {
  const { subject } = context;
  const reference = subject === null ? null : referenceValue(context.references, context.law, subject);
  if (subject === null || reference === null) return { standing: 'unknown', by: [] };
  const shares = context.plate.foods.map((food) => ({ food, share: componentShare(food, subject, reference) })).filter((s): s is { food: PlateFood; share: number } => s.share !== null);
  const best = shares.reduce<{ food: PlateFood; share: number } | null>((top, now) => (top === null || now.share > top.share ? now : top), null);
  if (best === null) return { standing: 'unknown', by: [] };
  const reached = best.share >= condition.atLeastShare - hair;
  const standing: Standing = reached ? 'holds' : shares.length < context.plate.foods.length ? 'unknown' : 'fails';
  const found = best.share * reference;
  return { standing, by: [{ nutrients: [subject], per: 'component', kind: 'atLeast', limit: condition.atLeastShare * reference, limitShare: condition.atLeastShare, reference, found: { low: found, value: found, high: found }, atLeast: false, standing, food: best.food.name }] };
}

const fromSaid = (said: Said, wanted: 'yes' | 'no'): Standing => (said === 'unknown' ? 'unknown' : said === wanted ? 'holds' : 'fails');

/** 21 CFR 101.13(h)(1): a reference amount of 30 g or less is a small one. */
export const smallRaccG = 30;

function judgeFact(fact: Fact, plate: Plate): Standing {
  const yes = (is: boolean): Standing => (is ? 'holds' : 'fails');
  switch (fact) {
    case 'no-added-sugars':
      return fromSaid(plate.addedSugars, 'no');
    case 'no-added-salt':
      return fromSaid(plate.addedSalt, 'no');
    case 'single-portion-pack':
      return yes(plate.singlePortionPack);
    case 'individual-food':
      return yes(plate.usKind === 'individual-food');
    case 'meal-or-main-dish':
      return yes(plate.usKind !== 'individual-food');
    case 'not-small-racc':
      return yes(plate.raccG > smallRaccG);
    case 'meat-fish-or-meal':
      return yes(plate.meatOrFish || plate.usKind !== 'individual-food');
  }
}

/**
 * Judges a condition over the dish's ranges. Unknown data never makes a condition hold; of several
 * alternatives the best stands, of several demands the worst.
 */
export function judgeCondition(condition: Condition, context: JudgeContext): Judged {
  if ('all' in condition) {
    const parts = condition.all.map((part) => judgeCondition(part, context));
    const worst = parts.reduce((low, part) => (rank[part.standing] < rank[low.standing] ? part : low), { standing: 'holds', by: [] } as Judged);
    const measured = parts.flatMap((p) => p.by).sort((a, b) => rank[a.standing] - rank[b.standing]);
    return { standing: worst.standing, by: measured };
  }
  if ('any' in condition) {
    const parts = condition.any.map((part) => judgeCondition(part, context));
    const best = parts.reduce((top, part) => (rank[part.standing] > rank[top.standing] || (part.standing === top.standing && top.by.length === 0) ? part : top), { standing: 'fails', by: [] } as Judged);
    return { standing: best.standing, by: best.by };
  }
  if ('form' in condition) return { standing: condition.form === context.plate.form ? 'holds' : 'fails', by: [] };
  if ('fact' in condition) return { standing: judgeFact(condition.fact, context.plate), by: [] };
  if ('component' in condition) return judgeComponent(condition, context);
  if ('per' in condition) return judgeLimit(condition, context);
  return judgeCompared(condition, context);
}
