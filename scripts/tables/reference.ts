import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { foodForms, isNutrientId, type NutrientId } from '../../src/core/foods/index.ts';
import { readCsvRecords } from './csv.ts';

const nutrientId = z.custom<NutrientId>((v) => typeof v === 'string' && isNutrientId(v), 'no such nutrient');
const isoDate = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);
const checkedParameter = z.strictObject({ value: z.number(), unit: z.string(), source: z.string(), locator: z.string(), from: isoDate });

const intakeSchema = z.object({
  authority: z.enum(['nasem', 'efsa', 'eu-label']),
  stage: z.string(),
  nutrient: nutrientId,
  amount: z.coerce.number().positive(),
  kind: z.string().min(1),
  source: z.string(),
  locator: z.string().min(1),
  checked: z.string().min(1),
  note: z.string().transform((note) => note || null),
});
const energySchema = z.strictObject({
  source: z.string(),
  locator: z.string(),
  checked_on: isoDate,
  checked: z.string(),
  factors: z.array(z.strictObject({ nutrient: nutrientId, energyKj: z.number(), energyKcal: z.number(), note: z.string().optional() })),
});

const cautionSchema = z.strictObject({
  id: z.string(),
  text: z.string().min(10),
  when: z.strictObject({
    food: z.array(z.string()).optional(),
    notFood: z.array(z.string()).optional(),
    forms: z.array(z.enum(foodForms)).optional(),
    overG: z.number().optional(),
    nutrient: nutrientId.optional(),
    over: z.number().optional(),
  }).refine((w) => (w.food !== undefined) !== (w.nutrient !== undefined && w.over !== undefined), 'name foods, or a nutrient and a bound'),
  stages: z.array(z.string()).optional(),
  source: z.string(),
  locator: z.string().min(1),
  checked: z.string().min(1),
});

function check<T>(file: string, schema: z.ZodType<T>, value: unknown): T {
  const read = schema.safeParse(value);
  if (!read.success) throw new Error(`data/${file}: ${z.prettifyError(read.error)}`);
  return read.data;
}

/** Life stages, reference intakes, energy factors, serving parameters and cautions; every source id must be in `sources`. */
export function compileReference(data: string, sources: ReadonlySet<string>) {
  const yaml = (file: string): unknown => parse(readFileSync(join(data, file), 'utf8'));
  const stages = check('parameters/people/life-stages.yaml', z.array(z.strictObject({ id: z.string(), label: z.string() })), yaml('parameters/people/life-stages.yaml'));
  const intakes = check('tables/reference-intakes.csv', z.array(intakeSchema), readCsvRecords(readFileSync(join(data, 'tables/reference-intakes.csv'), 'utf8')));
  const energy = check('parameters/dish/energy-factors.yaml', energySchema, yaml('parameters/dish/energy-factors.yaml'));
  const servings = check('parameters/dish/servings.yaml', z.strictObject({ portionEnergyKcal: checkedParameter, portionWeightG: checkedParameter }), yaml('parameters/dish/servings.yaml'));
  const cautions = check('parameters/dish/cautions.yaml', z.array(cautionSchema), yaml('parameters/dish/cautions.yaml'));
  const known = new Set(stages.map((s) => s.id));
  const seen = new Set<string>();
  for (const intake of intakes) {
    const key = `${intake.authority} ${intake.stage} ${intake.nutrient}`;
    if (!known.has(intake.stage)) throw new Error(`data/tables/reference-intakes.csv: unknown life stage in ${key}`);
    if (seen.has(key)) throw new Error(`data/tables/reference-intakes.csv: ${key} stands twice`);
    seen.add(key);
  }
  for (const source of [...intakes.map((i) => i.source), energy.source, servings.portionEnergyKcal.source, servings.portionWeightG.source, ...cautions.map((c) => c.source)]) {
    if (!sources.has(source)) throw new Error(`no source ${source} in data/sources`);
  }
  return { stages, intakes, energy, servings, cautions };
}
