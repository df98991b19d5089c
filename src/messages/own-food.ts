import { nutrient, type OwnFoodProblem } from '../core/foods/index.ts';
import { amount, gramsText } from './numbers.ts';

/** What is wrong with a food of her own and how to mend it. */
export function ownFoodProblemText(problem: OwnFoodProblem): string {
  switch (problem.code) {
    case 'no-name': return 'Give the food a name.';
    case 'no-source': return 'Say where the figures come from, for example the label of the pack.';
    case 'no-figures': return 'Type at least one figure from the pack. Leave out what the pack does not print: an empty field is “not known”, not nothing.';
    case 'bad-portion-grams': return 'Type how many grams one portion of the pack weighs; it must be more than 0.';
    case 'unknown-nutrient': return `“${problem.nutrient}” is not a nutrient that Truepot knows.`;
    case 'negative': return `${nutrient(problem.nutrient).name} cannot be below 0.`;
    case 'too-much': return `${nutrient(problem.nutrient).name} comes to ${amount(problem.per100g, nutrient(problem.nutrient).unit)} in 100 g, which cannot be. Look at the unit and at whether the pack means 100 g or a portion.`;
    case 'parts-exceed-whole': return `Protein, fat, carbohydrate, fibre and alcohol come to ${gramsText(problem.grams)} in 100 g. Look whether the figures are for 100 g or for a portion.`;
  }
}
