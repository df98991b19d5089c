import type { NutrientId } from '../../src/core/foods/index.ts';
import { cookedKingdom, type CookedFamily, type CookedKingdom } from '../../src/core/dish/cooked-family.ts';
import { fittedShare, logRise, retentionTerms, solidsTerms, type Coefficients, type FittedSpread, type ModelCase } from '../../src/core/dish/retention-model.ts';
import { ridge } from './ridge.ts';
import { amount, dryMatterRatio, fineEnough, halfPlace, type CookedPair } from './pairs.ts';

/** Nutrients that are fitted, in the order of the table. */
export const fittedNutrients: readonly NutrientId[] = [
  'magnesium', 'potassium', 'phosphorus', 'zinc', 'copper', 'manganese', 'iron', 'calcium', 'sodium', 'selenium',
  'thiamin', 'riboflavin', 'niacin', 'pantothenic-acid', 'vitamin-b6', 'folate', 'vitamin-b12', 'choline', 'vitamin-c', 'vitamin-e', 'vitamin-k', 'beta-carotene',
  'fat', 'carbohydrate', 'sugars', 'fibre',
];

export interface Hyper {
  /** Scale of all penalties. */
  readonly scale: number;
  readonly group: number;
  readonly family: number;
  readonly slope: number;
  readonly published: number;
  readonly robust: number;
}
export const hyper: Hyper = { scale: 1.5, group: 8, family: 1, slope: 1, published: 0.1, robust: 0.05 };

const penalties = (h: Hyper) => (term: string): number => {
  const kind = term.split(':')[0]!;
  const factor: Record<string, number> = { 'group': h.group, 'group-way': h.group, family: h.family, 'family-way': h.family, slope: h.slope, 'slope-way': h.slope, published: h.published };
  return h.scale * (factor[kind] ?? 1);
};

export interface FitRow {
  readonly pair: CookedPair;
  readonly modelCase: ModelCase;
  readonly kingdom: CookedKingdom;
}

export function fitRows(pairs: readonly CookedPair[]): FitRow[] {
  return pairs.map((pair) => ({ pair, modelCase: modelCase(pair, Math.log(dryMatterRatio(pair))), kingdom: cookedKingdom(pair.family) }));
}

export function modelCase(pair: CookedPair, concentration: number): ModelCase {
  const dry = 100 - amount(pair.raw, 'water')!;
  return { family: pair.family, way: pair.fitted, concentration, fatShare: Math.min(1, (amount(pair.raw, 'fat') ?? 0) / dry) };
}

const protein = (row: FitRow): number => Math.log(amount(row.pair.cooked, 'protein')! / amount(row.pair.raw, 'protein')!);

/** Flesh only: in plants dry matter itself is the anchor. */
export function fitSolids(all: readonly FitRow[], h: Hyper = hyper): Coefficients {
  const rows = all.filter((row) => row.kingdom === 'animal');
  return ridge({
    rows: rows.map((row) => solidsTerms(row.modelCase)),
    targets: rows.map((row) => protein(row) - row.modelCase.concentration),
    weights: rows.map(() => 1),
    penalty: penalties({ ...h, published: 1 }),
    robust: h.robust,
  });
}

export function logPublished(row: FitRow, nutrient: NutrientId): number {
  return Math.log(Math.max(0.05, row.pair.published?.kept[nutrient] ?? 1));
}

const logRatio = (row: FitRow, nutrient: NutrientId): number => Math.log(amount(row.pair.cooked, nutrient)! / amount(row.pair.raw, nutrient)!);

/** Rows that say something about a nutrient. */
export function usable(rows: readonly FitRow[], nutrient: NutrientId, coarsestTaken?: number): FitRow[] {
  return rows.filter((row) => fineEnough(row.pair, nutrient, coarsestTaken));
}

export function fitNutrient(rows: readonly FitRow[], nutrient: NutrientId, solids: Coefficients, h: Hyper = hyper): Coefficients {
  const published = rows.map((row) => logPublished(row, nutrient));
  const half = halfPlace(nutrient);
  return ridge({
    rows: rows.map((row, i) => [...retentionTerms(row.modelCase), ['published', published[i]!], [`published:${row.kingdom}`, published[i]!]]),
    targets: rows.map((row, i) => logRatio(row, nutrient) - logRise(solids, row.modelCase, nutrient) - published[i]!),
    // A coarse print adds its own noise: its square beside a usual scatter of 6 %.
    weights: rows.map((row) => 1 / (1 + (half / Math.min(amount(row.pair.raw, nutrient)!, amount(row.pair.cooked, nutrient)!) / 0.06) ** 2)),
    penalty: penalties(h),
    robust: h.robust,
  });
}

/** Predicted log of cooked over raw, per 100 g each. */
export function predict(row: FitRow, nutrient: NutrientId, solids: Coefficients, coefficients: Coefficients | null): number {
  const published = logPublished(row, nutrient);
  return logRise(solids, row.modelCase, nutrient) + (coefficients ? Math.log(fittedShare(coefficients, row.modelCase, Math.exp(published))) : published);
}

/** Analysed log ratio minus the predicted one. */
export function residual(row: FitRow, nutrient: NutrientId, solids: Coefficients, coefficients: Coefficients | null): number {
  return logRatio(row, nutrient) - predict(row, nutrient, solids, coefficients);
}

