import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { bench, describe } from 'vitest';
import { readIngredientLine, readRecipe } from '../src/core/dish/index.ts';
import { testVocabulary } from '../tests/reader-vocabulary.ts';

const lines = (parse(readFileSync(join(import.meta.dirname, '../tests/cases/reader/lines.yaml'), 'utf8')) as { line: string }[]).map(({ line }) => line);
const long = `Stew\n\nServes 4\n\nIngredients\n${Array.from({ length: 300 }, (_, n) => lines[n % lines.length]).join('\n')}\n\nMethod\n${Array.from({ length: 30 }, () => 'Heat the oil in a large pan and fry the onions for 10 minutes. Add the garlic, then stir in the tomatoes and simmer for 20 minutes until thick.').join('\n')}`;
const noise = Array.from({ length: 20_000 }, (_, n) => `${n % 7} ,(${'x'.repeat(n % 40)} 1/2 g ) and –`).join('\n').slice(0, 1_000_000);

describe('the reader', () => {
  bench(`${lines.length} ingredient lines`, () => {
    for (const line of lines) readIngredientLine(line, { start: 0, end: line.length }, testVocabulary);
  });
  bench('a recipe of 300 lines and 30 steps', () => void readRecipe(long, testVocabulary));
  bench('a megabyte of noise', () => void readRecipe(noise, testVocabulary), { iterations: 3, warmupIterations: 1 });
});
