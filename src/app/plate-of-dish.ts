import { referenceRow, usKindOf, type Plate, type PlateAmount, type PlateFood, type ReferenceAmountRow, type Said } from '../core/statements/index.ts';
import type { NutrientId } from '../core/foods/index.ts';
import type { DishReport, LineReport } from './dish-report.ts';

/** What she can say about the plate that a recipe does not tell. */
export interface PlateChoices {
  readonly form?: 'solid' | 'liquid';
  readonly singlePortionPack?: boolean;
  readonly addedSugars?: Said;
  readonly addedSalt?: Said;
  readonly allergens?: readonly string[];
}

const sweet = /\b(sugar|honey|syrup|molasses|treacle|jaggery|agave|date paste|fruit juice concentrate|condensed milk|sweetener|stevia)\b/;
const perhapsSweet = /\b(chocolate|ketchup|jam|chutney|granola|sweetened|sauce|relish|marmalade|biscuit|cake|cereal)\b/;
const salty = /\b(salt|soy sauce|tamari|miso|fish sauce|stock cube|bouillon|bacon|ham|feta|halloumi|parmesan|cheese|olives?|capers?|anchov(y|ies)|pickles?|bread|sauerkraut|kimchi|salted|worcestershire)\b/;
const perhapsSalty = /\b(tinned|canned|stock|broth|paste|sauce|butter|mustard|ready)\b/;
const drink = /\b(smoothie|juice|tea|latte|drink|lemonade|kombucha|broth|cocoa|lassi|shake|infusion)\b/;

const namesOf = (line: LineReport): string[] => [line.food.name, line.food.tableName ?? '', line.text].filter((name) => name !== '').map((name) => name.toLowerCase());

/** Yes when a line surely adds it, unknown when one may, else no. Lines without a food leave it unknown. */
function added(lines: readonly LineReport[], surely: RegExp, perhaps: RegExp): Said {
  const eaten = lines.filter((line) => line.eatenShare > 0);
  if (eaten.some((line) => surely.test(line.food.name.toLowerCase()) || surely.test(line.text.toLowerCase()))) return 'yes';
  return eaten.some((line) => line.food.code === null || namesOf(line).some((name) => perhaps.test(name))) ? 'unknown' : 'no';
}

function foodsOf(report: DishReport, rows: readonly ReferenceAmountRow[]): PlateFood[] {
  const gives = new Map<string, Partial<Record<NutrientId, number>>>();
  for (const n of report.nutrients) for (const top of n.top) gives.set(top.lineId, { ...gives.get(top.lineId), [n.id]: top.amount });
  return report.lines.filter((line) => line.eatenShare > 0).map((line) => {
    const row = referenceRow(rows, line.food.name) ?? referenceRow(rows, line.food.tableName ?? '');
    const dry = line.food.state === 'dried' || /\bdr(y|ied)\b/.test(line.text);
    return {
      name: line.food.name, names: namesOf(line),
      portionG: line.gramsG === null ? null : (line.gramsG.value * line.eatenShare) / report.servings.count,
      raccG: row === null ? null : dry && row.dryGrams !== undefined ? row.dryGrams : row.grams,
      gives: gives.get(line.id) ?? {},
    };
  });
}

/** A worked-out dish as the rules of statements look at it. Nutrients that no table has stay unknown. */
export function plateOfDish(report: DishReport, rows: readonly ReferenceAmountRow[], choices: PlateChoices = {}): Plate {
  const amounts = Object.fromEntries(report.nutrients.map((n): [string, PlateAmount] => [n.id, n.state === 'unknown' || n.state === 'not-in-tables' || n.portion === null ? { state: 'unknown', portion: null } : { state: n.state, portion: n.portion }]));
  const foods = foodsOf(report, rows);
  const parts = foods.map((food) => ({ group: referenceRow(rows, food.name)?.group ?? ('none' as const), grams: food.portionG ?? 0 }));
  const title = report.title ?? 'This dish';
  const form = choices.form ?? (drink.test(title.toLowerCase()) ? 'liquid' : 'solid');
  const portionG = report.pot.portionWeightG;
  return {
    title, form, portionG, gramsPerMl: 1, amounts, foods,
    singlePortionPack: choices.singlePortionPack ?? false,
    addedSugars: choices.addedSugars ?? added(report.lines, sweet, perhapsSweet),
    addedSalt: choices.addedSalt ?? added(report.lines, salty, perhapsSalty),
    usKind: usKindOf(portionG.value, parts),
    // 21 CFR 101.12(b): mixed dishes 1 cup, or 140 g where not measured by the cup; soups 245 g.
    raccG: /\bsoup\b/i.test(title) || form === 'liquid' ? 245 : 140,
    meatOrFish: foods.some((food) => referenceRow(rows, food.name)?.meat === true),
    allergens: choices.allergens ?? null,
  };
}
