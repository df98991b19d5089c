import type { LineRemark, PieceSize } from './recipe.ts';

/** A figure of data/parameters with its spread (half the range in which 8 in 10 would lie, as a share) and its source. */
export interface Figure {
  readonly value: number;
  readonly spread: number;
  readonly source: string;
  readonly locator: string;
}

/** Which foods a rule is for: patterns over the food's names and over the table's food group; both must fit where both stand. */
export interface FoodPattern {
  readonly name: string | null;
  readonly group: string | null;
}

export interface UsualPiece extends FoodPattern {
  readonly unit: string;
  /** Only where the line has this word ("a side of salmon"); then it goes before the kitchen's own piece. */
  readonly word: string | null;
  /** Grams of one; null where it is a share of a whole piece. */
  readonly grams: number | null;
  readonly shareOfPiece: number | null;
  readonly spread: number;
  readonly basis: 'gross' | 'net' | 'whole-tin';
  readonly source: string;
  readonly locator: string;
}

export interface UsualLength extends FoodPattern {
  readonly gramsACm: number;
  readonly spread: number;
  readonly basis: 'gross' | 'net';
  readonly source: string;
  readonly locator: string;
}

export interface UsualDensity extends FoodPattern, Figure {
  readonly fluid: boolean;
}

export interface UsualAmount extends FoodPattern {
  /** Only for lines with this remark; null for every line. */
  readonly remark: LineRemark | null;
  readonly gramsAServing: number;
  readonly spread: number;
  readonly source: string;
  readonly locator: string;
}

export interface FruitYield {
  readonly food: string;
  readonly juiceMl: Figure | null;
  readonly zestG: Figure | null;
}

export interface EatenFigure {
  readonly low: number;
  readonly value: number;
  readonly high: number;
  readonly source: string;
  readonly locator: string;
}

export interface TakenOut {
  readonly name: string;
  readonly units: readonly string[] | null;
  readonly unlessForm: string | null;
  readonly unlessWords: readonly string[];
}

export const eatenCodes = [
  'all', 'taken-out', 'deep-frying-oil', 'shallow-frying-oil', 'greasing', 'dusting', 'coating', 'marinade-poured-away', 'cooking-water',
  'cooking-water-salt', 'pickling-liquid', 'bones', 'left-out', 'optional-unmeasured', 'counted-before',
] as const;
export type EatenCode = (typeof eatenCodes)[number];

/** data/parameters/dish/eaten.yaml. */
export interface EatenRules {
  readonly shares: Readonly<Record<EatenCode, EatenFigure>>;
  readonly deepFryingFromGAServing: number;
  readonly alwaysTakenOut: readonly TakenOut[];
  readonly takingOut: readonly string[];
  readonly pouringAway: readonly string[];
  /** Pattern of what lies in a marinade and is eaten whole. */
  readonly marinated: string;
  readonly bones: string;
}

/** data/parameters/foods/weighing.yaml and juice-and-zest.yaml: how sure weights are and what stands in where no table has one. */
export interface WeighingRules {
  readonly spreads: Readonly<Record<'weighed' | 'measured' | 'household' | 'container' | 'refuse' | 'sizeUnsaid', Figure>>;
  /** Millilitres of the measures in the tables' household texts. */
  readonly tableMeasures: Readonly<Record<string, Figure>>;
  readonly fills: Readonly<Record<'scant' | 'level' | 'heaped', Figure>>;
  readonly softFills: Readonly<Record<'scant' | 'level' | 'heaped', Figure>>;
  readonly sizeFactors: Readonly<Record<PieceSize, Figure>>;
  readonly drainedShares: readonly (FoodPattern & Figure)[];
  readonly pieces: readonly UsualPiece[];
  readonly lengths: readonly UsualLength[];
  readonly densities: readonly UsualDensity[];
  readonly noAmount: readonly UsualAmount[];
  readonly servingsUnsaid: number;
  readonly mostAServing: readonly (FoodPattern & { readonly grams: number })[];
  readonly fruits: readonly FruitYield[];
  readonly fruitSizes: Readonly<Record<PieceSize, Figure>>;
  readonly eaten: EatenRules;
}

/** The names and the group that rules look at. */
export interface FoodNames {
  readonly names: readonly string[];
  readonly group: string;
}

const compiled = new Map<string, RegExp>();

function pattern(source: string): RegExp {
  const there = compiled.get(source);
  if (there) return there;
  const made = new RegExp(source, 'i');
  compiled.set(source, made);
  return made;
}

export function matchesText(source: string, text: string): boolean {
  return pattern(source).test(text);
}

/** Whether a rule is for this food. A rule without patterns is for every food. */
export function fits(rule: FoodPattern, food: FoodNames): boolean {
  if (rule.name !== null && !food.names.some((name) => matchesText(rule.name ?? '', name))) return false;
  return rule.group === null || matchesText(rule.group, food.group);
}
