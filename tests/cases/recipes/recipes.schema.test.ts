import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { readFoodTable } from '../../../src/adapters/tables/foods.ts';
import { cookingMethods } from '../../../src/core/dish/recipe.ts';
import { isKnown, nutrientIds, type FoodCode } from '../../../src/core/foods/index.ts';

const here = new URL('./', import.meta.url);
const demo = new URL('../demo/', import.meta.url);
const demoTexts = new URL('../../../data/demo/', import.meta.url);
const table = readFoodTable();
const codes = new Set<string>(table.foods.map((food) => food.code));

const Code = z.custom<FoodCode>((value) => typeof value === 'string' && codes.has(value), 'no such food code');
const Ingredient = z
  .strictObject({
    id: z.string().regex(/^[a-z-]+$/),
    text: z.string().min(4),
    foods: z.array(Code),
    near: z.array(Code).min(1).optional(),
    grams: z.number().positive().nullable(),
    tolerance: z.number().min(0.02).max(0.9).optional(),
    eaten: z.number().min(0).max(1),
    why: z.string().min(4),
  })
  .refine((one) => (one.grams === null) === (one.tolerance === undefined), 'a tolerance belongs to grams');
const Answers = z.strictObject({
  title: z.string().nullable(),
  servings: z.strictObject({ count: z.number().int().positive(), of: z.string().nullable() }),
  lines: z.number().int().positive(),
  ingredients: z.array(Ingredient).min(8),
  steps: z.array(z.strictObject({ step: z.number().int().positive(), cooking: z.record(z.string(), z.array(z.enum(cookingMethods)).min(1)) })).min(1),
  portion: z.strictObject({
    basis: z.literal('raw, before losses'),
    values: z.array(z.strictObject({ nutrient: z.enum(nutrientIds), value: z.number().positive(), unit: z.enum(['kcal', 'mg', 'ug']), tolerance: z.number().min(0.05).max(0.3) })).length(3),
  }),
});
type Answers = z.infer<typeof Answers>;

interface Case {
  readonly name: string;
  readonly folder: URL;
  readonly texts: URL;
}

function cases(folder: URL, texts: URL): Case[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.expected.yaml'))
    .sort()
    .map((file) => ({ name: file.replace('.expected.yaml', ''), folder, texts }));
}

function textOf({ name, texts }: Case): string {
  const file = ['txt', 'html', 'json'].map((kind) => new URL(`${name}.${kind}`, texts)).find((url) => existsSync(url));
  if (!file) throw new Error(`no text beside ${name}.expected.yaml`);
  return readFileSync(file, 'utf8');
}

const answersOf = ({ name, folder }: Case): Answers => Answers.parse(parse(readFileSync(new URL(`${name}.expected.yaml`, folder), 'utf8')));

/** What the examiner's grams give for one portion, from the first code of each food; null when a value is missing. */
function addUp(answers: Answers, nutrient: (typeof nutrientIds)[number]): number | null {
  let sum = 0;
  for (const { foods, grams, eaten } of answers.ingredients) {
    const first = foods[0];
    if (first === undefined || grams === null) continue;
    const value = table.get(first).value(nutrient);
    if (!isKnown(value)) return null;
    sum += (value.per100g * grams * eaten) / 100;
  }
  return sum / answers.servings.count;
}

const recipes = cases(here, here);
const demos = cases(demo, demoTexts);

it('holds ten recipes and the two demo dishes', () => {
  expect(recipes.map((one) => one.name)).toEqual([
    'bake-biscuits', 'dictated-run-on', 'indian-home-notes', 'json-ld-alone', 'long-two-subrecipes', 'messy-paste', 'saved-page', 'shorthand-card', 'tidy-uk-metric', 'us-cups-sections',
  ]);
  expect(demos.map((one) => one.name)).toEqual(['beetroot-barley-mackerel', 'white-bean-and-chard-stew']);
});

describe.each([...recipes, ...demos])('the answers for $name', (one) => {
  const answers = answersOf(one);
  const text = textOf(one).toLowerCase();

  it('quote the text', () => {
    for (const { text: fragment } of answers.ingredients) expect(text).toContain(fragment.toLowerCase());
    expect(answers.lines).toBe(answers.ingredients.length);
  });

  it('give every food one name and cook only foods of the list', () => {
    const ids = answers.ingredients.map((ingredient) => ingredient.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { cooking } of answers.steps) for (const id of Object.keys(cooking)) expect(ids).toContain(id);
  });

  it('add up to the stated portion from the table values', () => {
    for (const { nutrient, value } of answers.portion.values) {
      const sum = addUp(answers, nutrient);
      expect(sum, nutrient).not.toBeNull();
      expect(Math.abs((sum ?? 0) - value) / value, nutrient).toBeLessThan(0.03);
    }
  });
});
