import { z } from 'zod';
import { isNutrientId, type NutrientId } from '../../src/core/foods/index.ts';
import { claimKinds, lawIds, type Condition, type HealthRule, type LawClause, type NutritionRule, type ReferenceValues, type StatementRules } from '../../src/core/statements/index.ts';

export const nutrientId = z.custom<NutrientId>((v) => typeof v === 'string' && isNutrientId(v), 'no such nutrient');
const isoDate = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);
const law = z.enum(lawIds);
export const checked = z.enum(['text', 'secondary', 'memory']);
const basis = z.enum(['100g', '100ml', '100kcal', 'portion', 'racc', '50g', 'energy', 'fatty-acids']);
const measured = z.union([z.literal('subject'), nutrientId, z.array(nutrientId).min(2)]);

const limit = z.strictObject({
  of: measured, per: basis,
  atLeast: z.number().optional(), above: z.number().optional(), atMost: z.number().optional(), below: z.number().optional(), atLeastShare: z.number().optional(),
}).refine((c) => [c.atLeast, c.above, c.atMost, c.below, c.atLeastShare].filter((x) => x !== undefined).length === 1, 'exactly one limit');
const compared = z.strictObject({ of: measured, less: z.number().optional(), more: z.number().optional(), moreShare: z.number().optional() })
  .refine((c) => [c.less, c.more, c.moreShare].filter((x) => x !== undefined).length === 1, 'exactly one of less, more, moreShare');

const condition: z.ZodType<Condition> = z.lazy(() => z.union([
  z.strictObject({ all: z.array(condition).min(1) }),
  z.strictObject({ any: z.array(condition).min(1) }),
  z.strictObject({ form: z.enum(['solid', 'liquid']) }),
  z.strictObject({ fact: z.enum(['no-added-sugars', 'no-added-salt', 'single-portion-pack', 'individual-food', 'meal-or-main-dish', 'not-small-racc', 'meat-fish-or-meal']) }),
  z.strictObject({ component: z.literal('subject'), atLeastShare: z.number() }),
  limit, compared,
])) as z.ZodType<Condition>;

const claimNutrient = z.union([nutrientId, z.enum(['omega-3', 'unsaturated'])]);

export const nutritionRules = z.array(z.strictObject({
  id: z.string(), laws: z.array(law).min(1), clause: z.string().min(5), source: z.string(), checked, from: isoDate,
  claim: z.enum(claimKinds), nutrient: z.union([claimNutrient, z.literal('subject')]),
  subjects: z.enum(['reference-values', 'vitamins-and-minerals']).optional(), tell: z.string().optional(), when: condition,
})) as unknown as z.ZodType<NutritionRule[]>;

export const disclosureLevels = z.array(z.strictObject({
  kind: z.enum(['individual-food', 'main-dish', 'meal']), disclosure: z.string().min(5), disqualifies: z.string().min(5), source: z.string(), checked,
  per: z.array(basis).min(1), small: basis.optional(), above: z.partialRecord(nutrientId, z.number().positive()),
})) as unknown as z.ZodType<StatementRules['levels']>;

export const referenceValues = z.array(z.strictObject({
  laws: z.array(law).min(1), source: z.string(), locator: z.string(), checked, from: isoDate, values: z.partialRecord(nutrientId, z.number().positive()),
})) as unknown as z.ZodType<ReferenceValues[]>;

export const healthRules = z.array(z.strictObject({
  nutrient: z.union([claimNutrient, z.literal('food')]), name: z.string(), plural: z.boolean().optional(), food: z.array(z.string()).optional(),
  condition: z.union([z.literal('source'), z.strictObject({ foodG: z.number() }), condition]), tell: z.string().optional(),
  effects: z.array(z.strictObject({ id: z.string(), lead: z.enum(['contributes', 'maintains', 'role', 'needed', 'whole']), says: z.string(), topics: z.array(z.string()).min(1), checked })).min(1),
})) as unknown as z.ZodType<HealthRule[]>;

export const clauses = z.array(z.strictObject({
  id: z.string(), law, clause: z.string(), source: z.string(), checked, covered: z.enum(['computed', 'read', 'told', 'left-out']), rule: z.string(), why: z.string().optional(),
}).refine((c) => (c.covered === 'left-out') === (c.why !== undefined), 'say why a clause is left out, and only then')) as unknown as z.ZodType<LawClause[]>;
