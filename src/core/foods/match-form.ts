import type { FoodForm, KitchenEntry } from './kitchen-name.ts';
import { cutWords, formOfWord, freshCuts, productForms, standIns } from './match-words.ts';

/** What the words around a name ask for. */
export interface FormRequest {
  /** Folded words beside the name. */
  readonly words: readonly string[];
  /** Folded words of other parts and qualifiers: they may choose a form, and never make another product of it. */
  readonly extra: readonly string[];
  /** Folded words of the name itself: a form they hold is part of the food, not a request. */
  readonly nameWords: readonly string[];
  readonly unit: string | null;
  /** The product that the line is about by its remark ("juice of …"); null for the food itself. */
  readonly product: FoodForm | null;
}

export interface FormChoice {
  readonly form: FoodForm;
  /** The form asked for when the entry lacks it. */
  readonly missed: FoodForm | null;
  /** True when the form asked for is another product (juice, oil, flour), so the entry does not fit. */
  readonly wrongProduct: boolean;
  /** True where only custom decides: "1 tsp coriander" is the ground seed. */
  readonly byCustom?: boolean;
}

const freshUnits = new Set(['bunch', 'sprig', 'handful', 'leaf', 'thumb', 'knob', 'stalk', 'cm', 'inch']);
const cannedUnits = new Set(['tin', 'can']);
// Pulses and grains in a pouch come cooked.
const cookedUnits = new Set(['pouch']);
// Pulses and chopped tomatoes in these are preserved; eggs, berries and mushrooms are not.
const packedUnits = new Set(['carton', 'box', 'jar']);
// In another part of the line these name something beside the food ("tomatoes, with their juice").
// and what the cook does to a fresh food ("2 tomatoes, pureed") is no tin or paste of it
const productNouns = new Set(['juice', 'oil', 'flour', 'paste', 'powder', 'peel', 'zest', 'rind', 'puree', 'pureed']);
const squeezed = new Set(['lemon', 'lime']);
const pouredUnits = new Set(['squeeze', 'splash', 'dash', 'drizzle', 'glug', 'tsp', 'tbsp', 'dsp', 'ml', 'fl-oz']);
const driedForms = new Set<FoodForm>(['dried', 'ground', 'powder', 'flakes', 'whole']);

/** The forms that words ask for, strong ones first; neighbouring words are also read joined ("low fat"). */
export function formsAsked(words: readonly string[]): readonly { form: FoodForm; weak: boolean }[] {
  const asked: { form: FoodForm; weak: boolean }[] = [];
  for (let i = 0; i < words.length; i++) {
    const joined = formOfWord(`${words[i]}${words[i + 1] ?? ''}`);
    const found = words[i + 1] !== undefined && joined ? joined : formOfWord(words[i] ?? '');
    if (!found) continue;
    if (found === joined && words[i + 1] !== undefined) i++;
    // "Fresh or tinned": the first is used.
    if (words[i - 1] === 'or' && i > 1 && formOfWord(words[i - 2] ?? '') !== null) continue;
    if (!asked.some((a) => a.form === found.form)) asked.push(found);
    // A purée that is no paste is the cooked thing.
    if (words[i] === 'puree') asked.push({ form: 'canned', weak: true }, { form: 'cooked', weak: true });
  }
  return asked.sort((a, b) => Number(a.weak) - Number(b.weak));
}

/** The form of an entry that a line means, by its words, then its unit, then the entry's usual one. */
export function chooseForm(entry: KitchenEntry, request: FormRequest): FormChoice {
  const has = (form: FoodForm): boolean => entry.forms[form] !== undefined;
  if (request.product !== null && has(request.product)) return { form: request.product, missed: null, wrongProduct: false };
  const asked = [...formsAsked(request.words)];
  for (const extra of formsAsked(request.extra.filter((w) => !productNouns.has(w)))) if (!asked.some((a) => a.form === extra.form)) asked.push({ form: extra.form, weak: extra.weak || productForms.has(extra.form) });
  const words = [...request.words, ...request.extra];
  // Lemon and lime in wedges are there to be squeezed.
  if (squeezed.has(entry.name) && has('juice') && words.includes('wedge')) asked.push({ form: 'juice', weak: true });
  // A squeeze or spoonful of a citrus fruit is its juice.
  if (request.unit !== null && pouredUnits.has(request.unit) && has('juice') && has('peel') && asked.length === 0 && !words.some((w) => cutWords.has(w))) asked.push({ form: 'juice', weak: true });
  if (request.unit !== null && cannedUnits.has(request.unit) && !asked.some((a) => !a.weak)) asked.push({ form: 'canned', weak: true });
  if (request.unit !== null && cookedUnits.has(request.unit) && asked.length === 0) asked.push({ form: 'cooked', weak: true });
  const kept = request.unit !== null && packedUnits.has(request.unit) && (entry.usual === 'dried' || words.some((w) => cutWords.has(w)));
  if (kept && !asked.some((a) => !a.weak)) asked.push({ form: has('canned') ? 'canned' : 'cooked', weak: true });
  // What is drained without soaking came in a tin.
  if (asked.length === 0 && words.includes('drained') && !words.includes('soaked') && entry.usual === 'dried') asked.push({ form: 'canned', weak: true });
  // British recipes mean the ground spice by the teaspoon of a herb or root that is sold both ways.
  if (request.unit === 'tsp' && entry.usual === 'raw' && has('ground') && asked.length === 0 && !words.some((w) => freshCuts.has(w) || cutWords.has(w) || w === 'fresh')) return { form: 'ground', missed: null, wrongProduct: false, byCustom: true };
  for (const { form } of asked) if (has(form)) return { form, missed: null, wrongProduct: false };
  const strong = asked.find((a) => !a.weak && !request.nameWords.some((word) => formOfWord(word)?.form === a.form))?.form;
  // Dry goods are sold uncooked; "raw" asks for nothing else there, "fresh" does.
  if (strong === 'raw' && driedForms.has(entry.usual)) return { form: entry.usual, missed: null, wrongProduct: false };
  if (strong === undefined && words.includes('fresh') && driedForms.has(entry.usual)) return { form: entry.usual, missed: 'raw', wrongProduct: false };
  if (strong !== undefined) {
    const standIn = (standIns[strong] ?? []).find(has);
    return { form: standIn ?? entry.usual, missed: strong === entry.usual ? null : strong, wrongProduct: productForms.has(strong) && standIn === undefined };
  }
  const fresh = (request.unit !== null && freshUnits.has(request.unit)) || words.some((word) => freshCuts.has(word));
  if (fresh && driedForms.has(entry.usual) && has('raw') && !has('cooked')) return { form: 'raw', missed: null, wrongProduct: false };
  // Juice of what the tables have no juice of: the thing itself stands in, unless the line told a state ("thawed and squeezed").
  return { form: entry.usual, missed: request.product, wrongProduct: false };
}
