import { z } from 'zod';
import { cookingMethods } from '../../core/dish/index.ts';
import { nutrientIds } from '../../core/foods/index.ts';
import { measureSystems } from '../../core/quantity/index.ts';

/** The published shape of `truepot dish --json`; docs/dish-report.schema.json is written from it. Every field is required unless it says otherwise. */

const interval = z.strictObject({ low: z.number(), value: z.number(), high: z.number() }).meta({ description: 'Best estimate with the range in which 8 of 10 such pots would lie.' });
const span = z.strictObject({ start: z.int(), end: z.int() }).meta({ description: 'Character offsets in the recipe text, end excluded.' });
const share = z.number().min(0).max(1);
const method = z.enum(cookingMethods);
const finding = z.strictObject({ code: z.string(), severity: z.enum(['question', 'warning', 'note']), lineId: z.string().nullable(), text: z.string() });

const correction = z.strictObject({
  lineKey: z.string(),
  food: z.string().optional(),
  grams: z.number().optional(),
  eaten: share.optional(),
  method: method.optional(),
  minutes: z.number().optional(),
});

const choices = z.strictObject({
  servings: z.number().nullable(),
  lifeStage: z.string(),
  authority: z.enum(['nasem', 'efsa', 'eu-label']),
  measures: z.enum(measureSystems),
  countOptional: z.boolean(),
  cookedWeightG: z.number().nullable(),
  corrections: z.array(correction),
});

const line = z.strictObject({
  id: z.string(),
  key: z.string().meta({ description: "Ties a correction to the line's own words." }),
  text: z.string(),
  span,
  section: z.string().nullable(),
  food: z.strictObject({
    code: z.string().nullable().meta({ description: 'sr28:…, ifct2017:… or own:…; null when the tables have no such food.' }),
    name: z.string(),
    tableName: z.string().nullable(),
    table: z.string().nullable(),
    state: z.string().nullable(),
    nearness: z.enum(['same', 'near', 'none']),
    note: z.string().nullable(),
    others: z.array(z.strictObject({ code: z.string(), name: z.string() })),
  }),
  gramsG: interval.nullable(),
  gramsPath: z.array(z.string()),
  eatenShare: share,
  eatenWords: z.string().nullable(),
  cooking: z.strictObject({ method: z.string().nullable(), minutes: z.number().nullable(), words: z.string() }),
  corrected: z.array(z.enum(['food', 'grams', 'eaten', 'cooking'])),
  confidence: share,
  findings: z.array(finding),
});

const step = z.strictObject({
  number: z.int(),
  text: z.string(),
  actions: z.array(z.strictObject({ verb: z.string(), method: method.nullable(), minutes: interval.nullable(), celsius: z.number().nullable(), lines: z.array(z.string()) })),
});

const reference = z.strictObject({
  amount: z.number(),
  kind: z.string(),
  share: z.number().nullable(),
  source: z.string(),
  locator: z.string(),
  checked: z.string(),
  note: z.string().nullable(),
});

const nutrient = z.strictObject({
  id: z.enum(nutrientIds as [string, ...string[]]),
  name: z.string(),
  unit: z.enum(['g', 'mg', 'µg', 'kcal']),
  group: z.enum(['energy', 'macronutrient', 'fatty-acid', 'vitamin', 'mineral', 'other']),
  state: z.enum(['complete', 'partial', 'unknown', 'not-in-tables']).meta({ description: 'partial: at least this much.' }),
  unknownShare: z.number().min(0).max(1.000001).meta({ description: 'Share of the eaten weight without a value.' }),
  portion: interval.nullable(),
  per100g: z.number().nullable(),
  pot: z.number().nullable(),
  reference: reference.nullable(),
  top: z.array(z.strictObject({ lineId: z.string(), name: z.string(), amount: z.number(), share: z.number() })),
  words: z.string(),
});

export const dishReportSchema = z.strictObject({
  title: z.string().nullable(),
  choices,
  servings: z.strictObject({ count: z.number(), range: interval, basis: z.enum(['chosen', 'stated', 'proposed']), of: z.string().nullable(), words: z.string() }),
  lines: z.array(line),
  steps: z.array(step),
  pot: z.strictObject({
    rawWeightG: z.number(),
    cookedWeightG: interval,
    portionWeightG: interval,
    portionVolumeMl: interval,
    weightPath: z.array(z.string()),
    linesWithoutWeight: z.int(),
    linesWithoutFood: z.int(),
  }),
  energy: z.strictObject({ state: z.enum(['complete', 'partial', 'unknown']), declaredKj: z.number(), declaredKcal: z.number(), rangeKcal: interval, tableKcal: z.number(), differ: z.boolean(), words: z.string() }),
  nutrients: z.array(nutrient),
  reading: z.array(z.string()),
  findings: z.array(finding),
  cautions: z.array(z.strictObject({ id: z.string(), text: z.string(), why: z.string(), source: z.string() })),
  attributions: z.array(z.string()),
});

/** The JSON Schema (draft 2020-12) of a dish report. */
export function dishReportJsonSchema(): object {
  return { ...z.toJSONSchema(dishReportSchema, { target: 'draft-2020-12' }), title: 'A dish worked out by Truepot' };
}
