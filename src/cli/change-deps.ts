import { InvalidArgumentError } from 'commander';
import type { ChangeDesk, DishText } from '../app/change-desk.ts';
import { usualChoices } from '../app/dish-choices.ts';
import type { DishStore } from '../app/ports.ts';
import { isNutrientId, type NutrientId } from '../core/foods/index.ts';
import { AppError } from '../errors.ts';
import { readInput } from './read-input.ts';
import type { Screen } from './screen.ts';

/** What the commands of changing a dish are wired with. */
export interface ChangeDeps {
  readonly open: () => Promise<{ readonly desk: ChangeDesk; readonly dishes: DishStore; close(): Promise<void> }>;
  readonly screen: Screen;
}

/** A dish named on the command line: a file, - for standard input, or else the name of a saved dish. Throws `file-unreadable`. */
export async function dishNamed(name: string, dishes: DishStore, serves: number | undefined): Promise<DishText & { readonly name: string }> {
  const choices = { ...usualChoices, servings: serves ?? null };
  try {
    const text = await readInput(name);
    return { name: text.split('\n').find((l) => l.trim() !== '')?.trim().slice(0, 60) ?? name, text, choices };
  } catch (error) {
    const saved = (await dishes.list({})).find((d) => d.name === name);
    if (!saved || !(error instanceof AppError)) throw error;
    return { name: saved.name, text: saved.text, choices: serves === undefined ? saved.choices : { ...saved.choices, servings: serves } };
  }
}

/** Opens the desk, does the work, and closes the store whatever happens. */
export async function withDesk(deps: ChangeDeps, work: (open: { readonly desk: ChangeDesk; readonly dishes: DishStore }) => Promise<void>): Promise<void> {
  const open = await deps.open();
  try {
    await work(open);
  } finally {
    await open.close();
  }
}

/** "magnesium=100"; repeated options are gathered. */
export function nutrientAmount(text: string, before: readonly { id: NutrientId; amount: number }[] = []): { id: NutrientId; amount: number }[] {
  const [id = '', amount = ''] = text.split('=');
  const value = Number(amount);
  if (!isNutrientId(id.trim()) || !(value >= 0) || amount.trim() === '') throw new InvalidArgumentError('Write a nutrient and an amount, for example magnesium=100.');
  return [...before, { id: id.trim() as NutrientId, amount: value }];
}

export const gathered = (text: string, before: readonly string[] = []): string[] => [...before, ...text.split(',').map((t) => t.trim()).filter((t) => t !== '')];

/** The line of a dish that holds these words, by the desk's own allergen report, which lists every line. Throws `bad-input`. */
export async function lineWith(words: string, dish: DishText, desk: ChangeDesk): Promise<{ readonly lineId: string; readonly text: string }> {
  const { lines } = await desk.allergens(dish);
  const found = lines.filter((l) => l.text.toLowerCase().includes(words.toLowerCase()));
  const [one] = found;
  if (found.length === 1 && one) return one;
  throw new AppError('bad-input', { what: found.length === 0 ? `No line holds “${words}”. The lines are: ${lines.map((l) => l.text).join('; ')}.` : `More than one line holds “${words}”: ${found.map((l) => l.text).join('; ')}. Use more words.` });
}
