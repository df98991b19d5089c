import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { DeskOptions } from '../../app/desk.ts';
import type { DishTables } from '../../app/dish-tables.ts';
import { buildFoodIndex, isFoodName } from '../../core/foods/index.ts';
import { readAnything } from '../exchange/index.ts';
import { readCookedTables } from './cooked.ts';
import { packageFolder } from './folder.ts';
import { readFoodTable } from './foods.ts';
import { readKitchenNames } from './kitchen-names.ts';
import { readReaderVocabulary } from './reader-words.ts';
import { readReferenceTables, readSources } from './reference.ts';
import { readWeighingRules } from './weighing.ts';

/** Loads everything that a dish is worked out with from dist/tables/; throws `not-built` when it is not there. */
export function readDishTables(): DishTables {
  const foods = readFoodTable();
  const index = buildFoodIndex(readKitchenNames(), foods);
  const vocabulary = readReaderVocabulary((phrase) => isFoodName(phrase, index));
  const reference = readReferenceTables();
  return {
    foods,
    index,
    units: vocabulary.units,
    vocabulary,
    weighing: readWeighingRules(),
    cooked: readCookedTables(),
    intakes: reference.intakes,
    energyFactors: reference.energyFactors,
    servings: reference.servings,
    cautions: reference.cautions,
    sources: new Map(readSources().map((source) => [source.id, source])),
    read: (text) => readAnything(text, vocabulary),
  };
}

/** The invented dishes of data/demo/. */
export function readDemoDishes(): DeskOptions['demos'] {
  const folder = join(packageFolder(), 'dist', 'tables', 'demo');
  return readdirSync(folder).filter((name) => name.endsWith('.txt')).sort().reverse().map((name) => {
    const text = readFileSync(join(folder, name), 'utf8');
    return { name: text.split('\n')[0]?.trim() ?? name, text };
  });
}
