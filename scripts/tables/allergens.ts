import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { foodForms, type AllergenTables, type Composition } from '../../src/core/foods/index.ts';
import { knownSources } from './known-sources.ts';

const text = z.string().trim().min(1);
const ids = z.array(text).default([]);
const basis = z.enum(['single', 'made', 'ready']);
const pattern = text.refine((p) => {
  try {
    return new RegExp(p, 'i') instanceof RegExp;
  } catch {
    return false;
  }
}, 'is not a pattern');
const composition = { basis, contains: ids, may: ids, cross: ids, why: text.nullable().default(null) };
const rows = z.array(z.strictObject({ ...composition, foods: z.array(text).min(1) }));
const listsSchema = z.strictObject({
  checked_on: z.string().regex(/^\d{4}-\d{2}-\d{2}$/),
  substances: z.array(z.strictObject({ id: text, name: text, kind: z.enum(['allergen', 'diet']), words: z.array(text) })).min(1),
  lists: z.array(z.strictObject({
    id: text, name: text, source: text, checked: text, note: text,
    items: z.array(z.strictObject({ id: text, name: text, clause: text, members: z.array(text).min(1), except: text.nullable().default(null), remark: text.nullable().default(null) })).min(1),
  })).min(1),
  said_anyway: ids,
});
const dietsSchema = z.strictObject({
  checked_on: text,
  diets: z.array(z.strictObject({ id: text, name: text, broken_by: z.array(text).min(1), doubtful: ids, source: text, locator: text })),
  fodmap: z.strictObject({ source: text, locator: text, except: ids, notes: z.array(z.strictObject({ kind: text, words: z.array(text).min(1) })) }),
});
const rulesSchema = z.strictObject({
  forms: z.array(z.strictObject({ forms: z.array(z.enum(foodForms)), areas: z.array(text), basis: basis.optional(), contains: z.array(text).optional(), may: z.array(text).optional(), why: text })),
  treatments: z.array(z.strictObject({ words: z.array(text).min(1), contains: ids, may: ids, basis, why: text })),
  claims: z.array(z.strictObject({ words: z.array(text).min(1), lowers: z.array(text).min(1) })),
  neutral: z.array(text),
  read_as: z.record(text, text),
});
const tableFoodsSchema = z.array(z.strictObject({ table: z.enum(['sr28', 'ifct2017']), group: pattern, name: pattern.nullable().default(null), ...composition }));

function read<T extends z.ZodType>(file: string, schema: T): z.infer<T> {
  const result = schema.safeParse(parse(readFileSync(file, 'utf8')));
  if (!result.success) throw new Error(`${file}: ${z.prettifyError(result.error)}`);
  return result.data;
}

/** data/tables/allergens/ and data/parameters/foods/{allergen-lists,diets}.yaml, checked: every substance, source and kitchen name must be known. */
export function compileAllergens(data: string, kitchenNames: ReadonlySet<string>): AllergenTables {
  const lists = read(join(data, 'parameters/foods/allergen-lists.yaml'), listsSchema);
  const diets = read(join(data, 'parameters/foods/diets.yaml'), dietsSchema);
  const folder = join(data, 'tables/allergens');
  const rules = read(join(folder, 'rules.yaml'), rulesSchema);
  const tableFoods = read(join(folder, 'table-foods.yaml'), tableFoodsSchema);
  const known = new Set(lists.substances.map((s) => s.id));
  const sources = knownSources(data);
  const faults: string[] = [];
  const check = (where: string, asked: readonly string[]): void => {
    for (const id of asked) if (!known.has(id)) faults.push(`${where}: no substance is called ${id}`);
  };
  const entries: Record<string, Composition> = {};
  for (const file of readdirSync(folder).filter((f) => f.endsWith('.yaml') && f !== 'rules.yaml' && f !== 'table-foods.yaml').sort()) {
    for (const { foods, ...row } of read(join(folder, file), rows)) {
      check(file, [...row.contains, ...row.may, ...row.cross]);
      for (const name of foods) {
        if (entries[name]) faults.push(`${file}: ${name} stands twice`);
        // A name that the kitchen has given up is left out and told, so that renaming a food never breaks the build nor loses a warning: the new name is unknown until it is entered.
        if (!kitchenNames.has(name)) console.warn(`data/tables/allergens/${file}: the kitchen has no food called ${name}`);
        entries[name] = row;
      }
    }
  }
  for (const list of lists.lists) {
    if (!sources.has(list.source)) faults.push(`list ${list.id}: unknown source ${list.source}`);
    for (const item of list.items) check(`list ${list.id}, ${item.id}`, item.members);
  }
  for (const diet of diets.diets) {
    if (!sources.has(diet.source)) faults.push(`diet ${diet.id}: unknown source ${diet.source}`);
    check(`diet ${diet.id}`, [...diet.broken_by, ...diet.doubtful]);
  }
  if (!sources.has(diets.fodmap.source)) faults.push(`fodmap: unknown source ${diets.fodmap.source}`);
  for (const rule of [...rules.forms, ...rules.treatments]) check('rules.yaml', [...(rule.contains ?? []), ...(rule.may ?? [])]);
  for (const claim of rules.claims) check('rules.yaml, claims', claim.lowers);
  for (const rule of tableFoods) check('table-foods.yaml', [...rule.contains, ...rule.may, ...rule.cross]);
  check('said_anyway', lists.said_anyway);
  if (faults.length > 0) throw new Error(`data/tables/allergens: ${faults.length} faults\n${faults.join('\n')}`);
  return {
    substances: lists.substances, lists: lists.lists, saidAnyway: lists.said_anyway, entries,
    forms: rules.forms.map(({ forms, areas, why, ...rest }) => ({ forms, areas, why, ...(rest.basis === undefined ? {} : { basis: rest.basis }), ...(rest.contains === undefined ? {} : { contains: rest.contains }), ...(rest.may === undefined ? {} : { may: rest.may }) })),
    treatments: rules.treatments, claims: rules.claims, neutral: rules.neutral, readAs: rules.read_as, tableFoods,
    diets: diets.diets.map(({ broken_by, ...diet }) => ({ ...diet, brokenBy: broken_by })),
    fodmap: diets.fodmap,
  };
}
