import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { eatenCodes, type WeighingRules } from '../../src/core/dish/weighing-rules.ts';
import { knownSources } from './known-sources.ts';

const cited = { source: z.string(), locator: z.string().min(1) };
const figure = z.strictObject({ value: z.number().positive(), spread: z.number().min(0).max(0.95).default(0), ...cited });
const isPattern = (text: string): boolean => {
  try {
    return new RegExp(text, 'i') instanceof RegExp;
  } catch {
    return false;
  }
};
const pattern = z.string().min(1).refine(isPattern, 'is not a pattern');
const foodPattern = { name: pattern.nullable().default(null), group: pattern.nullable().default(null) };
const spread = z.number().min(0).max(0.95);
const fills = z.strictObject({ scant: figure, level: figure, heaped: figure });
const sizes = z.strictObject({ small: figure, medium: figure, large: figure });
const checkedOn = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);

const weighing = z.strictObject({
  checked_on: checkedOn,
  spreads: z.strictObject({ weighed: figure, measured: figure, household: figure, container: figure, refuse: figure, size_unsaid: figure }),
  table_measures: z.record(z.string(), figure),
  fills,
  fill_when_fluid_or_vague: fills,
  size_factors: sizes,
  drained_shares: z.array(z.strictObject({ ...foodPattern, value: z.number().positive().max(1), spread, ...cited })).min(1),
  pieces: z.array(z.strictObject({ unit: z.string(), word: z.string().nullable().default(null), ...foodPattern, grams: z.number().positive().nullable(), share_of_piece: z.number().positive().nullable().default(null), spread, basis: z.enum(['gross', 'net', 'whole-tin']), ...cited })),
  lengths: z.array(z.strictObject({ ...foodPattern, grams_a_cm: z.number().positive(), spread, basis: z.enum(['gross', 'net']), ...cited })),
  densities: z.array(z.strictObject({ ...foodPattern, fluid: z.boolean().default(false), value: z.number().positive(), spread, ...cited })),
  no_amount: z.array(z.strictObject({ ...foodPattern, remark: z.enum(['for-greasing', 'for-dusting']).nullable().default(null), grams_a_serving: z.number().positive(), spread, ...cited })),
  servings_unsaid: z.number().positive(),
  most_a_serving: z.array(z.strictObject({ ...foodPattern, grams: z.number().positive() })),
});

const fruits = z.strictObject({
  checked_on: checkedOn,
  fruits: z.array(z.strictObject({ food: z.string(), juice_ml: figure.nullable(), zest_g: figure.nullable() })),
  size_factors: sizes,
});

const share = z.number().min(0).max(1);
const eatenFigure = z.strictObject({ low: share, value: share, high: share, ...cited }).refine((s) => s.low <= s.value && s.value <= s.high, 'low, value and high must rise');
const eaten = z.strictObject({
  checked_on: checkedOn,
  shares: z.record(z.enum(eatenCodes), eatenFigure),
  deep_frying_from_g_a_serving: z.number().positive(),
  always_taken_out: z.array(z.strictObject({ name: pattern, units: z.array(z.string()).nullable().default(null), unless_form: z.string().nullable().default(null), unless_words: z.array(z.string()).default([]) })),
  taking_out: z.array(z.string()).min(1),
  pouring_away: z.array(z.string()).min(1),
  marinated: pattern,
  bones: pattern,
});

function read<T extends z.ZodType>(data: string, path: string, schema: T): z.infer<T> {
  const result = schema.safeParse(parse(readFileSync(join(data, 'parameters', path), 'utf8')));
  if (!result.success) throw new Error(`data/parameters/${path}: ${z.prettifyError(result.error)}`);
  return result.data;
}

function sourcesOf(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(sourcesOf);
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => (key === 'source' && typeof inner === 'string' ? [inner] : sourcesOf(inner)));
}

/** data/parameters/foods/{weighing,juice-and-zest}.yaml and data/parameters/dish/eaten.yaml, checked. */
export function compileWeighing(data: string): WeighingRules {
  const w = read(data, 'foods/weighing.yaml', weighing);
  const f = read(data, 'foods/juice-and-zest.yaml', fruits);
  const e = read(data, 'dish/eaten.yaml', eaten);
  const known = knownSources(data);
  for (const source of sourcesOf([w, f, e])) if (!known.has(source)) throw new Error(`weighing parameters: unknown source ${source}`);
  const { size_unsaid: sizeUnsaid, ...spreads } = w.spreads;
  return {
    spreads: { ...spreads, sizeUnsaid },
    tableMeasures: w.table_measures,
    fills: w.fills,
    softFills: w.fill_when_fluid_or_vague,
    sizeFactors: w.size_factors,
    drainedShares: w.drained_shares,
    pieces: w.pieces.map(({ share_of_piece: shareOfPiece, ...rest }) => ({ ...rest, shareOfPiece })),
    lengths: w.lengths.map(({ grams_a_cm: gramsACm, ...rest }) => ({ ...rest, gramsACm })),
    densities: w.densities,
    noAmount: w.no_amount.map(({ grams_a_serving: gramsAServing, ...rest }) => ({ ...rest, gramsAServing })),
    servingsUnsaid: w.servings_unsaid,
    mostAServing: w.most_a_serving,
    fruits: f.fruits.map(({ food, juice_ml: juiceMl, zest_g: zestG }) => ({ food, juiceMl, zestG })),
    fruitSizes: f.size_factors,
    eaten: {
      shares: e.shares,
      deepFryingFromGAServing: e.deep_frying_from_g_a_serving,
      alwaysTakenOut: e.always_taken_out.map(({ unless_form: unlessForm, unless_words: unlessWords, ...rest }) => ({ ...rest, unlessForm, unlessWords })),
      takingOut: e.taking_out,
      pouringAway: e.pouring_away,
      marinated: e.marinated,
      bones: e.bones,
    },
  };
}
