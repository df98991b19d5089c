import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { panSizes, places, type CookingTables, type StepHabit } from '../../src/core/cooking/index.ts';
import { knownSources } from './known-sources.ts';
import { compileReaderWords } from './reader-words.ts';

const triple = z.tuple([z.number().positive(), z.number().positive(), z.number().positive()]).refine(([low, value, high]) => low <= value && value <= high, 'shortest, usual, longest');
const habit = z.strictObject({
  minutes: triple,
  attention: z.union([z.enum(['none', 'hands', 'stir']), z.number().positive()]),
  ring: z.boolean().optional(),
  oven: z.number().optional(),
  place: z.enum(places).optional(),
  burns: z.boolean().optional(),
  talk: z.boolean().optional(),
  pause: z.boolean().optional(),
  ahead: z.tuple([z.number(), z.number()]).optional(),
});
const steps = z.strictObject({
  checked_on: z.string(),
  source: z.string(),
  locator: z.string(),
  kinds: z.record(z.string(), habit),
  verbs: z.record(z.string(), habit),
  line_prep: z.strictObject({ minutes: triple, words: z.array(z.string()) }),
  wording: z.strictObject({ stir: z.array(z.string()), every: z.record(z.string(), z.number().positive()) }),
  ahead_from: z.number(),
  pan_within: z.number(),
  fry_within: z.number(),
  simmer_within: z.number(),
  hurried: z.strictObject({ words: z.array(z.string()), minutes: z.number() }),
  grains: z.array(z.string()),
  poultry: z.array(z.string()),
  pans: z.record(z.enum(panSizes), z.array(z.string())),
});

const parameter = (unit: string): z.ZodType<{ value: number; source: string }> => z.strictObject({ value: z.number(), unit: z.literal(unit), source: z.string(), locator: z.string() });
const kitchen = z.strictObject({
  checked_on: z.string(),
  oven_heats_per_minute: parameter('°C/min'),
  oven_cools_per_minute: parameter('°C/min'),
  room_celsius: parameter('°C'),
  oven_share_celsius: parameter('°C'),
  time_per_degree: parameter('1/°C'),
  least_piece: parameter('min'),
  hold_hot: parameter('min'),
  hold_cold: parameter('min'),
  hold_poultry: parameter('min'),
  grains_cool_within: parameter('min'),
  on_time_target: parameter('1'),
  words_per_minute: parameter('1/min'),
  dead_air_seconds: parameter('s'),
  kitchen: z.strictObject({
    cooks: z.number(),
    rings: z.number(),
    shelves: z.number(),
    pans: z.record(z.enum(panSizes), z.number()),
    places: z.record(z.enum(places), z.number()),
    source: z.string(),
    locator: z.string(),
  }),
});

/** data/parameters/cooking/, checked: shape, units, and that every source is listed. */
export function compileCooking(data: string): CookingTables {
  const file = (name: string): unknown => parse(readFileSync(join(data, 'parameters', 'cooking', name), 'utf8'));
  const k = kitchen.parse(file('kitchen.yaml'));
  const s = steps.parse(file('steps.yaml'));
  const known = knownSources(data);
  for (const source of [s.source, ...Object.values(k).flatMap((entry) => (typeof entry === 'string' ? [] : [entry.source]))]) {
    if (!known.has(source)) throw new Error(`data/parameters/cooking cites the unknown source ${source}`);
  }
  const habits = (rows: Record<string, z.infer<typeof habit>>): Record<string, StepHabit> => rows;
  return {
    rules: {
      ovenHeatsPerMinute: k.oven_heats_per_minute.value,
      ovenCoolsPerMinute: k.oven_cools_per_minute.value,
      roomCelsius: k.room_celsius.value,
      ovenShareCelsius: k.oven_share_celsius.value,
      timePerDegree: k.time_per_degree.value,
      leastPiece: k.least_piece.value,
      holdHot: k.hold_hot.value,
      holdCold: k.hold_cold.value,
      holdPoultry: k.hold_poultry.value,
      grainsCoolWithin: k.grains_cool_within.value,
      onTimeTarget: k.on_time_target.value,
    },
    habits: {
      kinds: habits(s.kinds),
      verbs: habits(s.verbs),
      linePrep: s.line_prep,
      constantWords: s.wording.stir,
      everyWords: s.wording.every,
      aheadFrom: s.ahead_from,
      panWithin: s.pan_within,
      fryWithin: s.fry_within,
      simmerWithin: s.simmer_within,
      hurried: s.hurried,
      grains: s.grains,
      poultry: s.poultry,
      pans: s.pans,
      verbKinds: Object.fromEntries(compileReaderWords(data).verbs.map((entry) => [entry.verb, entry.kind])),
    },
    usualKitchen: { cooks: k.kitchen.cooks, rings: k.kitchen.rings, shelves: k.kitchen.shelves, pans: k.kitchen.pans, places: k.kitchen.places },
    wordsPerMinute: k.words_per_minute.value,
    deadAirSeconds: k.dead_air_seconds.value,
  };
}
