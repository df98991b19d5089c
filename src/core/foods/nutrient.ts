import { AppError } from '../../errors.ts';

export type NutrientUnit = 'g' | 'mg' | 'µg' | 'kcal';
export type NutrientGroup = 'energy' | 'macronutrient' | 'fatty-acid' | 'vitamin' | 'mineral' | 'other';

export interface Nutrient {
  readonly id: NutrientId;
  readonly name: string;
  readonly unit: NutrientUnit;
  readonly group: NutrientGroup;
}

/**
 * Every nutrient that Truepot can speak of, in the order in which it is shown. The order is
 * also the column order of the compiled food table. Units are those of the value in 100 g of
 * the edible part. Carbohydrate is available carbohydrate (Regulation (EU) 1169/2011 Annex I
 * counts fibre apart); vitamin A is in retinol activity equivalents; folate is given as the
 * sum of forms and as dietary folate equivalents.
 */
const list = [
  ['energy', 'Energy', 'kcal', 'energy'],
  ['water', 'Water', 'g', 'macronutrient'],
  ['protein', 'Protein', 'g', 'macronutrient'],
  ['fat', 'Fat', 'g', 'macronutrient'],
  ['carbohydrate', 'Carbohydrate', 'g', 'macronutrient'],
  ['sugars', 'Sugars', 'g', 'macronutrient'],
  ['starch', 'Starch', 'g', 'macronutrient'],
  ['fibre', 'Fibre', 'g', 'macronutrient'],
  ['alcohol', 'Alcohol', 'g', 'macronutrient'],
  ['ash', 'Ash', 'g', 'macronutrient'],
  ['saturates', 'Saturated fat', 'g', 'fatty-acid'],
  ['monounsaturates', 'Monounsaturated fat', 'g', 'fatty-acid'],
  ['polyunsaturates', 'Polyunsaturated fat', 'g', 'fatty-acid'],
  ['trans-fat', 'Trans fat', 'g', 'fatty-acid'],
  ['linoleic', 'Linoleic acid (omega-6)', 'g', 'fatty-acid'],
  ['alpha-linolenic', 'Alpha-linolenic acid (omega-3)', 'g', 'fatty-acid'],
  ['epa-dha', 'EPA and DHA (omega-3)', 'g', 'fatty-acid'],
  ['cholesterol', 'Cholesterol', 'mg', 'fatty-acid'],
  ['vitamin-a', 'Vitamin A', 'µg', 'vitamin'],
  ['retinol', 'Retinol (preformed vitamin A)', 'µg', 'vitamin'],
  ['beta-carotene', 'Beta-carotene', 'µg', 'vitamin'],
  ['alpha-carotene', 'Alpha-carotene', 'µg', 'vitamin'],
  ['beta-cryptoxanthin', 'Beta-cryptoxanthin', 'µg', 'vitamin'],
  ['vitamin-d', 'Vitamin D', 'µg', 'vitamin'],
  ['vitamin-e', 'Vitamin E', 'mg', 'vitamin'],
  ['vitamin-k', 'Vitamin K', 'µg', 'vitamin'],
  ['vitamin-c', 'Vitamin C', 'mg', 'vitamin'],
  ['thiamin', 'Thiamin (B1)', 'mg', 'vitamin'],
  ['riboflavin', 'Riboflavin (B2)', 'mg', 'vitamin'],
  ['niacin', 'Niacin (B3)', 'mg', 'vitamin'],
  ['pantothenic-acid', 'Pantothenic acid (B5)', 'mg', 'vitamin'],
  ['vitamin-b6', 'Vitamin B6', 'mg', 'vitamin'],
  ['biotin', 'Biotin (B7)', 'µg', 'vitamin'],
  ['folate', 'Folate, total', 'µg', 'vitamin'],
  ['food-folate', 'Folate naturally in food', 'µg', 'vitamin'],
  ['folic-acid', 'Folic acid added', 'µg', 'vitamin'],
  ['folate-dfe', 'Folate, dietary equivalents', 'µg', 'vitamin'],
  ['vitamin-b12', 'Vitamin B12', 'µg', 'vitamin'],
  ['choline', 'Choline', 'mg', 'vitamin'],
  ['calcium', 'Calcium', 'mg', 'mineral'],
  ['iron', 'Iron', 'mg', 'mineral'],
  ['magnesium', 'Magnesium', 'mg', 'mineral'],
  ['phosphorus', 'Phosphorus', 'mg', 'mineral'],
  ['potassium', 'Potassium', 'mg', 'mineral'],
  ['sodium', 'Sodium', 'mg', 'mineral'],
  ['zinc', 'Zinc', 'mg', 'mineral'],
  ['copper', 'Copper', 'mg', 'mineral'],
  ['manganese', 'Manganese', 'mg', 'mineral'],
  ['selenium', 'Selenium', 'µg', 'mineral'],
  ['iodine', 'Iodine', 'µg', 'mineral'],
  ['chromium', 'Chromium', 'µg', 'mineral'],
  ['molybdenum', 'Molybdenum', 'µg', 'mineral'],
  ['fluoride', 'Fluoride', 'mg', 'mineral'],
  ['chloride', 'Chloride', 'mg', 'mineral'],
  ['lycopene', 'Lycopene', 'µg', 'other'],
  ['lutein-zeaxanthin', 'Lutein and zeaxanthin', 'µg', 'other'],
  ['caffeine', 'Caffeine', 'mg', 'other'],
] as const satisfies readonly (readonly [string, string, NutrientUnit, NutrientGroup])[];

export type NutrientId = (typeof list)[number][0];

export const nutrients: readonly Nutrient[] = list.map(([id, name, unit, group]) => ({ id, name, unit, group }));

export const nutrientIds: readonly NutrientId[] = nutrients.map((n) => n.id);

const byId = new Map<string, { nutrient: Nutrient; column: number }>(nutrients.map((nutrient, column) => [nutrient.id, { nutrient, column }]));

/** Whether the text names a nutrient. */
export function isNutrientId(text: string): text is NutrientId {
  return byId.has(text);
}

/** The nutrient with that id; throws `unknown-nutrient`. */
export function nutrient(id: string): Nutrient {
  const found = byId.get(id);
  if (!found) throw new AppError('unknown-nutrient', { id });
  return found.nutrient;
}

/** The column of a nutrient in the compiled table; throws `unknown-nutrient`. */
export function nutrientColumn(id: string): number {
  const found = byId.get(id);
  if (!found) throw new AppError('unknown-nutrient', { id });
  return found.column;
}
