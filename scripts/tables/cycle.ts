import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import type { CycleTables } from '../../src/app/cycle-tables.ts';
import type { CycleParameters } from '../../src/core/cycle/index.ts';
import { ownExperience, readScheme } from '../../src/core/scheme/index.ts';

const parameter = z.strictObject({ description: z.string().min(5), unit: z.string().min(1), source: z.string(), locator: z.string().min(2), checked: z.string().min(2), value: z.unknown() });

const positive = z.number().positive();
const share = z.number().min(0).max(1);
const shape = z.strictObject({ rightToLeft: positive, heavyShare: share });
const byDay = z.record(z.string().regex(/^-?\d+$/), share).transform((r) => Object.entries(r).map(([day, chance]) => ({ day: Number(day), chance })));

const modelSchema = z.strictObject({
  typicalLength: z.strictObject({ bells: z.array(z.strictObject({ weight: share, mean: positive, deviation: positive })).min(1), perYear: z.number(), ageFrom: positive, ageTo: positive, ageMiddle: positive }),
  ownSpread: z.strictObject({ median: positive, logDeviation: positive, lengthSlope: z.number(), lengthReference: positive, byAge: z.array(z.strictObject({ age: positive, factor: positive })).min(2) }),
  luteal: z.strictObject({ mean: positive, betweenDeviation: positive, lengthSlope: z.number(), withinShare: share, withinBend: positive }),
  follicularShape: shape,
  lutealShape: shape,
  missedEntry: z.array(z.strictObject({ weight: share, chance: share })).min(1),
  recencyHalfLife: positive,
  longestTold: z.number().int().positive(),
  range: z.strictObject({ spreadMedian: positive, spreadLogDeviation: positive, spreadReference: positive, doubtShift: share, doubtLean: share, levelLeast: share, levelMost: share, saidLeast: share, saidMost: share, earlyShare: share }),
  bleed: z.strictObject({ mean: positive, deviation: positive }),
  signs: z.strictObject({ positiveTest: byDay, falseTest: share, temperatureShift: byDay, falseShift: share, slipperyPeak: byDay, falsePeak: share }),
  phases: z.strictObject({ ovulationBefore: z.number().int().min(0), ovulationAfter: z.number().int().min(0), beforePeriod: z.number().int().min(1) }),
  grid: z.strictObject({ typical: z.array(z.strictObject({ from: positive, to: positive, step: positive })).min(1), spreads: z.array(positive).min(2), luteals: z.array(positive).min(2) }),
});

function read<T>(data: string, file: string, schema: z.ZodType<T>): T {
  const result = schema.safeParse(parse(readFileSync(join(data, file), 'utf8')));
  if (!result.success) throw new Error(`data/${file}: ${z.prettifyError(result.error)}`);
  return result.data;
}

/** Values of a parameter file whose entries each name a source that exists. */
function valuesOf(data: string, file: string, sources: ReadonlySet<string>): Record<string, unknown> {
  const entries = read(data, file, z.record(z.string(), parameter));
  return Object.fromEntries(
    Object.entries(entries).map(([id, entry]) => {
      if (!sources.has(entry.source)) throw new Error(`data/${file}: ${id} names the source ${entry.source}, which is not listed`);
      return [id, entry.value];
    }),
  );
}

/** The cycle model's figures out of data/parameters/cycle/model.yaml, checked. */
export function compileCycleModel(data: string, sources: ReadonlySet<string>): CycleParameters {
  const file = 'parameters/cycle/model.yaml';
  const result = modelSchema.safeParse(valuesOf(data, file, sources));
  if (!result.success) throw new Error(`data/${file}: ${z.prettifyError(result.error)}`);
  return result.data;
}

const sourced = { source: z.string(), locator: z.string().min(2) };
const checked = { ...sourced, checked: z.string().min(2) };
const whole = z.number().int().positive();

