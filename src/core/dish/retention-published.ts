import { isKnown, type Food, type NutrientId } from '../foods/index.ts';
import { cookedFamily, type CookedFamily } from './cooked-family.ts';
import type { CookedWay } from './cooked-way.ts';

/** One row of the published table: shares kept (0 to 1) by nutrient; a nutrient without a figure is absent. */
export interface PublishedRow {
  readonly code: string;
  readonly description: string;
  readonly kept: Readonly<Partial<Record<NutrientId, number>>>;
}

export interface PublishedTable {
  /** Source id of data/sources. */
  readonly source: string;
  readonly rows: ReadonlyMap<string, PublishedRow>;
  /** Key `family way`: the codes that serve it, variants first. */
  readonly choice: ReadonlyMap<string, readonly { readonly variant: string; readonly code: string }[]>;
}

const longCooking = /chickpea|garbanzo|soy|kidney|rajma|bengal gram, whole|white, mature|great northern|navy|pinto|lupin|horse gram/;
const shortCooking = /lentil|split|dal\b|mung|gram, dal/;

const variants: Record<string, (food: Pick<Food, 'name' | 'value'>, name: string) => boolean> = {
  '': () => true,
  ground: (_food, name) => /\bground\b|minced?\b/.test(name),
  cured: (_food, name) => /cured|bacon|\bham\b(?!\))/.test(name) && !/fresh/.test(name),
  fatty: (food) => {
    const fat = food.value('fat');
    return isKnown(fat) && fat.per100g > 5;
  },
  liver: (_food, name) => /\bliver\b/.test(name),
  frozen: (_food, name) => /\bfrozen\b/.test(name),
  milk: (_food, name) => /\bmilk\b|cream/.test(name),
  tomato: (_food, name) => /tomato/.test(name),
  citrus: (_food, name) => /orange|lemon|lime|grapefruit|tangerine|mandarin|pummelo/.test(name),
  quick: (_food, name) => shortCooking.test(name),
  slow: (_food, name) => longCooking.test(name),
};

/** The published row for a food cooked that way; null where the table has none for its family. */
export function publishedRow(table: PublishedTable, food: Pick<Food, 'name' | 'group' | 'value'>, way: CookedWay, family: CookedFamily = cookedFamily(food)): PublishedRow | null {
  const name = food.name.toLowerCase();
  const chosen = table.choice.get(`${family} ${way}`)?.find(({ variant }) => variants[variant]?.(food, name) ?? false);
  return (chosen && table.rows.get(chosen.code)) ?? null;
}

export const publishedVariants: readonly string[] = Object.keys(variants);
