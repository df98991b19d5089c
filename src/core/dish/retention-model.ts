import type { NutrientId } from '../foods/index.ts';
import { cookedGroup, cookedKingdom, type CookedFamily, type CookedKingdom } from './cooked-family.ts';
import type { FittedWay } from './cooked-way.ts';

/** What the fitted model looks at in one food cooked one way. */
export interface ModelCase {
  readonly family: CookedFamily;
  readonly way: FittedWay;
  /** Natural log of dry matter in 100 g cooked over dry matter in 100 g raw. */
  readonly concentration: number;
  /** Fat as a share of the raw food's dry matter, 0 to 1. */
  readonly fatShare: number;
}

/** Coefficients of one nutrient by term; a term that is absent counts 0. */
export type Coefficients = Readonly<Record<string, number>>;

/** Residuals in logs, 10th and 90th percentile over foods of families that were held out. */
export interface FittedSpread {
  readonly low: number;
  readonly high: number;
}

export interface FittedNutrient {
  readonly coefficients: Coefficients;
  readonly spread: Readonly<Record<CookedKingdom, FittedSpread>>;
  /** The same for the published factor. */
  readonly publishedSpread: Readonly<Record<CookedKingdom, FittedSpread>>;
  /** Median absolute relative error on held-out families, fitted and published. */
  readonly error: { readonly fitted: number; readonly published: number };
  /** Which of the two did better on held-out families. */
  readonly use: 'fitted' | 'published';
  /** How many pairs stand behind it. */
  readonly pairs: number;
}

export interface FittedModel {
  readonly source: string;
  /** In flesh, how protein per 100 g moves with dry matter: the anchor that turns concentrations into shares kept. */
  readonly solids: Coefficients;
  readonly solidsSpread: Readonly<Record<CookedKingdom, FittedSpread>>;
  readonly nutrients: ReadonlyMap<NutrientId, FittedNutrient>;
  /** Pairs by `family way`, counted for magnesium. */
  readonly pairs: ReadonlyMap<string, number>;
}

export type Terms = readonly (readonly [term: string, value: number])[];

const widest = 2;
const within = (value: number): number => Math.min(widest, Math.max(-widest, value));

/** The hierarchy: everything, kingdom, group, way, group and way, family, family and way, and slopes on concentration. */
export function retentionTerms(c: ModelCase): Terms {
  const group = cookedGroup(c.family);
  const kingdom = cookedKingdom(c.family);
  const slope = within(c.concentration);
  return [
    ['all', 1], [`kingdom:${kingdom}`, 1], [`group:${group}`, 1], [`way:${c.way}`, 1], [`kingdom-way:${kingdom}:${c.way}`, 1], [`group-way:${group}:${c.way}`, 1],
    [`family:${c.family}`, 1], [`family-way:${c.family}:${c.way}`, 1],
    ['slope', slope], [`slope:${kingdom}`, slope], [`slope-way:${kingdom}:${c.way}`, slope],
  ];
}

/** The same for the solids, with the raw food's fat. */
export function solidsTerms(c: ModelCase): Terms {
  const kingdom = cookedKingdom(c.family);
  return [...retentionTerms(c), ['fat', c.fatShare], [`fat:${kingdom}`, c.fatShare], [`fat-way:${kingdom}:${c.way}`, c.fatShare]];
}

export function evaluate(coefficients: Coefficients, terms: Terms): number {
  return terms.reduce((sum, [term, value]) => sum + (coefficients[term] ?? 0) * value, 0);
}

/**
 * Log of the share kept of a nutrient: 0 where nothing but water moved. `published` is the log of the published share, the centre that the fit is drawn to.
 */
export function logKept(coefficients: Coefficients, c: ModelCase, published: number): number {
  const kingdom = cookedKingdom(c.family);
  return published * (1 + (coefficients['published'] ?? 0) + (coefficients[`published:${kingdom}`] ?? 0)) + evaluate(coefficients, retentionTerms(c));
}

/** The share kept, never above 1: cooking makes no nutrient. */
export function fittedShare(coefficients: Coefficients, c: ModelCase, published: number): number {
  return Math.min(1, Math.exp(logKept(coefficients, c, Math.log(Math.max(leastShare, published)))));
}
const leastShare = 0.05;

/** Nutrients that go with the fat, which is part of the dry matter, rather than with the protein. */
const withTheFat = new Set<NutrientId>(['fat', 'vitamin-e', 'vitamin-k', 'vitamin-d', 'retinol', 'beta-carotene']);

/**
 * Log of how much a nutrient that is kept whole rises per 100 g. In plants that is the rise in
 * dry matter. In flesh fat drips away, so what is not fat rises as protein does: `solids` says
 * how protein rises with dry matter.
 */
export function logRise(solids: Coefficients, c: ModelCase, nutrient: NutrientId | null): number {
  const byDryMatter = cookedKingdom(c.family) === 'plant' || (nutrient !== null && withTheFat.has(nutrient));
  return c.concentration + (byDryMatter ? 0 : evaluate(solids, solidsTerms(c)));
}
