import type { CookingMethod, IngredientLine } from './recipe.ts';

/**
 * What she put right on one line. It is tied to the line's own words, so it survives edits
 * elsewhere in the recipe and is dropped only when the line itself is rewritten. An absent
 * field leaves the reading as it was.
 */
export interface LineCorrection {
  readonly lineKey: string;
  /** A food code, or `none` for "no food of the tables". */
  readonly food?: string | undefined;
  /** Edible grams into the pot. */
  readonly grams?: number | undefined;
  /** Share eaten, 0 to 1. */
  readonly eaten?: number | undefined;
  readonly method?: CookingMethod | undefined;
  readonly minutes?: number | undefined;
}

/** The words of a line as its key; equal lines are told apart by their count from the top, and foods that share a line by their name. */
export function lineKeys(lines: readonly IngredientLine[]): ReadonlyMap<string, string> {
  const seen = new Map<string, number>();
  return new Map(
    lines.map((line) => {
      const words = `${line.text.toLowerCase().replace(/\s+/g, ' ').trim()} · ${line.food.name.toLowerCase()}`;
      const count = (seen.get(words) ?? 0) + 1;
      seen.set(words, count);
      return [line.id, count === 1 ? words : `${words} · ${count}`];
    }),
  );
}
