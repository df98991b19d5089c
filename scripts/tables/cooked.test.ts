import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { compileCooked } from './cooked.ts';

const real = join(import.meta.dirname, '..', '..', 'data');
let data: string;
beforeEach(() => {
  data = mkdtempSync(join(tmpdir(), 'cooked-'));
  for (const folder of ['tables', 'parameters', 'sources']) cpSync(join(real, folder), join(data, folder), { recursive: true });
});
afterEach(() => rmSync(data, { recursive: true }));

const change = (file: string, from: string | RegExp, to: string): void => {
  const text = readFileSync(join(data, file), 'utf8');
  const changed = text.replace(from, to);
  expect(changed).not.toBe(text);
  writeFileSync(join(data, file), changed);
};

describe('compiling the tables of cooking', () => {
  it('takes the tables as they stand: every fitted nutrient has both errors and a choice', () => {
    const { fitted, yields, compositionSpread } = compileCooked(data);
    expect(fitted.nutrients.length).toBeGreaterThan(20);
    for (const [nutrient, model] of fitted.nutrients) expect(Number.isFinite(model.error.fitted) && Number.isFinite(model.error.published) && model.pairs > 0, nutrient).toBe(true);
    expect(yields.length).toBeGreaterThan(100);
    expect(compositionSpread.every(([, spread]) => spread > 0 && spread < 1)).toBe(true);
  });
  it.each([
    ['a published share that is no percentage', 'tables/retention-published.csv', /^3005,(.*?),95/m, '3005,$1,9500', /3005 calcium 9500/],
    ['a row that is not in the published table', 'tables/retention-rows.csv', /,3005$/m, ',9999', /retention-rows\.csv.*9999/],
    ['an unknown way of cooking', 'tables/retention-rows.csv', 'leafy-greens,steamed', 'leafy-greens,wished', /wished/],
    ['a yield whose range does not hold it', 'tables/yields-added.csv', 'onions,fried,0.75,0.55', 'onions,fried,0.75,0.95', /onions/],
    ['a figure from an unknown source', 'parameters/dish/cooked.yaml', 'source: from-memory, locator: "a gentle', 'source: hearsay, locator: "a gentle', /hearsay/],
    ['a parameter that is misspelt', 'parameters/dish/cooked.yaml', 'pan_width_cm', 'pan_wdth_cm', /pan_w/],
    ['a coefficient that is no number', 'tables/retention-model.csv', /^magnesium,all,.*$/m, 'magnesium,all,much', /magnesium/],
  ])('refuses %s and names it', (...[, file, from, to, message]) => {
    change(file, from, to);
    expect(() => compileCooked(data)).toThrow(message);
  });
});
