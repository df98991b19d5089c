import { bench, describe } from 'vitest';
import { readFoodTable, readKitchenNames } from '../src/adapters/tables/index.ts';
import { buildFoodIndex, searchFoods } from '../src/core/foods/index.ts';
import { searchQueries } from './search-queries.ts';

const table = readFoodTable();
const kitchen = readKitchenNames();
const index = buildFoodIndex(kitchen, table);
index.search();

describe('the food picker', () => {
  let next = 0;
  // One query an iteration, in turn, so that the percentiles are over queries (aim: p95 at most 5 ms).
  bench('one query of the table', () => {
    searchFoods(searchQueries[next++ % searchQueries.length] ?? '', index, 12);
  }, { iterations: searchQueries.length * 4, warmupIterations: searchQueries.length });

  // Aim: at most 150 ms.
  bench('making the whole index', () => {
    buildFoodIndex(kitchen, table).search();
  }, { iterations: 10, warmupIterations: 2 });
});