export function families(rows: readonly FitRow[]): CookedFamily[] {
  return [...new Set(rows.map((row) => row.pair.family))].sort();
}

/** The families dealt into folds so that each fold has about as many pairs; the largest first, no chance in it. */
export function folds(rows: readonly FitRow[], count: number): Set<CookedFamily>[] {
  const sizes = families(rows).map((family) => ({ family, size: rows.filter((row) => row.pair.family === family).length })).sort((a, b) => b.size - a.size || (a.family < b.family ? -1 : 1));
  const out = Array.from({ length: count }, () => ({ families: new Set<CookedFamily>(), size: 0 }));
  for (const { family, size } of sizes) {
    const smallest = out.reduce((a, b) => (b.size < a.size ? b : a));
    smallest.families.add(family);
    smallest.size += size;
  }
  return out.filter((fold) => fold.families.size > 0).map((fold) => fold.families);
}

export function quantile(sorted: readonly number[], q: number): number {
  if (sorted.length === 0) return NaN;
  const at = q * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.ceil(at);
  return sorted[low]! + (sorted[high]! - sorted[low]!) * (at - low);
}

export const median = (values: readonly number[]): number => quantile([...values].sort((a, b) => a - b), 0.5);

export interface HeldOut {
  readonly row: FitRow;
  readonly fitted: number;
  /** Published factor, weight by our yields. */
  readonly published: number;
  /** Published factor, weight by dry matter also in flesh. */
  readonly publishedByDryMatter: number;
}

export type Candidate = 'fitted' | 'published' | 'publishedByDryMatter';

/** What is not the default must beat it by about the standard error of a median over so many pairs. */
const margin = (pairs: number): number => 1 - 0.6 / Math.sqrt(Math.max(1, pairs));

/** Whichever comes nearest on families that were held out; the published factor unless another is nearer by a margin. */
export function bestCandidate(held: readonly HeldOut[]): Candidate {
  const of = (candidate: Candidate): number => median(held.map((h) => relativeError(h[candidate])));
  const better = (one: Candidate, than: Candidate): Candidate => (of(one) <= margin(held.length) * of(than) ? one : than);
  return better('fitted', better('publishedByDryMatter', 'published'));
}

/** Residuals of every row when its fold of families is left out of the fit. */
export function heldOutResiduals(rows: readonly FitRow[], nutrient: NutrientId, parts: readonly Set<CookedFamily>[], options: { h?: Hyper; solids: readonly Coefficients[] }): HeldOut[] {
  const own = usable(rows, nutrient);
  return parts.flatMap((part, i) => {
    const test = own.filter((row) => part.has(row.pair.family));
    if (test.length === 0) return [];
    const solids = options.solids[i]!;
    const coefficients = fitNutrient(own.filter((row) => !part.has(row.pair.family)), nutrient, solids, options.h);
    return test.map((row) => ({ row, fitted: residual(row, nutrient, solids, coefficients), published: residual(row, nutrient, solids, null), publishedByDryMatter: logRatio(row, nutrient) - row.modelCase.concentration - logPublished(row, nutrient) }));
  });
}

export const relativeError = (logResidual: number): number => Math.abs(Math.exp(-logResidual) - 1);

/** 10th and 90th percentile by kingdom, drawn to the pooled ones where a kingdom has few pairs. */
export function spreads(values: readonly { kingdom: CookedKingdom; residual: number }[]): Record<CookedKingdom, FittedSpread> {
  const pooled = values.map((v) => v.residual).sort((a, b) => a - b);
  const one = (kingdom: CookedKingdom): FittedSpread => {
    const own = values.filter((v) => v.kingdom === kingdom).map((v) => v.residual).sort((a, b) => a - b);
    const share = own.length / (own.length + 20);
    const mix = (q: number): number => (own.length === 0 ? quantile(pooled, q) : share * quantile(own, q) + (1 - share) * quantile(pooled, q));
    return { low: Math.min(0, mix(0.1)), high: Math.max(0, mix(0.9)) };
  };
  return { animal: one('animal'), plant: one('plant') };
}

/** Minus the log of the usual weight yield, by family and way. */
export function fitYields(rows: readonly FitRow[], h: Hyper = hyper): Coefficients {
  return ridge({
    rows: rows.map((row) => yieldTerms(row.modelCase)),
    targets: rows.map((row) => -seenYield(row)),
    weights: rows.map(() => 1),
    penalty: penalties({ ...h, scale: 1 }),
    robust: h.robust,
  });
}

export function yieldTerms(c: ModelCase): ReturnType<typeof retentionTerms> {
  return retentionTerms(c).filter(([term]) => !term.startsWith('slope'));
}

/** Log of the weight yield seen in a pair: of plants by dry matter; of flesh by protein, and no more dry matter out than in. */
export function seenYield(row: FitRow): number {
  return -(row.kingdom === 'plant' ? row.modelCase.concentration : Math.max(protein(row), row.modelCase.concentration));
}

/** Log of protein cooked over raw minus what the solids model makes of the concentration. */
export function solidsResidual(row: FitRow, solids: Coefficients): number {
  return protein(row) - logRise(solids, row.modelCase, null);
}
