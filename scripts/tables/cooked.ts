import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { isNutrientId, nutrientIds, type NutrientId } from '../../src/core/foods/index.ts';
import { cookedFamilies, type CookedFamily } from '../../src/core/dish/cooked-family.ts';
import { cookedWays, type CookedWay } from '../../src/core/dish/cooked-way.ts';
import { publishedVariants, type PublishedRow, type PublishedTable } from '../../src/core/dish/retention-published.ts';
import type { CookedParameters, WeightYield } from '../../src/core/dish/cooked-tables.ts';
import type { FittedNutrient, FittedSpread } from '../../src/core/dish/retention-model.ts';
import { cookingMethods } from '../../src/core/dish/recipe.ts';
import { readCsvRecords } from './csv.ts';
import { ifct2017Rows } from './ifct2017.ts';
import { cell, isMissing } from './food-rows.ts';
import { knownSources } from './known-sources.ts';

export function isFamily(text: string): text is CookedFamily {
  return (cookedFamilies as readonly string[]).includes(text);
}
export function isWay(text: string): text is CookedWay {
  return (cookedWays as readonly string[]).includes(text);
}
const table = (data: string, name: string): Record<string, string>[] => readCsvRecords(readFileSync(join(data, 'tables', name), 'utf8'));

/** The published factors and which row serves what; throws on an unknown nutrient, family, way, variant or row. */
export function compilePublished(data: string): { source: string; rows: PublishedRow[]; choice: [string, { variant: string; code: string }[]][] } {
  const rows = table(data, 'retention-published.csv').map((record): PublishedRow => {
    const kept: Partial<Record<NutrientId, number>> = {};
    for (const [key, text] of Object.entries(record)) {
      if (key === 'code' || key === 'description' || text === '') continue;
      const percent = Number(text);
      if (!isNutrientId(key) || !(percent >= 0 && percent <= 150)) throw new Error(`retention-published.csv: ${record['code']} ${key} ${text}`);
      kept[key] = percent / 100;
    }
    return { code: record['code']!, description: record['description']!, kept };
  });
  const codes = new Set(rows.map((row) => row.code));
  const choice = new Map<string, { variant: string; code: string }[]>();
  for (const record of table(data, 'retention-rows.csv')) {
    const { family, way, variant, code } = record as { family: string; way: string; variant: string; code: string };
    if (!isFamily(family) || !isWay(way) || !codes.has(code) || !publishedVariants.includes(variant)) throw new Error(`retention-rows.csv: cannot use ${JSON.stringify(record)}`);
    const key = `${family} ${way}`;
    choice.set(key, [...(choice.get(key) ?? []), { variant, code }]);
  }
  return { source: 'usda-retention-6', rows, choice: [...choice] };
}

export function publishedTable(compiled: ReturnType<typeof compilePublished>): PublishedTable {
  return { source: compiled.source, rows: new Map(compiled.rows.map((row) => [row.code, row])), choice: new Map(compiled.choice) };
}

const minutesByWay = z.strictObject(Object.fromEntries(cookedWays.map((way) => [way, z.number().positive()])) as Record<CookedWay, z.ZodNumber>);
const minutesByMethod = z.strictObject(Object.fromEntries(cookingMethods.map((method) => [method, z.number().min(0)])) as Record<(typeof cookingMethods)[number], z.ZodNumber>);
const interval = z
  .strictObject({ low: z.number(), value: z.number(), high: z.number(), source: z.string(), locator: z.string().min(1) })
  .refine((i) => i.low <= i.value && i.value <= i.high, 'low, value and high must rise');
const parameterSchema = z.strictObject({
  checked_on: z.string().regex(/^\d{4}-\d{2}-\d{2}$/),
  evaporation_g_a_minute_a_cm2: interval,
  evaporation_with_lid: interval,
  evaporation_low_heat: interval,
  evaporation_boiling: interval,
  pan_width_cm: interval,
  most_water_lost: interval,
  density_g_a_ml: interval,
  solids_kept_when_drained: interval,
  kept_without_factor: interval,
  composition_spread_otherwise: interval,
  time: z.strictObject({ nutrients: z.array(z.string().refine(isNutrientId, 'is not a nutrient')), least: z.number().positive(), most: z.number().positive(), source: z.string(), locator: z.string(), minutes: minutesByWay }),
  minutes_unsaid: minutesByMethod,
});

function compileParameters(data: string, sources: ReadonlySet<string>): CookedParameters {
  const read = parameterSchema.safeParse(parse(readFileSync(join(data, 'parameters', 'dish', 'cooked.yaml'), 'utf8')));
  if (!read.success) throw new Error(`data/parameters/dish/cooked.yaml: ${z.prettifyError(read.error)}`);
  const p = read.data;
  for (const value of Object.values(p)) {
    if (typeof value === 'object' && 'source' in value && !sources.has(value.source)) throw new Error(`data/parameters/dish/cooked.yaml: unknown source ${value.source}`);
  }
  return {
    evaporation: p.evaporation_g_a_minute_a_cm2, evaporationWithLid: p.evaporation_with_lid, evaporationLowHeat: p.evaporation_low_heat, evaporationBoiling: p.evaporation_boiling,
    panWidth: p.pan_width_cm, mostWaterLost: p.most_water_lost, density: p.density_g_a_ml, solidsKeptWhenDrained: p.solids_kept_when_drained, keptWithoutFactor: p.kept_without_factor,
    compositionSpreadOtherwise: p.composition_spread_otherwise,
    time: { ...p.time, nutrients: p.time.nutrients.filter(isNutrientId) },
    minutesUnsaid: p.minutes_unsaid,
  };
}

