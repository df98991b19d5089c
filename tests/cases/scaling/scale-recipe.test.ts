import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { readDishTables } from '../../../src/adapters/tables/index.ts';
import { usualChoices } from '../../../src/app/dish-choices.ts';
import { lineReader, scaleDish } from '../../../src/app/scale-dish.ts';
import { workOutDish } from '../../../src/app/work-out-dish.ts';
import { matchLine, scaleRecipe, type Recipe, type ScaledRecipe } from '../../../src/core/dish/index.ts';
import { testScaling } from '../../scaling-rules.ts';

const tables = readDishTables();
const here = import.meta.dirname;
const scale = (recipe: Recipe, factor: number): ScaledRecipe =>
  scaleRecipe(recipe, recipe.lines.map((line) => ({ line, match: matchLine(line, tables.index, tables.units), food: null })), factor, { rules: testScaling, units: tables.units, readBack: lineReader(tables), read: tables.read });

const folder = join(here, '../recipes');
const recipes = new Map(readdirSync(folder).filter((f) => f.endsWith('.txt')).map((file) => [file, tables.read(readFileSync(join(folder, file), 'utf8'))]));
const recipeOf = (file: string): Recipe => recipes.get(file)!;
const files = fc.constantFrom(...recipes.keys());
const lineFolder = join(here, '../lines');
const lines = readdirSync(lineFolder).filter((f) => f.endsWith('.yaml')).flatMap((f) => (parse(readFileSync(join(lineFolder, f), 'utf8')) as { line: string }[]).map((c) => c.line)).filter((l) => !l.includes('\n'));
const factor = fc.double({ min: 0.2, max: 12, noNaN: true });

describe('scaling whole recipes', () => {
  it('by 1 gives the text back letter for letter', () => {
    for (const recipe of recipes.values()) expect(scale(recipe, 1).text).toBe(recipe.text);
  });

  it('loses no line and keeps every food, whatever the factor', () => {
    fc.assert(fc.property(files, factor, (file, by) => {
      const recipe = recipeOf(file);
      const scaled = scale(recipe, by);
      const after = tables.read(scaled.text);
      expect(after.lines.length).toBe(recipe.lines.length);
      expect(scaled.lines.length).toBe(recipe.lines.length);
      expect(after.lines.map((l) => l.food.name.slice(0, 3).toLowerCase())).toEqual(recipe.lines.map((l) => l.food.name.slice(0, 3).toLowerCase()));
      expect(after.steps.length).toBe(recipe.steps.length);
    }), { numRuns: 60 });
  });

  it('writes text that reads back to the scaled amounts', () => {
    fc.assert(fc.property(files, factor, (file, by) => {
      const recipe = recipeOf(file);
      const scaled = scale(recipe, by);
      const after = tables.read(scaled.text);
      recipe.lines.forEach((line, i) => {
        const told = scaled.lines[i];
        const read = after.lines[i]?.amount;
        if (told?.state !== 'scaled' || !line.amount) return;
        expect(read?.unit ?? 'piece').toBe(line.amount.unit ?? 'piece');
        const ratio = (read?.quantity.value ?? 0) / (line.amount.quantity.value * told.factor);
        if (line.amount.quantity.value * told.factor >= 1) expect(Math.abs(ratio - 1), `${line.text} → ${told.after}`).toBeLessThanOrEqual(0.5);
      });
    }), { numRuns: 60 });
  });
});

