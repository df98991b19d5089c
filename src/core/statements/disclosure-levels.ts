import type { NutrientId } from '../foods/index.ts';
import type { Interval } from '../quantity/index.ts';
import type { Basis } from './condition.ts';
import { smallRaccG } from './judge-condition.ts';
import type { Checked } from './law.ts';
import { onBasis } from './on-basis.ts';
import type { Plate } from './plate.ts';

/** Levels of one kind of food, a row of data/parameters/statements/disclosure-levels.yaml. */
export interface DisclosureLevels {
  readonly kind: Plate['usKind'];
  /** The clause that asks for the words beside a nutrient content claim. */
  readonly disclosure: string;
  /** The clause by which the same levels rule out a health claim. */
  readonly disqualifies: string;
  readonly source: string;
  readonly checked: Checked;
  /** Amounts of food that count: above the level in any of them is above it. */
  readonly per: readonly Basis[];
  /** Counts too where the reference amount is a small one. */
  readonly small?: Basis;
  /** In the nutrient's unit. */
  readonly above: Readonly<Partial<Record<NutrientId, number>>>;
}

/**
 * How a nutrient stands to its level. `likely`: above on the best estimate; `perhaps`: only the upper
 * end of the range is above; `unknown`: values are missing, which never counts as below.
 */
export type LevelStanding = 'over' | 'likely' | 'perhaps' | 'unknown' | 'under';

export interface LevelFinding {
  readonly nutrient: NutrientId;
  readonly standing: LevelStanding;
  readonly per: Basis;
  readonly limit: number;
  readonly found: Interval | null;
}

const order: readonly LevelStanding[] = ['over', 'likely', 'perhaps', 'unknown', 'under'];

function against(plate: Plate, nutrient: NutrientId, at: { readonly limit: number; readonly per: Basis }): LevelFinding {
  const amount = onBasis(plate, [nutrient], at.per);
  const above = (x: number): boolean => x > at.limit * (1 + 1e-9);
  const standing: LevelStanding = amount === null ? 'unknown' : above(amount.range.low) ? 'over' : above(amount.range.value) ? 'likely' : amount.atLeast ? 'unknown' : above(amount.range.high) ? 'perhaps' : 'under';
  return { nutrient, standing, ...at, found: amount?.range ?? null };
}

/** The levels that this kind of food has; null when the tables hold none. */
export function levelsFor(levels: readonly DisclosureLevels[], plate: Plate): DisclosureLevels | null {
  return levels.find((row) => row.kind === plate.usKind) ?? null;
}

/** Each nutrient of a row held against the dish, on the amount of food in which it stands worst. */
export function levelFindings(row: DisclosureLevels, plate: Plate): LevelFinding[] {
  const bases = [...row.per, ...(row.small !== undefined && plate.raccG <= smallRaccG ? [row.small] : [])];
  const nutrients = Object.keys(row.above) as NutrientId[];
  return nutrients.flatMap((nutrient) => {
    const limit = row.above[nutrient];
    if (limit === undefined) return [];
    const each = bases.map((per) => against(plate, nutrient, { limit, per }));
    const worst = order.map((standing) => each.find((f) => f.standing === standing)).find((f) => f !== undefined);
    return worst ? [worst] : [];
  });
}