const lifeStatesSchema = z.array(z.strictObject({ id: z.string(), label: z.string(), phases: z.enum(['yes', 'with-care', 'none']), words: z.array(z.string().regex(/^[^A-Z]+$/)).min(1), ...checked }));
const floorSchema = z.strictObject({ value: positive, unit: z.string(), ...checked });
const boundsSchema = z.strictObject({
  forbidden: z.array(z.strictObject({ id: z.string(), states: z.array(z.string()).default([]), underAge: whole.nullable().default(null), forbids: z.array(z.enum(['fasting', 'low-energy', 'low-carbohydrate'])).min(1), plain: z.boolean(), refer: z.enum(['midwife-or-doctor', 'doctor-or-dietitian', 'eating-disorder-service', 'diabetes-team']), ...checked })),
  floors: z.strictObject({ energyKcal: floorSchema, proteinGPerKg: floorSchema, carbohydrateG: floorSchema, plainPauseHours: floorSchema }),
});
const limits = { shortest: whole, longest: whole, bleedDays: whole };
const referralSchema = z.strictObject({
  limits: z.strictObject({
    adult: z.strictObject({ ...limits, ...checked }),
    teen: z.strictObject({ underAge: whole, ...limits, ...checked }),
    regularity: z.strictObject({ bands: z.array(z.strictObject({ from: whole, to: whole, days: whole })), unknownAge: whole, ...checked }),
    noBleeding: z.strictObject({ days: whole, ...checked }),
    noBleedingRegular: z.strictObject({ days: whole, ...checked }),
    late: z.strictObject({ days: whole, ...checked }),
    persistentlyLong: z.strictObject({ days: whole, cycles: whole, ...checked }),
    transition: z.strictObject({ fromAge: whole, apart: whole, gap: whole, ...checked }),
    afterMenopause: z.strictObject({ months: whole, urgentFromAge: whole, likelyFromAge: whole, ...checked }),
    change: z.strictObject({ days: whole, recent: whole, before: whole, ...checked }),
    edgeDays: z.strictObject({ days: whole, ...checked }),
    lookBack: z.strictObject({ cycles: whole, days: whole, ...checked }),
  }),
  criteria: z.array(z.strictObject({ id: z.string(), urgency: z.enum(['now', 'soon', 'mention', 'note']), ...sourced })),
  questions: z.array(z.strictObject({ id: z.string(), words: z.array(z.string().regex(/^[^A-Z]+$/)).min(1), ask: z.string() })),
  crisisLines: z.array(z.strictObject({ region: z.string(), text: z.string(), source: z.string() })).min(1),
});
const window = z.strictObject({ from: z.number().int(), to: z.number().int() });
const ratingsSchema = z.strictObject({
  ...checked,
  scale: z.strictObject({ least: whole, most: whole }), premenstrual: window, postmenstrual: window, ratingsNeeded: whole, cyclesNeeded: whole, change: share, postmenstrualMost: whole, severe: whole, severeDays: whole,
  symptomsNeeded: whole, coreNeeded: whole, coreWords: z.array(z.string()), curve: z.strictObject({ before: whole, after: whole, cyclesNeeded: whole }), menuChange: z.strictObject({ cyclesNeeded: whole, falseDiscovery: share, ...sourced }),
});

/** Every source named anywhere in a parsed file. */
function sourcesIn(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, v]) => (key === 'source' && typeof v === 'string' ? [v] : sourcesIn(v)));
}

/** Everything the cycle desk needs: the model's figures, life states, bounds, referral criteria, rating rules and the schemes shipped. */
export function compileCycle(data: string, sources: ReadonlySet<string>): CycleTables {
  const states = read(data, 'parameters/people/life-states.yaml', lifeStatesSchema);
  const bounds = read(data, 'parameters/people/safety-bounds.yaml', boundsSchema);
  const referral = read(data, 'parameters/cycle/referral.yaml', referralSchema);
  const ratings = read(data, 'parameters/cycle/daily-ratings.yaml', ratingsSchema);
  const schemes = ['no-phase-rules', 'demo'].map((name) => {
    const file = `parameters/scheme/${name}.yaml`;
    const { scheme, problems } = readScheme(parse(readFileSync(join(data, file), 'utf8')));
    if (!scheme) throw new Error(`data/${file}: ${JSON.stringify(problems)}`);
    return scheme;
  });
  for (const source of [states, bounds, referral, ratings, schemes].flatMap(sourcesIn)) if (source !== ownExperience && !sources.has(source)) throw new Error(`the cycle data name the source ${source}, which is not listed in data/sources`);
  const known = new Set(states.map((s) => s.id));
  for (const state of bounds.forbidden.flatMap((r) => r.states)) if (!known.has(state)) throw new Error(`safety-bounds.yaml: unknown life state ${state}`);
  const criteria = new Set(referral.criteria.map((c) => c.id));
  for (const { id } of referral.questions) if (!criteria.has(id)) throw new Error(`referral.yaml: the question ${id} belongs to no criterion`);
  const { energyKcal, proteinGPerKg, carbohydrateG, plainPauseHours } = bounds.floors;
  return {
    model: compileCycleModel(data, sources),
    lifeStates: states as CycleTables['lifeStates'],
    safety: { rules: bounds.forbidden, floors: { energyKcal: energyKcal.value, proteinGPerKg: proteinGPerKg.value, carbohydrateG: carbohydrateG.value, plainPauseHours: plainPauseHours.value } } as CycleTables['safety'],
    referral: referral as CycleTables['referral'],
    ratings,
    schemes,
  };
}