function compileYields(data: string, sources: ReadonlySet<string>): [string, WeightYield][] {
  return [...table(data, 'yields.csv'), ...table(data, 'yields-added.csv')].map((record) => {
    const { family, way, source, locator } = record as Record<'family' | 'way' | 'source' | 'locator', string>;
    const kept = { low: Number(record['low']), value: Number(record['kept']), high: Number(record['high']), source, locator };
    if (!isFamily(family) || !isWay(way) || !sources.has(source) || !(kept.low > 0 && kept.low <= kept.value && kept.value <= kept.high)) throw new Error(`yields: cannot use ${JSON.stringify(record)}`);
    const otherSource = record['other_source'] ?? '';
    if (otherSource !== '' && (!sources.has(otherSource) || !(Number(record['other_kept']) > 0))) throw new Error(`yields: cannot use ${JSON.stringify(record)}`);
    const other = otherSource === '' ? null : { value: Number(record['other_kept']), source: otherSource };
    return [`${family} ${way}`, { family, way, kept, pairs: Number(record['pairs'] ?? 0), other }];
  });
}

type Draft = { -readonly [K in keyof FittedNutrient]: FittedNutrient[K] } & { coefficients: Record<string, number> };
const spread = (): Record<'animal' | 'plant', { low: number; high: number }> => ({ animal: { low: 0, high: 0 }, plant: { low: 0, high: 0 } });

/** retention-model.csv; the choice between fitted and published was made by their error on held-out families. */
function compileModel(data: string): { source: string; solids: Record<string, number>; solidsSpread: Record<'animal' | 'plant', FittedSpread>; nutrients: [NutrientId, FittedNutrient][] } {
  const drafts = new Map<string, Draft & { spread: ReturnType<typeof spread>; publishedSpread: ReturnType<typeof spread>; error: { fitted: number; published: number } }>();
  for (const record of table(data, 'retention-model.csv')) {
    const { nutrient, term } = record as Record<'nutrient' | 'term', string>;
    const value = Number(record['value']);
    if (!isNutrientId(nutrient) || !Number.isFinite(value)) throw new Error(`retention-model.csv: cannot use ${JSON.stringify(record)}`);
    let draft = drafts.get(nutrient);
    if (!draft) drafts.set(nutrient, (draft = { coefficients: {}, spread: spread(), publishedSpread: spread(), error: { fitted: Infinity, published: Infinity }, use: 'fitted', pairs: 0 }));
    const bound = /^(fitted|published)-(low|high):(animal|plant)$/.exec(term);
    if (bound) (bound[1] === 'fitted' ? draft.spread : draft.publishedSpread)[bound[3] as 'animal' | 'plant'][bound[2] as 'low' | 'high'] = value;
    else if (term === 'error-fitted') draft.error.fitted = value;
    else if (term === 'error-published') draft.error.published = value;
    else if (term === 'use-fitted') draft.use = value === 1 ? 'fitted' : 'published';
    else if (term === 'pairs') draft.pairs = value;
    else draft.coefficients[term] = value;
  }
  const solids = drafts.get('protein');
  if (!solids) throw new Error('retention-model.csv: no rows for protein; run npx tsx scripts/fit-retention.ts');
  const nutrients = [...drafts].filter(([id]) => id !== 'protein').map(([id, draft]): [NutrientId, FittedNutrient] => [id as NutrientId, draft]);
  return { source: 'sr28-pairs', solids: solids.coefficients, solidsSpread: solids.spread, nutrients };
}

/** Standard deviation over mean within one food, the median over the foods of IFCT 2017 that give one. */
function compileCompositionSpread(): [NutrientId, number][] {
  const rows = ifct2017Rows();
  return nutrientIds.flatMap((nutrient): [NutrientId, number][] => {
    const ratios = rows.map((row) => cell(row, nutrient)).filter((c) => !isMissing(c) && c.per100g > 0 && c.deviation > 0).map((c) => c.deviation / c.per100g).sort((a, b) => a - b);
    return ratios.length < fewestFoods ? [] : [[nutrient, Number(ratios[Math.floor(ratios.length / 2)]!.toPrecision(4))]];
  });
}
const fewestFoods = 20;

/** Everything about cooking, as JSON. Also read by src/adapters/tables/cooked.ts. */
export function compileCooked(data: string) {
  const sources = knownSources(data);
  return {
    published: compilePublished(data),
    fitted: compileModel(data),
    fittedPairs: table(data, 'retention-fitted.csv').filter((record) => record['nutrient'] === 'magnesium').map((record): [string, number] => [`${record['family']} ${record['way']}`, Number(record['pairs'])]),
    yields: compileYields(data, sources),
    compositionSpread: compileCompositionSpread(),
    parameters: compileParameters(data, sources),
  };
}
export type CompiledCooked = ReturnType<typeof compileCooked>;
