import type { FoodForm, KitchenEntry } from './kitchen-name.ts';
import { formOfWord, freshCuts, productForms, standIns } from './match-words.ts';

/** What the words around a name ask for. */
export interface FormRequest {
  /** Folded words of the line that are not part of the name, with the qualifiers. */
  readonly words: readonly string[];
  /** Folded words of the name itself: a form they hold is part of the food, not a request. */
  readonly nameWords: readonly string[];
  readonly unit: string | null;
}

export interface FormChoice {
  readonly form: FoodForm;
  /** The form asked for when the entry lacks it. */
  readonly missed: FoodForm | null;
  /** True when the form asked for is another product (juice, oil, flour), so the entry does not fit. */
  readonly wrongProduct: boolean;
}

const freshUnits = new Set(['bunch', 'sprig', 'handful', 'leaf', 'thumb', 'knob', 'stalk', 'cm', 'inch']);
const cannedUnits = new Set(['tin', 'can']);
// Pulses and grains in a pouch come cooked.
const cookedUnits = new Set(['pouch']);
const driedForms = new Set<FoodForm>(['dried', 'ground', 'powder', 'flakes', 'whole']);

/** The forms that words ask for, strong ones first; neighbouring words are also read joined ("low fat"). */
export function formsAsked(words: readonly string[]): readonly { form: FoodForm; weak: boolean }[] {
  const asked: { form: FoodForm; weak: boolean }[] = [];
  for (let i = 0; i < words.length; i++) {
    const joined = formOfWord(`${words[i]}${words[i + 1] ?? ''}`);
    const found = words[i + 1] !== undefined && joined ? joined : formOfWord(words[i] ?? '');
    if (!found) continue;
    if (found === joined && words[i + 1] !== undefined) i++;
    if (!asked.some((a) => a.form === found.form)) asked.push(found);
  }
  return asked.sort((a, b) => Number(a.weak) - Number(b.weak));
}

/** The form of an entry that a line means, by its words, then its unit, then the entry's usual one. */
export function chooseForm(entry: KitchenEntry, request: FormRequest): FormChoice {
  const has = (form: FoodForm): boolean => entry.forms[form] !== undefined;
  const asked = [...formsAsked(request.words)];
  if (request.unit !== null && cannedUnits.has(request.unit) && !asked.some((a) => !a.weak)) asked.push({ form: 'canned', weak: true });
  if (request.unit !== null && cookedUnits.has(request.unit) && asked.length === 0) asked.push({ form: 'cooked', weak: true });
  for (const { form } of asked) if (has(form)) return { form, missed: null, wrongProduct: false };
  const strong = asked.find((a) => !a.weak && !request.nameWords.some((word) => formOfWord(word)?.form === a.form))?.form;
  // Dry goods are sold uncooked; "raw" asks for nothing else there, "fresh" does.
  if (strong === 'raw' && driedForms.has(entry.usual)) return { form: entry.usual, missed: null, wrongProduct: false };
  if (strong === undefined && request.words.includes('fresh') && driedForms.has(entry.usual)) return { form: entry.usual, missed: 'raw', wrongProduct: false };
  if (strong !== undefined) {
    const standIn = (standIns[strong] ?? []).find(has);
    return { form: standIn ?? entry.usual, missed: strong === entry.usual ? null : strong, wrongProduct: productForms.has(strong) && standIn === undefined };
  }
  const fresh = (request.unit !== null && freshUnits.has(request.unit)) || request.words.some((word) => freshCuts.has(word));
  if (fresh && driedForms.has(entry.usual) && has('raw') && !has('cooked')) return { form: 'raw', missed: null, wrongProduct: false };
  return { form: entry.usual, missed: null, wrongProduct: false };
}
