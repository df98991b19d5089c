import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { foodForms, type FoodForm, type KitchenEntry, type KitchenFood } from '../../src/core/foods/index.ts';
import { knownSources } from './known-sources.ts';

const text = z.string().trim().min(1);
const food = z.union([
  z.string(),
  z.strictObject({ same: z.string(), note: text.optional() }),
  z.strictObject({ code: z.string(), note: text.optional() }),
  z.strictObject({ near: z.string().nullable(), note: text }),
], { error: 'give a food code, {same: code, note}, {near: code, note} or {near: null, note}' });
const form = z.enum(foodForms, { error: ({ input }) => `unknown form ${JSON.stringify(input)}` });
const spread = z.number().min(0).max(0.9);
const piece = z.strictObject({
  unit: text,
  size: z.enum(['small', 'medium', 'large']).nullable().default(null),
  form: form.nullable().default(null),
  grams: z.number().positive(),
  spread,
  basis: z.enum(['gross', 'net']),
  source: text,
  locator: text,
});
const density = z.strictObject({
  state: z.string(),
  form: form.nullable().default(null),
  // From puffed cereals and freeze-dried chives to syrups and salt.
  gramsAMillilitre: z.number().min(0.01).max(2.5),
  spread,
  source: text,
  locator: text,
});
const entrySchema = z.strictObject({
  name: text,
  also: z.array(text).default([]),
  usual: form,
  forms: z.partialRecord(form, food).refine((forms) => Object.keys(forms).length > 0, 'give at least one form'),
  pieces: z.array(piece).default([]),
  densities: z.array(density).default([]),
  refuse: z.number().min(0).max(95).nullable().default(null),
});
type Row = z.infer<typeof entrySchema>;

/** What the kitchen names are checked against. */
export interface KnownForKitchen {
  readonly foods: ReadonlySet<string>;
  readonly units: ReadonlySet<string>;
  readonly sources: ReadonlySet<string>;
}

/** A file of kitchen names: its area is the file's name without `.yaml`. */
export interface KitchenFile {
  readonly area: string;
  readonly text: string;
}

function kitchenFood(value: z.infer<typeof food>): KitchenFood {
  if (typeof value === 'string') return { code: value, nearness: 'same', note: null };
  if ('near' in value) return { code: value.near, nearness: value.near === null ? 'none' : 'near', note: value.note };
  return { code: 'same' in value ? value.same : value.code, nearness: 'same', note: value.note ?? null };
}

function twice(keys: readonly string[]): string | undefined {
  return keys.find((key, i) => keys.indexOf(key) !== i);
}

/** What is wrong with one entry beside its shape. */
function faults(row: Row, known: KnownForKitchen): string[] {
  const found: string[] = [];
  const forms = Object.entries(row.forms) as [FoodForm, z.infer<typeof food>][];
  for (const [name, value] of forms) {
    const { code } = kitchenFood(value);
    if (code !== null && !known.foods.has(code)) found.push(`form ${name}: no food has the code ${code}`);
  }
  const hasForm = (name: FoodForm | null): boolean => name === null || name in row.forms;
  if (!hasForm(row.usual)) found.push(`the usual form ${row.usual} is not among its forms`);
  for (const { unit, form: name, source } of row.pieces) {
    if (!known.units.has(unit)) found.push(`piece: unknown unit ${unit}`);
    if (!hasForm(name)) found.push(`piece ${unit}: the form ${name} is not among its forms`);
    if (!known.sources.has(source)) found.push(`piece ${unit}: unknown source ${source}`);
  }
  for (const { state, form: name, source } of row.densities) {
    if (!hasForm(name)) found.push(`density '${state}': the form ${name} is not among its forms`);
    if (!known.sources.has(source)) found.push(`density '${state}': unknown source ${source}`);
  }
  const onePiece = twice(row.pieces.map((p) => [p.unit, p.size ?? 'any size', p.form ?? 'any form'].join(', ')));
  if (onePiece !== undefined) found.push(`two weights for one piece (${onePiece})`);
  const oneDensity = twice(row.densities.map((d) => [`'${d.state}'`, d.form ?? 'any form'].join(', ')));
  if (oneDensity !== undefined) found.push(`two densities for one state (${oneDensity})`);
  return found;
}

/** Reads and checks files of kitchen names; throws with every fault: file, entry, what. */
export function kitchenEntries(files: readonly KitchenFile[], known: KnownForKitchen): KitchenEntry[] {
  const problems: string[] = [];
  const owner = new Map<string, string>();
  const entries: KitchenEntry[] = [];
  for (const { area, text: content } of files) {
    const file = `${area}.yaml`;
    let rows: unknown;
    try {
      rows = parse(content) ?? [];
    } catch (error) {
      problems.push(`${file}: not YAML: ${error instanceof Error ? error.message : String(error)}`);
      continue;
    }
    if (!Array.isArray(rows)) {
      problems.push(`${file}: the file must be a list of entries, each beginning with "- name:"`);
      continue;
    }
    (rows as unknown[]).forEach((raw, i) => {
      const name = typeof raw === 'object' && raw !== null && 'name' in raw && typeof raw.name === 'string' ? raw.name : `number ${i + 1}`;
      const where = `${file}: ${name}`;
      const read = entrySchema.safeParse(raw);
      if (!read.success) {
        for (const issue of read.error.issues) problems.push(`${where}: ${issue.path.length > 0 ? `${issue.path.join('.')}: ` : ''}${issue.message}`);
        return;
      }
      const row = read.data;
      for (const fault of faults(row, known)) problems.push(`${where}: ${fault}`);
      for (const claimed of [row.name, ...row.also]) {
        const key = claimed.toLowerCase();
        const before = owner.get(key);
        if (before !== undefined) problems.push(`${where}: the name "${claimed}" is already claimed by ${before}`);
        else owner.set(key, where);
      }
      const forms = Object.fromEntries(Object.entries(row.forms).map(([form, value]) => [form, kitchenFood(value)])) as KitchenEntry['forms'];
      entries.push({ name: row.name, also: row.also, area, usual: row.usual, forms, pieces: row.pieces, densities: row.densities, refusePercent: row.refuse });
    });
  }
  if (problems.length > 0) throw new Error(`data/tables/kitchen-names: ${problems.length} faults\n${problems.join('\n')}`);
  return entries;
}

/** All files of data/tables/kitchen-names/, in the order of their names. */
export function kitchenFiles(data: string): KitchenFile[] {
  const folder = join(data, 'tables', 'kitchen-names');
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({ area: name.slice(0, -'.yaml'.length), text: readFileSync(join(folder, name), 'utf8') }));
}

/** The ids of data/units.yaml: a food may weigh its own handful or thumb, so units of every kind count. */
export function knownUnits(data: string): Set<string> {
  return new Set((parse(readFileSync(join(data, 'units.yaml'), 'utf8')) as { id: string }[]).map(({ id }) => id));
}

/** Kitchen names of every area, checked against the food codes, data/units.yaml and data/sources/. */
export function compileKitchenNames(dataDir: string, foodCodes: ReadonlySet<string>): KitchenEntry[] {
  return kitchenEntries(kitchenFiles(dataDir), { foods: foodCodes, units: knownUnits(dataDir), sources: knownSources(dataDir) });
}
