import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { FoodForm } from '../../src/core/foods/index.ts';
import { ifct2017Rows } from './ifct2017.ts';
import { compileKitchenNames } from './kitchen-names.ts';
import { sr28Rows } from './sr28.ts';

const tableName = new Map([...sr28Rows(), ...ifct2017Rows()].map(({ entry }) => [entry.code, entry.name]));
const entries = compileKitchenNames(join(import.meta.dirname, '..', '..', 'data'), new Set(tableName.keys()));
const byName = new Map(entries.flatMap((entry) => [entry.name, ...entry.also].map((name) => [name.toLowerCase(), entry])));

interface Reading {
  readonly entry: string;
  readonly form: FoodForm;
  readonly nearness: string;
  readonly table: string;
}

const readings: Reading[] = entries.flatMap((entry) =>
  Object.entries(entry.forms).map(([form, food]) => ({
    entry: entry.name,
    form: form as FoodForm,
    nearness: food.nearness,
    table: food.code === null ? '' : (tableName.get(food.code) ?? ''),
  })),
);
const called = ({ entry, form, table }: Reading): string => `${entry}, ${form}: ${table}`;

describe('the state of a kitchen name', () => {
  it('is never cooked where the table says raw', () => {
    expect(readings.filter((r) => r.form === 'cooked' && r.nearness === 'same' && /\b(raw|uncooked)\b/i.test(r.table) && !/\bcooked\b/i.test(r.table)).map(called)).toEqual([]);
  });

  it('is never raw where the table says cooked, for meat, poultry, fish and shellfish', () => {
    const flesh = new Set(entries.filter(({ area }) => area === 'meat-and-poultry' || area === 'fish-and-shellfish').map(({ name }) => name));
    expect(readings.filter((r) => r.form === 'raw' && flesh.has(r.entry) && r.nearness === 'same' && /\bcooked\b/i.test(r.table)).map(called)).toEqual([]);
  });

  it('is never dried where the table says cooked', () => {
    expect(readings.filter((r) => r.form === 'dried' && r.nearness === 'same' && /\bcooked\b(?!, dry)/i.test(r.table) && !/uncooked|precooked/i.test(r.table)).map(called)).toEqual([]);
  });
});

describe('the larder', () => {
  it.each([
    ['double cream', 'near', 'Cream, fluid, heavy whipping'],
    ['single cream', 'same', 'Cream, fluid, light (coffee cream or table cream)'],
    ['gram flour', 'same', 'Chickpea flour (besan)'],
    ['besan', 'same', 'Chickpea flour (besan)'],
    ['plain flour', 'near', 'Wheat flour, white, all-purpose, unenriched'],
    ['all-purpose flour', 'same', 'Wheat flour, white, all-purpose, enriched, bleached'],
    ['atta', 'same', 'Wheat flour, atta'],
    ['cornflour', 'same', 'Cornstarch'],
    ['suji', 'same', 'Semolina, unenriched'],
    ['basmati rice', 'same', 'Rice, white, long-grain, regular, raw, unenriched'],
    ['boiled rice', 'same', 'Rice, white, long-grain, regular, unenriched, cooked without salt'],
    ['pearl barley', 'same', 'Barley, pearled, raw'],
    ['porridge oats', 'same', 'Cereals, oats, regular and quick, not fortified, dry'],
    ['stock cube', 'same', 'Soup, chicken broth cubes, dry'],
    ['streaky bacon', 'same', 'Pork, cured, bacon, unprepared'],
    ['back bacon', 'near', 'Canadian bacon, unprepared'],
    ['skinless chicken breast', 'same', 'Chicken, broiler or fryers, breast, skinless, boneless, meat only, raw'],
    ['roast chicken', 'same', 'Chicken, broilers or fryers, meat only, roasted'],
    ['lean beef mince', 'same', 'Beef, ground, 95% lean meat / 5% fat, raw'],
    ['soy sauce', 'same', 'Soy sauce made from soy and wheat (shoyu)'],
    ['ghee', 'same', 'Butter oil, anhydrous'],
    ['curd', 'same', 'Yogurt, plain, whole milk, 8 grams protein per 8 ounce'],
    ['paneer', 'same', 'Paneer'],
    ['gur', 'same', 'Jaggery, cane'],
    ['unsalted butter', 'same', 'Butter, without salt'],
    ['salmon', 'same', 'Fish, salmon, Atlantic, farmed, raw'],
    ['smoked salmon', 'near', 'Fish, salmon, chinook, smoked'],
    ['rapeseed oil', 'same', 'Oil, canola'],
    ['icing sugar', 'same', 'Sugars, powdered'],
    ['baking soda', 'same', 'Leavening agents, baking soda'],
    ['white bread', 'near', 'Bread, white, commercially prepared (includes soft bread crumbs)'],
  ])('reads %s', (name, nearness, table) => {
    const entry = byName.get(name);
    const food = entry?.forms[entry.usual];
    expect([food?.nearness, tableName.get(food?.code ?? '')]).toEqual([nearness, table]);
  });

  it.each(['oat milk', 'harissa', 'kangaroo', 'nutritional yeast'])('has no data for %s, and says so', (name) => {
    const entry = byName.get(name);
    const food = entry?.forms[entry.usual];
    expect([food?.code, food?.nearness, (food?.note ?? '').length > 20]).toEqual([null, 'none', true]);
  });
});
