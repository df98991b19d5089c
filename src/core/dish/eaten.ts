import { foldWord, plainText, readWords, type FoodMatch } from '../foods/index.ts';
import type { Interval } from '../quantity/index.ts';
import { fateOfLiquid, pouredAway, stepsNaming, takenOutByStep } from './eaten-steps.ts';
import type { IngredientLine, Recipe } from './recipe.ts';
import { stateWords } from './weigh-context.ts';
import { matchesText, type EatenCode, type EatenRules, type TakenOut } from './weighing-rules.ts';

/** How much of a line is eaten, 0 to 1, and why. */
export interface Eaten {
  readonly share: Interval;
  readonly code: EatenCode;
  /** Something to tell although all is counted. */
  readonly note: 'optional-counted' | 'to-serve-counted' | 'counted-once' | null;
  readonly source: string;
  readonly locator: string;
}

export interface EatenContext {
  readonly recipe: Recipe;
  readonly rules: EatenRules;
  /** The line's weight, null when unknown: tells a pan of oil from a spoonful. */
  readonly grams: Interval | null;
  readonly servings: number;
  /** Whether optional lines and those "to serve" count. */
  readonly countOptional: boolean;
}

interface Line {
  readonly line: IngredientLine;
  readonly match: FoodMatch;
  readonly names: readonly string[];
  readonly text: string;
}

// "Sardines in olive oil" are fish.
const isOil = (at: Line): boolean => at.names.some((n) => /\b(oil|lard|dripping|ghee|butter|margarine)$/.test(n) && !/\bin\b/.test(n)) && !at.names.some((n) => /nut butter|peanut butter|almond butter/.test(n));
const isSalt = (at: Line): boolean => at.names.some((n) => /(^|\b)salt$/.test(n)) && !at.names.some((n) => /garlic salt|celery salt/.test(n));
const isWater = (at: Line): boolean => at.names.some((n) => /(^|\b)(water|ice cubes?)$/.test(n)) && !at.names.some((n) => /coconut water|rose ?water|orange (flower|blossom) water/.test(n));

function isTakenOut(at: Line, rule: TakenOut): boolean {
  if (!at.names.some((name) => matchesText(rule.name, name))) return false;
  if (rule.unlessForm !== null && at.match.form === rule.unlessForm) return false;
  if (rule.units !== null && !rule.units.includes(at.line.amount?.unit ?? 'piece')) return false;
  const words = stateWords(at.line);
  return !rule.unlessWords.some((word) => words.has(foldWord(word)));
}

const firstWords = (name: string): string => readWords(name).parts.flat().map(foldWord).join(' ');

/** "The remaining oil" of an earlier line that was divided is that line's oil, not more of it. */
function countedBefore(at: Line, recipe: Recipe): boolean {
  if (!/\b(remaining|reserved|rest of the|the rest|from above|as above)\b/.test(at.text)) return false;
  const name = firstWords(at.line.food.name);
  const own = recipe.lines.findIndex((line) => line.id === at.line.id);
  const before = recipe.lines.slice(0, Math.max(0, own)).filter((line) => firstWords(line.food.name) === name);
  return before.some((line) => line.remarks.includes('divided')) || (before.length > 0 && at.line.amount === null);
}

function oilCode(at: Line, context: EatenContext): EatenCode {
  const { recipe, rules, grams, servings } = context;
  if (at.line.remarks.includes('for-greasing')) return 'greasing';
  const actions = recipe.steps.flatMap((step) => step.actions).filter((action) => action.lines.includes(at.line.id));
  const forFrying = at.line.remarks.includes('for-frying') || /for (deep|shallow)[- ]?frying/.test(at.text);
  const much = grams !== null && grams.value / Math.max(1, servings) > rules.deepFryingFromGAServing;
  if (/deep[- ]?fry/.test(at.text) || actions.some((action) => action.method === 'deep-fried') || (much && (forFrying || actions.some((action) => action.method === 'fried')))) return 'deep-frying-oil';
  return forFrying ? 'shallow-frying-oil' : 'all';
}

/** Salt that goes into the water once; salt that is named again, or has no amount, also seasons. */
function isSaltOfWater(at: Line, recipe: Recipe): boolean {
  return at.line.amount !== null && fateOfLiquid(recipe, at.line.id) === 'poured' && stepsNaming(recipe, at.line.id) <= 1;
}

function liquidCode(at: Line, context: EatenContext): EatenCode {
  const { recipe, rules } = context;
  const inSection = (words: RegExp): boolean => words.test(plainText(at.line.section ?? ''));
  const inMarinade = inSection(/marina[dt]|brin(e|ing)/) && !at.names.some((n) => matchesText(rules.marinated, n) && !/stock|sauce|paste|oil$/.test(n));
  if (inMarinade && pouredAway(recipe, rules, 'marinade|brine')) return 'marinade-poured-away';
  if (inSection(/pickl|brine/) || (/pickled|pickles/.test(plainText(recipe.title ?? '')) && (isWater(at) || isSalt(at) || at.names.some((n) => /vinegar|sugar$/.test(n))))) return 'pickling-liquid';
  if (isWater(at) && (/for (boiling|soaking|cooking|steaming|blanching|the pan|the pasta)/.test(at.text) || fateOfLiquid(recipe, at.line.id) === 'poured')) return 'cooking-water';
  if (isSalt(at) && (/for (the )?(pasta|cooking|boiling|blanching|potato|soaking)( water)?/.test(at.text) || isSaltOfWater(at, recipe))) return 'cooking-water-salt';
  return 'all';
}

function codeOf(at: Line, context: EatenContext): EatenCode {
  const { recipe, rules } = context;
  if (!context.countOptional && at.line.remarks.some((r) => r === 'optional' || r === 'to-serve' || r === 'garnish')) return 'left-out';
  if (at.line.remarks.includes('optional') && context.grams === null) return 'optional-unmeasured';
  if (countedBefore(at, recipe)) return 'counted-before';
  if (rules.alwaysTakenOut.some((rule) => isTakenOut(at, rule))) return 'taken-out';
  if (at.names.some((name) => matchesText(rules.bones, name) && !/on the bone|broth|stock/.test(name))) return 'bones';
  if (takenOutByStep(recipe, rules, at.names)) return 'taken-out';
  if (isOil(at)) {
    const code = oilCode(at, context);
    if (code !== 'all') return code;
  }
  if (at.line.remarks.includes('for-dusting') || /for (dusting|rolling out)/.test(at.text)) return 'dusting';
  if (/for (coating|dredging|rolling in)/.test(at.text)) return 'coating';
  return liquidCode(at, context);
}

/**
 * The share of a line that is eaten: bay leaves are fished out, frying oil stays in the pan, water
 * is poured off, an ingredient used in two places counts once. What no rule speaks of is eaten whole.
 */
export function eatenShare(line: IngredientLine, match: FoodMatch, context: EatenContext): Eaten {
  const names = [plainText(line.food.name), ...(match.entry ? [match.entry.name, ...match.entry.also].map(plainText) : [])];
  const code = codeOf({ line, match, names, text: plainText(line.text) }, context);
  const figure = context.rules.shares[code];
  const counted = code !== 'left-out' && code !== 'optional-unmeasured';
  const note = !counted ? null : line.remarks.includes('optional') ? 'optional-counted' : line.remarks.some((r) => r === 'to-serve' || r === 'garnish') ? 'to-serve-counted' : line.remarks.includes('divided') ? 'counted-once' : null;
  return { share: { low: figure.low, value: figure.value, high: figure.high }, code, note, source: figure.source, locator: figure.locator };
}
