import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { spawnSync } from 'node:child_process';
import { bench, describe } from 'vitest';
import { readDishTables } from '../src/adapters/tables/index.ts';
import { reportDish } from '../src/app/report-dish.ts';
import { usualChoices } from '../src/app/dish-choices.ts';
import { workOutDish } from '../src/app/work-out-dish.ts';

const root = join(import.meta.dirname, '..');
const tables = readDishTables();
const demo = readFileSync(join(root, 'data/demo/white-bean-and-chard-stew.txt'), 'utf8');
const lines = demo.split('\n').filter((line) => /^\d|^A /.test(line) && !/^\d+\. /.test(line));
const long = `Long list\nServes 40\n\n${Array.from({ length: 300 }, (_, i) => lines[i % lines.length]).join('\n')}`;

describe('a recipe from text to portion', () => {
  bench('the demo stew, about 20 lines and its method', () => {
    reportDish(workOutDish(demo, usualChoices, tables), tables);
  }, { warmupIterations: 60, time: 1000 });
  bench('300 lines', () => {
    reportDish(workOutDish(long, usualChoices, tables), tables);
  });
});

describe('the command from a cold start', () => {
  bench('truepot dish, a process of its own', () => {
    spawnSync(process.execPath, [join(root, 'dist/cli.js'), 'dish', join(root, 'data/demo/white-bean-and-chard-stew.txt')]);
  }, { iterations: 8, warmupIterations: 1, time: 1 });
});
