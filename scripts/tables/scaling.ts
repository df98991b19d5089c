import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { cookingMethods, type ScalingRules } from '../../src/core/dish/index.ts';
import { knownSources } from './known-sources.ts';

const text = z.string().trim().min(1);
const exponent = { exponent: z.number().min(0).max(1), source: text, locator: text };
const schema = z.strictObject({
  checked_on: text,
  not_in_step: z.array(z.strictObject({ id: text, name: text, unless: text.nullable().default(null), ...exponent })),
  greasing: z.strictObject(exponent),
  cooking_water: z.strictObject(exponent),
  times: z.array(z.strictObject({ methods: z.array(z.enum(cookingMethods)).min(1), code: z.enum(['same', 'same-after-boil', 'longer-to-boil', 'thicker-longer', 'batches', 'longer']), ...exponent })),
  tell_from: z.number().min(1),
});

/** data/parameters/dish/scaling.yaml, checked: patterns, sources, and every cooking method once. */
export function compileScaling(data: string): ScalingRules {
  const file = 'parameters/dish/scaling.yaml';
  const read = schema.safeParse(parse(readFileSync(join(data, file), 'utf8')));
  if (!read.success) throw new Error(`data/${file}: ${z.prettifyError(read.error)}`);
  const { not_in_step, greasing, cooking_water, times, tell_from } = read.data;
  const sources = knownSources(data);
  for (const { source } of [...not_in_step, greasing, cooking_water, ...times]) if (!sources.has(source)) throw new Error(`data/${file}: unknown source ${source}`);
  for (const rule of not_in_step) for (const pattern of [rule.name, rule.unless]) if (pattern !== null) new RegExp(pattern, 'i');
  for (const method of cookingMethods) {
    if (times.filter((t) => t.methods.includes(method)).length !== 1) throw new Error(`data/${file}: the method ${method} must stand in exactly one rule of times`);
  }
  return { notInStep: not_in_step, greasing, cookingWater: cooking_water, times, tellFrom: tell_from };
}
