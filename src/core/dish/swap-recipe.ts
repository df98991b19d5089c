import { plainText, singular } from '../foods/index.ts';
import { plural } from './scale-words.ts';
import type { IngredientLine, Recipe } from './recipe.ts';

/** A line with other words in its place, and what the method shall call the food from now on. */
export interface LineSwap {
  readonly line: IngredientLine;
  readonly text: string;
  readonly name: string;
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Ways in which the method may speak of the food, longest first: its name, then its last word where no other line has it. */
function mentions(line: IngredientLine, recipe: Recipe): string[] {
  const name = line.food.name.toLowerCase();
  const last = /[\p{L}]+$/u.exec(name)?.[0] ?? name;
  const lastSingle = singular(plainText(last));
  const shared = recipe.lines.some((other) => other.id !== line.id && plainText(other.food.name).split(/\s+/).map(singular).includes(lastSingle));
  const words = [name, ...(shared || last.length < 3 ? [] : [last])];
  return [...new Set(words.flatMap((w) => [w, plural(singular(w)), singular(w)]))].sort((a, b) => b.length - a.length);
}

/** "carrots" becomes "parsnips", "Kale" becomes "Chard". */
function likeMention(mention: string, swap: LineSwap): string {
  const last = /[\p{L}]+$/u.exec(mention)?.[0].toLowerCase() ?? '';
  const many = singular(last) !== last;
  const head = /[\p{L}]+$/u.exec(swap.name)?.[0] ?? '';
  const countable = swap.line.amount !== null && (swap.line.amount.unit === null || swap.line.amount.unit === 'piece');
  const name = many && countable && singular(head) === head ? swap.name.slice(0, swap.name.length - head.length) + plural(head) : swap.name;
  return /^\p{Lu}/u.test(mention) ? name.charAt(0).toUpperCase() + name.slice(1) : name;
}

/** The recipe's text with lines swapped, the method speaking of the new foods, so that each goes on being cooked as the old one was. */
export function swapInRecipe(recipe: Recipe, swaps: readonly LineSwap[]): string {
  const edits: { start: number; end: number; text: string }[] = swaps.map((s) => ({ ...s.line.span, text: s.text }));
  for (const step of recipe.steps) {
    const taken: { start: number; end: number }[] = [];
    for (const swap of swaps) {
      for (const mention of mentions(swap.line, recipe)) {
        for (const found of recipe.text.slice(step.span.start, step.span.end).matchAll(new RegExp(`(?<![\\p{L}])${escaped(mention)}(?![\\p{L}])`, 'giu'))) {
          const start = step.span.start + found.index;
          const end = start + found[0].length;
          if (taken.some((t) => t.start < end && start < t.end)) continue;
          taken.push({ start, end });
          edits.push({ start, end, text: likeMention(found[0], swap) });
        }
      }
    }
  }
  return edits.sort((a, b) => b.start - a.start).reduce((text, e) => text.slice(0, e.start) + e.text + text.slice(e.end), recipe.text);
}
