import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readFoodTable } from '../src/adapters/tables/foods.ts';
import { cookedFamilies, cookedGroup, cookedKingdom, type CookedFamily, type CookedKingdom } from '../src/core/dish/cooked-family.ts';
import type { CookedWay, FittedWay } from '../src/core/dish/cooked-way.ts';
import type { NutrientId } from '../src/core/foods/index.ts';
import { evaluate, fittedShare, type Coefficients, type FittedSpread } from '../src/core/dish/retention-model.ts';
import { cookedPairs } from './retention/pairs.ts';
import { bestCandidate, families, fitNutrient, fitRows, fitSolids, fitYields, fittedNutrients, heldOutResiduals, logPublished, median, quantile, relativeError, residual, seenYield, solidsResidual, spreads, usable, yieldTerms, type FitRow } from './retention/fit.ts';
import { compilePublished, publishedTable } from './tables/cooked.ts';

/**
 * Fits the factors of cooking to the raw and cooked pairs inside SR28 and writes
 * data/tables/retention-model.csv (the coefficients), retention-fitted.csv (the factors they
 * give, to be read by people) and yields.csv. No chance is drawn: the same tables give the same files.
 */
const data = join(import.meta.dirname, '..', 'data');
const header = '# Written by scripts/fit-retention.ts from the raw and cooked pairs inside SR28 (source id sr28-pairs). Seed: none, nothing is drawn.\n';
const set = cookedPairs(readFoodTable().foods, publishedTable(compilePublished(data)));
const rows = fitRows(set.pairs);
const calculatedRows = fitRows(set.calculated);
const parts = families(rows).map((family) => new Set<CookedFamily>([family]));
const number = (value: number): string => String(Number(value.toPrecision(6)));

const solids = fitSolids(rows);
const heldOutSolids = parts.map((part) => fitSolids(rows.filter((row) => !part.has(row.pair.family))));
const model: string[] = [];
const record = (nutrient: string, term: string, value: number): void => void model.push(`${nutrient},${term},${number(value)}`);
const recordCoefficients = (nutrient: string, coefficients: Coefficients): void => {
  for (const [term, value] of Object.entries(coefficients).sort(([a], [b]) => (a < b ? -1 : 1))) if (Math.abs(value) > 1e-6) record(nutrient, term, value);
};
const recordSpread = (nutrient: string, name: string, spread: Record<CookedKingdom, FittedSpread>): void => {
  for (const kingdom of ['animal', 'plant'] as const) {
    record(nutrient, `${name}-low:${kingdom}`, spread[kingdom].low);
    record(nutrient, `${name}-high:${kingdom}`, spread[kingdom].high);
  }
};
recordCoefficients('protein', solids);
recordSpread('protein', 'fitted', spreads(parts.flatMap((part, i) => rows.filter((row) => row.kingdom === 'animal' && part.has(row.pair.family)).map((row) => ({ kingdom: row.kingdom, residual: solidsResidual(row, heldOutSolids[i]!) })))));

const drainedPlant = (row: FitRow): boolean => row.kingdom === 'plant' && row.pair.way === 'boiled-drained';
// Dry matter that drained plants keep: what the published shares leave beside shares by dry matter.
const drainedPlants = rows.filter((row) => drainedPlant(row));
const leachable: readonly NutrientId[] = ['magnesium', 'potassium', 'phosphorus', 'zinc', 'copper', 'iron', 'calcium', 'thiamin', 'riboflavin', 'niacin', 'vitamin-b6'];
const solidsKept = Math.exp(-median(leachable.flatMap((nutrient) => usable(drainedPlants, nutrient).map((row) => residual(row, nutrient, {}, null)))));
console.log(`dry matter kept by drained plants: ${solidsKept.toFixed(3)} (data/parameters/dish/cooked.yaml: solids_kept_when_drained)`);

const roundedSolids = Math.round(100 * solidsKept) / 100;

const readable: string[] = [];
for (const nutrient of fittedNutrients) {
  const own = usable(rows, nutrient);
  const coefficients = fitNutrient(own, nutrient, solids);
  const held = heldOutResiduals(rows, nutrient, parts, { solids: heldOutSolids });
  const errors = { fitted: median(held.map((h) => relativeError(h.fitted))), published: median(held.map((h) => relativeError(h.published))) };
  recordCoefficients(nutrient, coefficients);
  recordSpread(nutrient, 'fitted', spreads(held.map((h) => ({ kingdom: h.row.kingdom, residual: h.fitted }))));
  recordSpread(nutrient, 'published', spreads(held.map((h) => ({ kingdom: h.row.kingdom, residual: h.published }))));
  record(nutrient, 'use-fitted', bestCandidate(held) === 'fitted' ? 1 : 0);
  record(nutrient, 'error-fitted', errors.fitted);
  record(nutrient, 'error-published', errors.published);
  record(nutrient, 'pairs', own.length);
  const groups = new Map<string, FitRow[]>();
  for (const row of own) groups.set(`${row.pair.family},${row.pair.way}`, [...(groups.get(`${row.pair.family},${row.pair.way}`) ?? []), row]);
  for (const [key, members] of [...groups].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const kept = members.map((row) => fittedShare(coefficients, row.modelCase, Math.exp(logPublished(row, nutrient))) * (drainedPlant(row) ? roundedSolids : 1));
    const published = members.map((row) => row.pair.published?.kept[nutrient]).filter((share) => share !== undefined);
    readable.push(`${key},${nutrient},${Math.round(100 * median(kept))},${published.length > 0 ? Math.round(100 * median(published)) : ''},${members.length}`);
  }
  console.log(`${nutrient}: ${own.length} pairs, median error on held-out families ${(100 * errors.fitted).toFixed(1)} % fitted, ${(100 * errors.published).toFixed(1)} % published`);
}

