import type { NutrientId } from '../../src/core/foods/index.ts';
import { cookedGroup, type CookedFamily } from '../../src/core/dish/cooked-family.ts';
import { evaluate, logRise, type Coefficients } from '../../src/core/dish/retention-model.ts';
import { amount } from './pairs.ts';
import { bestCandidate, families, fitNutrient, fitSolids, fitYields, folds, heldOutResiduals, logPublished, predict, spreads, usable, yieldTerms, type Candidate, type FitRow } from './fit.ts';

/** One cooked value that the fit has not seen, with every way of predicting it, per 100 g cooked. */
export interface HeldOutValue {
  readonly row: FitRow;
  readonly nutrient: NutrientId;
  readonly analysed: number;
  readonly rawByDryMatter: number;
  /** Published factor, weight by dry matter. */
  readonly published: number;
  /** Published factor, weight by our yields. */
  readonly publishedWithYields: number;
  readonly ours: number;
  readonly low: number;
  readonly high: number;
  readonly used: Candidate;
  /** Ours when neither the cooked weight nor the cooked water is known. */
  readonly oursWithoutWeight: number;
}

export interface HeldOutOptions {
  /** How coarse a printed value may be and still be tested; the fits keep to the usual bound. */
  readonly coarsestTested?: number;
  /** What is held out together; left out: families dealt into parts. */
  readonly parts?: readonly Set<CookedFamily>[];
}

/** Whole groups of families: all meat, all vegetables. */
export function groupsOfFamilies(rows: readonly FitRow[]): Set<CookedFamily>[] {
  const groups = new Map<string, Set<CookedFamily>>();
  for (const family of families(rows)) groups.set(cookedGroup(family), new Set([...(groups.get(cookedGroup(family)) ?? []), family]));
  return [...groups.values()];
}

const outerFolds = 12;
const innerFolds = 6;

/** The concentration that the usual yield of the way of cooking would give. */
function guessedConcentration(row: FitRow, solids: Coefficients, yields: Coefficients): number {
  const rise = evaluate(yields, yieldTerms(row.modelCase));
  const at = (concentration: number): number => logRise(solids, { ...row.modelCase, concentration }, null);
  const slope = at(0.5) - at(-0.5) || 1;
  return (rise - at(0)) / slope;
}

/**
 * Predicts every pair from fits that never saw its family. Within the families that are fitted a
 * second split decides between fitted and published factor and gives the range; the families
 * that are tested take no part in either.
 */
export function heldOutValues(rows: readonly FitRow[], nutrients: readonly NutrientId[], options: HeldOutOptions = {}): HeldOutValue[] {
  return (options.parts ?? folds(rows, outerFolds)).flatMap((part) => {
    const train = rows.filter((row) => !part.has(row.pair.family));
    const test = rows.filter((row) => part.has(row.pair.family));
    const solids = fitSolids(train);
    const yields = fitYields(train);
    const inner = folds(train, innerFolds);
    const innerSolids = inner.map((own) => fitSolids(train.filter((row) => !own.has(row.pair.family))));
    return nutrients.flatMap((nutrient) => {
      const own = usable(test, nutrient, options.coarsestTested);
      if (own.length === 0) return [];
      const held = heldOutResiduals(train, nutrient, inner, { solids: innerSolids });
      const used = bestCandidate(held);
      const range = spreads(held.map((h) => ({ kingdom: h.row.kingdom, residual: h[used] })));
      const coefficients = used === 'fitted' ? fitNutrient(usable(train, nutrient), nutrient, solids) : null;
      return own.map((row): HeldOutValue => {
        const raw = amount(row.pair.raw, nutrient)!;
        const dry = Math.exp(row.modelCase.concentration);
        const published = Math.exp(logPublished(row, nutrient));
        const byDryMatter = used === 'publishedByDryMatter';
        const ours = byDryMatter ? raw * dry * published : raw * Math.exp(predict(row, nutrient, solids, coefficients));
        const guessed = { ...row, modelCase: { ...row.modelCase, concentration: guessedConcentration(row, solids, yields) } };
        const { low, high } = range[row.kingdom];
        return {
          row, nutrient, analysed: amount(row.pair.cooked, nutrient)!, rawByDryMatter: raw * dry, published: raw * dry * published,
          publishedWithYields: raw * Math.exp(logRise(solids, row.modelCase, nutrient)) * published,
          ours, low: ours * Math.exp(low), high: ours * Math.exp(high), used,
          oursWithoutWeight: raw * (byDryMatter ? Math.exp(guessed.modelCase.concentration) * published : Math.exp(predict(guessed, nutrient, solids, coefficients))),
        };
      });
    });
  });
}