describe('scaling single lines', () => {
  const lineRecipe = (line: string): Recipe => tables.read(`Pot\nServes 4\n\nIngredients\n${line}\n\nMethod\nSimmer for 20 minutes.\n`);
  it('can write every line of the hand-made line cases anew for any factor, or leaves it and says so', () => {
    fc.assert(fc.property(fc.constantFrom(...lines), factor, (text, by) => {
      const scaled = scale(lineRecipe(text), by);
      const left = scaled.lines.filter((l) => l.state === 'not-scaled').length;
      expect(scaled.findings.length).toBe(left);
      expect(left).toBe(0);
    }), { numRuns: 300 });
  });
  it.each([
    ['2 x 400 g tins chickpeas, drained', 1.5, '3 x 400 g tins chickpeas, drained'],
    ['400g tin chopped tomatoes', 3, '3 x 400g tins chopped tomatoes'],
    ['4 eggs', 1.5, '6 eggs'],
    ['1 egg', 1.4, '1 egg'],
    ['half an onion', 2, '1 onion'],
    ['1 onion, diced', 3, '3 onions, diced'],
    ['200g/7oz plain flour', 2, '400g plain flour'],
    ['3 medium carrots (about 250 g)', 2, '6 medium carrots (about 500 g)'],
    ['1 butternut squash, about 1kg', 2, '2 butternut squashes, about 1kg each'],
    ['a good handful of chopped kale', 2, '2 good handfuls of chopped kale'],
    ['a good handful of kale (about 60 g)', 2, '2 good handfuls of kale (about 120 g)'],
    ['about two hundred and fifty grams of chicken livers', 2, '500 grams of chicken livers'],
    ['1 tsp ground cinnamon', 2, '1¾ tsp ground cinnamon'],
    ['2 tsp baking powder', 2, '3½ tsp baking powder'],
    ['1 tsp sea salt', 2, '1¾ tsp sea salt'],
    ['1 tsp ground cinnamon', 0.5, '½ tsp ground cinnamon'],
    ['salt and pepper', 2, 'salt and pepper'],
  ])('%s by %d is %s', (before, by, after) => {
    expect(scale(lineRecipe(before), by).text.split('\n')[4]).toBe(after);
  });
});

describe('scaling a dish to an aim', () => {
  const text = 'Bean pot\nServes 4\n\nIngredients\n2 x 400 g tins kidney beans, drained\n200 g kale\n1 tsp salt\n\nMethod\n1. Simmer everything for 30 minutes.\n';
  const dish = { text, choices: usualChoices };
  it('to portions: words, servings and choices agree', () => {
    const scaled = scaleDish(dish, { kind: 'portions', count: 8 }, tables, testScaling);
    expect(scaled.text).toContain('Serves 8');
    expect(scaled.text).toContain('400 g kale');
    expect(scaled.choices.servings).toBe(8);
    expect(scaled.times.map((t) => t.code)).toEqual(['longer-to-boil']);
  });
  it('to the amount of one line at hand', () => {
    const kale = workOutDish(text, usualChoices, tables).lines[1];
    const scaled = scaleDish(dish, { kind: 'at-hand', lineId: kale?.line.id ?? '', grams: 100 }, tables, testScaling);
    expect(scaled.text).toContain('100 g kale');
    expect(scaled.text).toContain('1 x 400 g tin kidney beans');
  });
  it('to a nutrient target, which enlarges the portions and not their number', () => {
    const before = workOutDish(text, usualChoices, tables);
    const now = (before.totals.totals.get('magnesium')?.known ?? 0) / before.servings.count;
    const scaled = scaleDish(dish, { kind: 'nutrient', nutrient: 'magnesium', portionAmount: now * 2 }, tables, testScaling);
    expect(scaled.factor).toBeCloseTo(2);
    expect(scaled.choices.servings).toBe(before.servings.count);
  });
  it('keeps her corrections, with their grams scaled', () => {
    const before = workOutDish(text, usualChoices, tables);
    const corrected = { ...usualChoices, corrections: [{ lineKey: before.lines[1]?.key ?? '', grams: 180 }] };
    const scaled = scaleDish({ text, choices: corrected }, { kind: 'factor', factor: 2 }, tables, testScaling);
    expect(workOutDish(scaled.text, scaled.choices, tables).lines[1]?.grams?.value).toBe(360);
  });
  it('says what to mend when an aim cannot be met', () => {
    expect(() => scaleDish(dish, { kind: 'portions', count: 0 }, tables, testScaling)).toThrow(/bad-input/);
    expect(() => scaleDish(dish, { kind: 'nutrient', nutrient: 'chromium', portionAmount: 10 }, tables, testScaling)).toThrow(/bad-input/);
  });
});