const yields: string[] = [];
const yieldModel = fitYields(rows);
const cases = new Map<string, FitRow[]>();
for (const row of rows) for (const key of new Set([`${cookedGroup(row.pair.family)} ${row.pair.way}`, `${row.pair.family} ${row.pair.way}`])) cases.set(key, [...(cases.get(key) ?? []), row]);
const ways: readonly (readonly [CookedWay, FittedWay])[] = [['boiled-drained', 'wet'], ['boiled-kept', 'wet'], ['braised-drained', 'braised'], ['steamed', 'steamed'], ['roasted', 'roasted'], ['grilled', 'grilled'], ['fried', 'fried'], ['stir-fried', 'fried']];
const fewest = 3;
const fewestCalculated = 2;
for (const family of cookedFamilies) {
  for (const [way, fitted] of ways) {
    const own = cases.get(`${family} ${way}`) ?? [];
    const group = cases.get(`${cookedGroup(family)} ${way}`) ?? [];
    const calculatedHere = calculatedRows.some((row) => row.pair.family === family && row.pair.way === way);
    if (own.length === 0 && group.length < fewest && !calculatedHere) continue;
    if (cookedGroup(family) === 'rest') continue;
    const byDryMatter = Math.exp(-evaluate(yieldModel, yieldTerms({ family, way: fitted, concentration: 0, fatShare: 0 })));
    const drained = cookedKingdom(family) === 'plant' && way === 'boiled-drained';
    const value = byDryMatter * (drained ? roundedSolids : 1);
    const around = (own.length >= fewest ? own : group.length >= fewest ? group : rows.filter((row) => row.kingdom === cookedKingdom(family))).map((row) => seenYield(row) - Math.log(byDryMatter)).sort((a, b) => a - b);
    const [low, high] = [Math.min(-0.04, quantile(around, 0.1)), Math.max(0.04, quantile(around, 0.9))];
    const round = (v: number): string => number(Math.round(1000 * v) / 1000);
    const analysed = `${round(value)},${round(value * Math.exp(low))},${round(value * Math.exp(high))},${own.length},sr28-pairs,"${cookedKingdom(family) === 'animal' ? 'protein' : drained ? 'dry matter, less what goes with the water,' : 'dry matter'} of the pairs, ${own.length > 0 ? `family ${family}` : `group ${cookedGroup(family)}`}"`;
    const theirs = calculatedRows.filter((row) => row.pair.family === family && row.pair.way === way).map((row) => Math.exp(seenYield(row)));
    const published = theirs.length < fewestCalculated ? null : { value: median(theirs), count: theirs.length };
    const theirLocator = published ? `yield that ${published.count} calculated entries of SR28 were worked out with` : '';
    if (published && own.length < fewest) yields.push(`${family},${way},${round(published.value)},${round(published.value * 0.92)},${round(published.value * 1.08)},${own.length},sr28,"${theirLocator}",${round(value)},sr28-pairs`);
    else yields.push(`${family},${way},${analysed},${published ? `${round(published.value)},sr28` : ','}`);
  }
}

writeFileSync(join(data, 'tables', 'retention-model.csv'), `${header}# Coefficients on the log scale; the terms are explained in docs/how-a-cooked-value-is-worked-out.md. error, low and high are of families held out of the fit.\nnutrient,term,value\n${model.join('\n')}\n`);
writeFileSync(join(data, 'tables', 'retention-fitted.csv'), `${header}# Percent of a nutrient kept, at the concentration that the pairs of the family show, beside the published percent for the same foods. To be read; the sums use retention-model.csv.\nfamily,way,nutrient,kept_percent,published_percent,pairs\n${readable.join('\n')}\n`);
writeFileSync(join(data, 'tables', 'yields.csv'), `${header}# Grams cooked from a gram raw, food without its cooking liquid, with the range of 8 in 10 pairs. Of flesh by its protein, of plants by their dry matter.\n# Rows of common practice for ways without pairs stand in yields-added.csv.\n# other: the yield of the other source, where there is one: SR28's own calculated entries (sr28) or the analysed pairs (sr28-pairs).\n# The analysed pairs are used from three pairs of the family on, else the yield that the United States table was worked out with.\nfamily,way,kept,low,high,pairs,source,locator,other_kept,other_source\n${yields.join('\n')}\n`);
console.log(`yields: ${yields.length} rows; pairs: ${rows.length}`);
