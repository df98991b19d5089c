import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { compileChange } from './tables/change.ts';
import { compileCooking } from './tables/cooking.ts';
import { compileCooked } from './tables/cooked.ts';
import { compileClaimReader } from './tables/claim-reader.ts';
import { compileCycle } from './tables/cycle.ts';
import { compileFoods } from './tables/foods.ts';
import { compileReaderWords } from './tables/reader-words.ts';
import { compileStatements } from './tables/statements.ts';
import { compileUnits } from './tables/units.ts';
import { compileKitchenNames } from './tables/kitchen-names.ts';
import { compileReference } from './tables/reference.ts';
import { compileSources } from './tables/sources.ts';
import { compilePolarityWeights } from './tables/polarity-weights.ts';
import { compileWordSenses } from './tables/word-senses.ts';
import { compileWeighing } from './tables/weighing.ts';

/** Compiles everything under data/ and the two composition tables into dist/tables/. */
const root = join(import.meta.dirname, '..');
const data = join(root, 'data');
const out = join(root, 'dist', 'tables');
mkdirSync(out, { recursive: true });

function write(area: string, value: unknown): void {
  writeFileSync(join(out, `${area}.json`), JSON.stringify(value));
}

const sources = compileSources(data);
write('sources', sources);
write('reference', compileReference(data, new Set(sources.map((s) => s.id))));

const foods = compileFoods(data);
write('foods', foods.header);
writeFileSync(join(out, 'foods.bin'), foods.cells);
console.log(`foods: ${foods.header.entries.length} foods, ${(foods.cells.byteLength / 1e6).toFixed(1)} MB`);

const kitchenNames = compileKitchenNames(data, new Set(foods.header.entries.map((food) => food.code)));
write('kitchen-names', kitchenNames);
console.log(`kitchen names: ${kitchenNames.length} entries`);

write('weighing', compileWeighing(data));

write('cooked', compileCooked(data));

for (const [area, table] of Object.entries(compileChange(data, kitchenNames))) write(area, table);

write('statements', compileStatements(data, new Set(sources.map((s) => s.id))));
write('word-senses', compileWordSenses());
write('claim-reader', compileClaimReader(data));
write('polarity-weights', compilePolarityWeights(data));
write('cycle', compileCycle(data, new Set(sources.map((s) => s.id))));
write('units', compileUnits(data));
write('reader-words', compileReaderWords(data));

// The demo dishes that the desk offers are those that the list beside them names.
const demo = parse(readFileSync(join(data, 'demo/demo-dishes.meta.yaml'), 'utf8')) as { dishes: { file: string }[] };
rmSync(join(out, 'demo'), { recursive: true, force: true });
mkdirSync(join(out, 'demo'));
for (const { file } of demo.dishes) cpSync(join(data, 'demo', file), join(out, 'demo', file));
write('cooking', compileCooking(data));
