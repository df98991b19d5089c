import { cookRound, quantityText, roundingKind, type SwapOption } from '../core/dish/index.ts';
import type { FoodForm } from '../core/foods/index.ts';
import type { DishTables } from './dish-tables.ts';
import { lookUpLine } from './line-lookup.ts';
import type { WorkedLine } from './work-out-dish.ts';

const formWords: Readonly<Partial<Record<FoodForm, string>>> = {
  raw: 'fresh', canned: 'tinned', frozen: 'frozen', dried: 'dried', cooked: 'cooked', smoked: 'smoked', roasted: 'roasted', toasted: 'toasted', ground: 'ground', whole: 'whole',
  wholemeal: 'wholemeal', 'low-fat': 'low-fat', skimmed: 'skimmed', unsalted: 'unsalted', salted: 'salted',
};
/** Cutting words and remarks that hold for any food. */
const carriedOver = /^(finely |roughly |coarsely |thinly )?(chopped|sliced|diced|grated|crushed|shredded|toasted|halved|quartered|cubed|torn|drained|drained and rinsed|rinsed|peeled|optional|to serve|to garnish)$/;

/** What the cook calls an alternative: "frozen spinach", "pearl barley". */
export function optionName(option: SwapOption): string {
  const { entry, form } = option;
  const word = form === entry.usual ? undefined : formWords[form];
  return word === undefined || entry.name.includes(word) ? entry.name : `${word} ${entry.name}`;
}

function near(found: number | null | undefined, wanted: number, by: number): boolean {
  return found !== null && found !== undefined && Math.abs(found - wanted) <= by * wanted;
}

/**
 * The line with the other food in it. The line's own amount words are kept where they give the
 * wanted grams with the new food, then its own unit with another number, then grams. Each way is
 * read back: it must mean that food and weigh within 12 % of `grams` (edible). Null when none does.
 */
export function swapText(worked: WorkedLine, option: SwapOption, grams: number, tables: DishTables): { readonly text: string; readonly grams: number } | null {
  const word = formWords[option.form];
  // Some names need their form, or another name, to be read as themselves: "dried pot barley".
  const names = [...new Set([optionName(option), ...(word === undefined ? [] : [`${word} ${option.entry.name}`]), ...option.entry.also.slice(0, 2)])];
  for (const name of names) {
    const found = namedText(worked, option, { grams, name }, tables);
    if (found) return found;
  }
  return null;
}

function namedText(worked: WorkedLine, option: SwapOption, at: { readonly grams: number; readonly name: string }, tables: DishTables): { readonly text: string; readonly grams: number } | null {
  const { line } = worked;
  const { grams, name } = at;
  // "Chopped tomatoes" in a tin are cut by the maker: that does not hold for what comes instead.
  const extra = line.food.qualifiers.filter((q) => carriedOver.test(q) && (worked.match.form !== 'canned' || /drained|rinsed|optional|to (serve|garnish)/.test(q)));
  const remarks = line.remarks.includes('optional') && !extra.includes('optional') ? ['optional'] : [];
  const tail = [...extra.filter((q) => !name.includes(q)), ...remarks].map((q) => `, ${q}`).join('');
  const reads = (text: string, by: number): { text: string; grams: number } | null => {
    const found = lookUpLine(text, tables);
    const means = found !== null && found.match.entry?.name === option.entry.name && found.match.code === option.food.code;
    const weight = found?.weighing.grams?.value;
    return means && near(weight, grams, by) ? { text, grams: weight ?? grams } : null;
  };
  const unit = line.amount?.unit == null ? null : tables.units.find(line.amount.unit);
  const counted = (word: string, kindOf: Parameters<typeof roundingKind>[0]): { text: string; grams: number } | null => {
    const one = lookUpLine(`1 ${word} ${name}`.replace(/\s+/g, ' '), tables)?.weighing.grams?.value;
    if (one === undefined || !(one > 0)) return null;
    const quantity = cookRound(grams / one, roundingKind(kindOf, false));
    return reads(`${quantityText(quantity)} ${word} ${name}${tail}`.replace(/\s+/g, ' '), 0.25);
  };
  const kept = line.amount && !line.amount.vague ? reads(`${line.amount.text} ${name}${tail}`, 0.12) : null;
  if (kept) return kept;
  const inUnit = unit && (unit.spoon || unit.id === 'ml' || unit.id === 'cup') ? counted(unit.id === 'ml' ? 'ml' : unit.one, unit) : null;
  return inUnit ?? counted('g', tables.units.find('g')) ?? counted('g', null);
}
