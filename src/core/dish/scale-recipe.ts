import { plainText } from '../foods/index.ts';
import type { UnitTable } from '../quantity/index.ts';
import type { LineFood } from './allergen-dish.ts';
import type { Finding, IngredientLine, Recipe } from './recipe.ts';
import { quantityText } from './scale-rounding.ts';
import { canScale, scaleLineText, type LineEdit, type ReadBack } from './scale-line.ts';
import { scaledTimes, type ScaledTime } from './scale-time.ts';
import type { ScalingExponent, ScalingRules } from './scaling-rules.ts';

/** `scaled`; `kept`: no amount to scale (salt to taste); `not-scaled`: could not be written so that it reads back, left as it was. */
export type ScaledLineState = 'scaled' | 'kept' | 'not-scaled';

export interface ScaledLine {
  readonly lineId: string;
  readonly state: ScaledLineState;
  readonly before: string;
  readonly after: string;
  /** What the amount was multiplied by before rounding. */
  readonly factor: number;
  /** Why that is not the pot's factor; null where it is. */
  readonly rule: (ScalingExponent & { readonly id: string }) | null;
}

export interface ScaledRecipe {
  readonly factor: number;
  /** Portions after scaling; null where the recipe states none. */
  readonly servings: number | null;
  readonly text: string;
  readonly lines: readonly ScaledLine[];
  readonly times: readonly ScaledTime[];
  readonly findings: readonly Finding[];
}

export interface ScaleContext {
  readonly rules: ScalingRules;
  readonly units: UnitTable;
  readonly readBack: ReadBack;
  /** Reads a whole recipe's text: the new text must hold as many lines as the old. */
  readonly read: (text: string) => Recipe;
}

const namesOf = ({ line, match }: LineFood): string[] => [match.entry?.name, line.food.name].filter((n) => n !== undefined).map(plainText);

function ruleFor(at: LineFood, rules: ScalingRules): ScaledLine['rule'] {
  if (at.line.remarks.includes('for-greasing') || at.line.remarks.includes('for-frying')) return { id: 'greasing', ...rules.greasing };
  if (/for (the )?(pasta|boiling|cooking|blanching)( water)?/.test(plainText(at.line.text)) && namesOf(at).some((n) => /water$/.test(n))) return { id: 'cooking-water', ...rules.cookingWater };
  const names = namesOf(at);
  const rule = rules.notInStep.find((r) => names.some((n) => new RegExp(plainText(r.name), 'i').test(n)) && !(r.unless !== null && names.some((n) => new RegExp(plainText(r.unless ?? ''), 'i').test(n))));
  return rule ? { id: rule.id, exponent: rule.exponent, source: rule.source, locator: rule.locator } : null;
}

const isEgg = (at: LineFood): boolean => namesOf(at).some((n) => /(^| )eggs?$/.test(n));

interface AbsoluteEdit extends LineEdit {
  readonly lineId: string;
}

function applied(text: string, edits: readonly AbsoluteEdit[]): string {
  const seen = new Set<string>();
  const once = [...edits].sort((a, b) => b.start - a.start || b.end - a.end).filter((e) => {
    const key = `${e.start} ${e.end}`;
    return !seen.has(key) && seen.add(key);
  });
  return once.reduce((now, e) => now.slice(0, e.start) + e.text + now.slice(e.end), text);
}

/** "Serves 4" with the new number; null where its words are not found outside the lines. */
function servingsEdit(recipe: Recipe, servings: number): AbsoluteEdit | null {
  if (!recipe.servings) return null;
  const inLine = (at: number): boolean => recipe.lines.some((l) => l.span.start <= at && at < l.span.end);
  const words = recipe.servings.text;
  for (let at = recipe.text.indexOf(words); at >= 0; at = recipe.text.indexOf(words, at + 1)) {
    if (inLine(at)) continue;
    const number = /\d+(?:[.,]\d+)?(?:\s*(?:-|–|to)\s*\d+)?|\b(?:one|two|three|four|five|six|seven|eight|nine|ten|twelve)\b/i.exec(words);
    if (!number) return null;
    return { lineId: '', start: at + number.index, end: at + number.index + number[0].length, text: quantityText(servings) };
  }
  return null;
}

/** The recipe as plain text, for one that came as a page or as data. */
function plainRecipe(recipe: Recipe, after: ReadonlyMap<string, string>, servings: number | null): string {
  const lines: string[] = [];
  let section: string | null = null;
  for (const line of recipe.lines) {
    if (line.section !== section && line.section !== null) lines.push('', `${line.section}:`);
    section = line.section;
    lines.push(after.get(line.id) ?? line.text);
  }
  return [recipe.title ?? 'Recipe', ...(servings === null ? [] : [`Serves ${quantityText(servings)}`]), '', 'Ingredients', ...lines, '', 'Method', ...recipe.steps.map((s) => `${s.number}. ${s.text}`), ''].join('\n');
}

function finding(line: IngredientLine): Finding {
  return { code: 'not-scaled', lineId: line.id, data: { text: line.text }, severity: 'warning' };
}

/**
 * A recipe for another size of pot. Amounts are written anew in each line's own words and units,
 * rounded as a cook measures; spice, salt, leavening and frying fat do not grow in step (common
 * practice, marked). No line is lost: what cannot be written so that it reads back stays as it
 * was, with a finding. A factor of 1 gives the text back unchanged. Throws nothing for a factor above 0.
 */
export function scaleRecipe(recipe: Recipe, foods: readonly LineFood[], factor: number, context: ScaleContext): ScaledRecipe {
  const { rules, units, readBack } = context;
  const edits: AbsoluteEdit[] = [];
  const findings: Finding[] = [];
  const lines = foods.map((at): ScaledLine => {
    const { line } = at;
    const rule = factor > 1 || at.line.remarks.includes('for-greasing') ? ruleFor(at, rules) : null;
    const own = rule ? factor ** rule.exponent : factor;
    const base = { lineId: line.id, before: line.text, factor: own, rule };
    if (factor === 1 || !canScale(line)) return { ...base, state: 'kept', after: line.text };
    const scaled = scaleLineText({ line, factor: own, isEgg: isEgg(at), units, readBack });
    if (!scaled) {
      findings.push(finding(line));
      return { ...base, state: 'not-scaled', after: line.text };
    }
    edits.push(...scaled.edits.map((e) => ({ lineId: line.id, start: line.span.start + e.start, end: line.span.start + e.end, text: e.text })));
    return { ...base, state: 'scaled', after: scaled.text };
  });
  const servings = recipe.servings ? Number((recipe.servings.count.value * factor).toFixed(2)) : null;
  const served = factor !== 1 && servings !== null ? servingsEdit(recipe, servings) : null;
  const isPlain = recipe.lines.every((l) => recipe.text.slice(l.span.start, l.span.end) === l.text);
  const after = new Map(lines.map((l) => [l.lineId, l.after]));
  const inPlace = isPlain ? applied(recipe.text, served ? [...edits, served] : edits) : null;
  // Where lines run into each other (dictation), new words may part them elsewhere: then the recipe is written out plainly.
  const holds = inPlace !== null && context.read(inPlace).lines.length === recipe.lines.length;
  const text = factor === 1 ? recipe.text : holds ? inPlace : plainRecipe(recipe, after, servings);
  return { factor, servings, text, lines, times: scaledTimes(recipe, factor, rules), findings };
}
