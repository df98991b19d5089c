import { z } from 'zod';
import { usualChoices, type DishChoices } from '../app/dish-choices.ts';
import { cookingMethods } from '../core/dish/index.ts';
import { isNutrientId, type NutrientId, type OwnFood } from '../core/foods/index.ts';
import { measureSystems } from '../core/quantity/index.ts';
import { AppError } from '../errors.ts';

const correction = z.object({
  lineKey: z.string().min(1),
  food: z.string().optional(),
  grams: z.number().min(0).max(1e6).optional(),
  eaten: z.number().min(0).max(1).optional(),
  method: z.enum(cookingMethods).optional(),
  minutes: z.number().min(0).max(10_000).optional(),
});

const choices = z.object({
  servings: z.number().positive().max(10_000).nullable().default(usualChoices.servings),
  lifeStage: z.string().default(usualChoices.lifeStage),
  authority: z.enum(['nasem', 'efsa', 'eu-label']).default(usualChoices.authority),
  measures: z.enum(measureSystems).default(usualChoices.measures),
  countOptional: z.boolean().default(usualChoices.countOptional),
  cookedWeightG: z.number().positive().max(1e6).nullable().default(usualChoices.cookedWeightG),
  corrections: z.array(correction).max(2000).default([]),
});

const text = z.string();
export const workOutRequest = z.object({ text, choices: choices.prefault({}) });
export const explainRequest = workOutRequest.extend({ nutrient: z.string() });
export const saveRequest = workOutRequest.extend({ label: z.string().max(200).nullable().default(null) });
export const createRequest = workOutRequest.extend({ name: z.string().trim().min(1).max(200) });
export const nameRequest = z.object({ name: z.string().trim().min(1).max(200) });
export const restoreRequest = z.object({ version: z.number().int().positive() });
export const settingsRequest = choices.pick({ lifeStage: true, authority: true, measures: true, countOptional: true });
export const ownFoodRequest = z.object({
  name: z.string().max(200),
  basis: z.discriminatedUnion('kind', [z.object({ kind: z.literal('per-100g') }), z.object({ kind: z.literal('per-portion'), grams: z.number() })]),
  printed: z.record(z.custom<NutrientId>((v) => typeof v === 'string' && isNutrientId(v), 'no such nutrient'), z.number()),
  source: z.string().max(500),
  date: z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'write the date as year-month-day'),
}) satisfies z.ZodType<Omit<OwnFood, 'id'>>;

export type WorkOutRequest = { text: string; choices: DishChoices };

/** Reads a request body; throws `bad-input` that names each field that is off. */
export async function readBody<T>(request: Request, schema: z.ZodType<T>): Promise<T> {
  let body: unknown;
  try {
    body = await request.json();
  } catch (cause) {
    throw new AppError('bad-input', { what: 'The request is not JSON.' }, cause);
  }
  const read = schema.safeParse(body);
  if (!read.success) {
    const what = read.error.issues.map((issue) => `${issue.path.join('.') || 'the request'}: ${issue.message}`).join('; ');
    throw new AppError('bad-input', { what: `The request cannot be used. ${what}` });
  }
  return read.data;
}
