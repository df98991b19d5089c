import { askedFood, fodmapKinds, graver, isGraver, together, type AllergenReader, type AllergenReason, type Food, type FoodMatch, type SubstanceId, type SubstanceState, type SubstanceStates } from '../foods/index.ts';
import type { IngredientLine, Recipe } from './recipe.ts';

/** A line with the food it was matched to. */
export interface LineFood {
  readonly line: IngredientLine;
  readonly match: FoodMatch;
  readonly food: Food | null;
}

export interface LineAllergens {
  readonly lineId: string;
  readonly states: SubstanceStates;
  /** Kinds of FODMAP that the food's words speak of. */
  readonly fodmap: readonly string[];
}

export interface DishAllergens {
  readonly lines: readonly LineAllergens[];
  /** Of the whole dish: for each substance the gravest state of its lines, its method and its unread text. */
  readonly states: SubstanceStates;
}

/** Findings of the reader that mean: there may be food here that no line holds. */
const notRead = new Set(['left-out', 'other-alphabet', 'text-cut', 'too-many-lines', 'line-too-long', 'bad-json-ld', 'several-recipes']);

/** What one line holds. What it says of another food ("or walnuts") may be in as well. */
export function lineAllergens(at: LineFood, reader: AllergenReader): LineAllergens {
  const { line, match, food } = at;
  const own = reader.states(askedFood(match, food, { id: line.id, name: line.food.name, text: line.text }));
  const states = new Map(own);
  for (const other of line.instead) {
    for (const { substance, word } of reader.words.find(other.food.name, [])) {
      const reason: AllergenReason = { code: 'instead', of: word, why: null, lineId: line.id };
      states.set(substance, graver(states.get(substance) ?? { state: 'unknown', reasons: [] }, { state: 'may', reasons: [reason] }));
    }
  }
  const names = [line.food.name, ...(match.entry ? [match.entry.name] : [])];
  return { lineId: line.id, states, fodmap: fodmapKinds(reader.tables, names) };
}

function methodStates(recipe: Recipe, soFar: SubstanceStates, reader: AllergenReader): ReadonlyMap<SubstanceId, SubstanceState> {
  const text = recipe.steps.map((step) => step.text).join('\n');
  return new Map(reader.words.find(text, []).flatMap(({ substance, word }) => {
    const now = soFar.get(substance)?.state ?? 'unknown';
    return isGraver('may', now) ? [[substance, { state: 'may', reasons: [{ code: 'method', of: word, why: null, lineId: null }] }] as const] : [];
  }));
}

/**
 * What a dish holds of every substance. A line counts whether or not it is eaten (frying oil,
 * marinade, bay leaf touch the food), optional lines too. A food that only the method names may
 * be in; text that was not read, and a dish without lines, leave everything unknown.
 */
export function dishAllergens(foods: readonly LineFood[], recipe: Recipe, reader: AllergenReader): DishAllergens {
  const lines = foods.map((at) => lineAllergens(at, reader));
  const whole = new Map(together(reader.ids, lines.map((l) => l.states)));
  for (const [id, state] of methodStates(recipe, whole, reader)) whole.set(id, graver(whole.get(id) ?? state, state));
  const unread = recipe.findings.filter((f) => notRead.has(f.code));
  if (unread.length > 0 || lines.length === 0) {
    const unknown: SubstanceState = { state: 'unknown', reasons: [{ code: 'not-read', of: String(unread[0]?.data['text'] ?? ''), why: null, lineId: null }] };
    for (const id of reader.ids) whole.set(id, graver(whole.get(id) ?? unknown, unknown));
  }
  return { lines, states: whole };
}
