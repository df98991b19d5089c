import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import type { CycleParameters } from '../../src/core/cycle/parameters.ts';

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
  range: z.strictObject({ spreadMedian: positive, spreadLogDeviation: positive, levelAtReference: share, levelPerLogSpread: z.number(), spreadReference: positive, earlyShare: share }),
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
