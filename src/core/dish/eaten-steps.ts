import { foldWord, plainText, readWords } from '../foods/index.ts';
import type { CookingMethod, Recipe } from './recipe.ts';
import type { EatenRules } from './weighing-rules.ts';

// "Remove the chicken" only lifts it out; these words always mean that it is thrown away.
const alwaysThrown = new Set(['discard', 'fish out', 'pick out', 'throw away']);
const aromatic = /\b(bay|cinnamon|star anise|clove|cardamom|thyme|rosemary|sage|sprig|bouquet|peppercorn|lemon ?grass|lime lea|curry lea|vanilla|ginger|garlic|chilli|herb|spice|kombu|mace|juniper|allspice|parsley stalk)/;
// "Discard the water" or "any mussels that stay shut" is not the food itself.
const notTheFood = /\b(any|water|liquid|skins?|seeds?|stalks?|stems?|fat|shells?|half|marinade|oil|bones?|core|outer|tough|scum|foam|excess|stones?|membrane)\b/;
const wordsAfterVerb = 7;

const pouredMethods = new Set<CookingMethod>(['boiled-drained', 'blanched', 'soaked', 'steamed', 'poached']);

function sentences(recipe: Recipe): string[] {
  return recipe.steps.flatMap((step) => plainText(step.text).split(/[.;!\n]+/)).filter((s) => s.trim() !== '');
}

/** Whether a step takes the food out and throws it away ("discard the bay leaves"). */
export function takenOutByStep(recipe: Recipe, rules: EatenRules, names: readonly string[]): boolean {
  const keys = names.map((name) => readWords(name).parts.flat().map(foldWord).join(' ')).filter((key) => key !== '');
  return sentences(recipe).some((sentence) =>
    rules.takingOut.some((verb) => {
      const at = sentence.indexOf(verb);
      if (at < 0) return false;
      const object = sentence.slice(at + verb.length).split(/\s+/).slice(0, wordsAfterVerb).join(' ').split(/,|\bfrom\b|\bthen\b|\bbefore\b|\buntil\b|\band (?:stir|add|serve|season|set)\b/)[0] ?? '';
      if (notTheFood.test(object)) return false;
      const folded = ` ${readWords(object).parts.flat().map(foldWord).join(' ')} `;
      if (!keys.some((key) => folded.includes(` ${key} `))) return false;
      return alwaysThrown.has(verb) || /discard|throw/.test(sentence) || names.some((name) => aromatic.test(name));
    }),
  );
}

/** Whether a step pours away what the pattern names ("discard the marinade"). */
export function pouredAway(recipe: Recipe, rules: EatenRules, what: string): boolean {
  const named = new RegExp(`\\b(${what})\\b`);
  return sentences(recipe).some((sentence) => named.test(sentence) && (rules.pouringAway.some((verb) => sentence.includes(verb)) || /(remove|lift|take)\b.*\b(from|out of)\b.*\b(marinade|brine)/.test(sentence) || /shak(e|ing) off/.test(sentence)));
}

/**
 * What becomes of a liquid, or of what is dissolved in it: `poured` when the first cooking that it
 * is in the pot for ends with draining; `kept` otherwise, also when no step speaks of it. Later
 * actions do not count: a pot is taken to hold on to what was drained from it.
 */
export function fateOfLiquid(recipe: Recipe, lineId: string): 'poured' | 'kept' {
  const cooked = recipe.steps.flatMap((step) => step.actions).find((action) => action.method !== null && (action.inPot.includes(lineId) || action.lines.includes(lineId)));
  return cooked?.method && pouredMethods.has(cooked.method) ? 'poured' : 'kept';
}

/** In how many steps a line is named. */
export function stepsNaming(recipe: Recipe, lineId: string): number {
  return recipe.steps.filter((step) => step.actions.some((action) => action.lines.includes(lineId) && action.lines.length < recipe.lines.length)).length;
}
