import { readFileSync } from 'node:fs';
import type { CookedParameters, CookedTables, FittedModel, FittedNutrient, PublishedRow, WeightYield } from '../../core/dish/index.ts';
import type { NutrientId } from '../../core/foods/index.ts';
import { compiledFile } from './folder.ts';

interface Compiled {
  published: { source: string; rows: PublishedRow[]; choice: [string, { variant: string; code: string }[]][] };
  fitted: Pick<FittedModel, 'source' | 'solids' | 'solidsSpread'> & { nutrients: [NutrientId, FittedNutrient][] };
  fittedPairs: [string, number][];
  yields: [string, WeightYield][];
  compositionSpread: [NutrientId, number][];
  parameters: CookedParameters;
}

/** Reads the compiled yields and losses from dist/tables/cooked.json. */
export function readCookedTables(): CookedTables {
  return cookedTables(JSON.parse(readFileSync(compiledFile('cooked.json'), 'utf8')) as Compiled);
}

export function cookedTables(compiled: Compiled): CookedTables {
  return {
    published: { source: compiled.published.source, rows: new Map(compiled.published.rows.map((row) => [row.code, row])), choice: new Map(compiled.published.choice) },
    fitted: { ...compiled.fitted, nutrients: new Map(compiled.fitted.nutrients), pairs: new Map(compiled.fittedPairs) },
    yields: new Map(compiled.yields),
    compositionSpread: new Map(compiled.compositionSpread),
    parameters: compiled.parameters,
  };
}
