import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { FoodForm, KitchenEntry } from '../../src/core/foods/index.ts';
import { compileFoods } from './foods.ts';
import { kitchenEntries, kitchenFiles, knownUnits, type KnownForKitchen } from './kitchen-names.ts';
import { knownSources } from './known-sources.ts';

const sample: KnownForKitchen = {
  foods: new Set(['sr28:16056', 'sr28:16359', 'sr28:02014']),
  units: new Set(['tin', 'piece', 'pinch']),
  sources: new Set(['sr28', 'common-practice']),
};
const read = (text: string, area = 'pulses'): KitchenEntry[] => kitchenEntries([{ area, text }], sample);
const chickpeas = `
- name: chickpeas
  also: [chana]
  usual: dried
  forms:
    dried: sr28:16056
    canned: {code: 'sr28:16359', note: Drained.}
  pieces:
    - {unit: tin, grams: 240, spread: 0.05, basis: net, form: canned, source: common-practice, locator: drained}
  densities:
    - {state: '', gramsAMillilitre: 0.845, spread: 0.1, source: sr28, locator: '16056 1 cup = 200 g'}
`;

describe('a kitchen entry', () => {
  test('keeps its names, forms, weights and densities, with the area of its file', () => {
    expect(read(chickpeas)).toEqual([
      {
        name: 'chickpeas',
        also: ['chana'],
        area: 'pulses',
        usual: 'dried',
        forms: { dried: { code: 'sr28:16056', nearness: 'same', note: null }, canned: { code: 'sr28:16359', nearness: 'same', note: 'Drained.' } },
        pieces: [{ unit: 'tin', size: null, form: 'canned', grams: 240, spread: 0.05, basis: 'net', source: 'common-practice', locator: 'drained' }],
        densities: [{ state: '', form: null, gramsAMillilitre: 0.845, spread: 0.1, source: 'sr28', locator: '16056 1 cup = 200 g' }],
        refusePercent: null,
      },
    ]);
  });

  test('names a near relative with a note, and none with a note', () => {
    const [nigella, sumac] = read(`
- {name: nigella seeds, usual: whole, forms: {whole: {near: 'sr28:02014', note: Cumin stands in.}}}
- {name: sumac, usual: ground, forms: {ground: {near: null, note: No data.}}, refuse: 0}
`);
    expect(nigella?.forms.whole).toEqual({ code: 'sr28:02014', nearness: 'near', note: 'Cumin stands in.' });
    expect(sumac?.forms.ground).toEqual({ code: null, nearness: 'none', note: 'No data.' });
    expect(sumac?.refusePercent).toBe(0);
  });

  test.each([
    ['a code that no table has', chickpeas.replace('16056', '99999'), 'pulses.yaml: chickpeas: form dried: no food has the code sr28:99999'],
    ['a form that nobody knows', chickpeas.replace('canned: {code', 'bottled: {code').replace('form: canned', 'form: dried'), /pulses\.yaml: chickpeas: forms.*bottled/],
    ['a usual form that is not among its forms', chickpeas.replace('usual: dried', 'usual: raw'), 'chickpeas: the usual form raw is not among its forms'],
    ['no form at all', '- {name: air, usual: raw, forms: {}}', 'air: forms: give at least one form'],
    ['a near relative without a note', "- {name: nigella seeds, usual: whole, forms: {whole: {near: 'sr28:02014'}}}", 'nigella seeds: forms.whole: give a food code'],
    ['an unknown unit', chickpeas.replace('unit: tin', 'unit: barrel'), 'chickpeas: piece: unknown unit barrel'],
    ['a piece of a form it lacks', chickpeas.replace('form: canned', 'form: frozen'), 'chickpeas: piece tin: the form frozen is not among its forms'],
    ['an unknown source of a piece', chickpeas.replace('source: common-practice', 'source: hearsay'), 'chickpeas: piece tin: unknown source hearsay'],
    ['an unknown source of a density', chickpeas.replace('source: sr28', 'source: hearsay'), "chickpeas: density '': unknown source hearsay"],
    ['a weight of nothing', chickpeas.replace('grams: 240', 'grams: 0'), 'chickpeas: pieces.0.grams'],
    ['a basis that is neither gross nor net', chickpeas.replace('basis: net', 'basis: drained'), 'chickpeas: pieces.0.basis'],
    ['a density lighter than any food', chickpeas.replace('0.845', '0.001'), 'chickpeas: densities.0.gramsAMillilitre'],
    ['a density heavier than any food', chickpeas.replace('0.845', '8.45'), 'chickpeas: densities.0.gramsAMillilitre'],
    ['a word the format does not have', chickpeas.replace('also:', 'alias:'), /chickpeas: .*alias/],
    ['two weights for one piece', chickpeas.replace('  densities', '    - {unit: tin, grams: 120, spread: 0.05, basis: net, form: canned, source: sr28, locator: x}\n  densities'), 'chickpeas: two weights for one piece (tin, any size, canned)'],
    ['two densities for one state', `${chickpeas}    - {state: '', gramsAMillilitre: 0.8, spread: 0.1, source: sr28, locator: x}\n`, "chickpeas: two densities for one state ('', any form)"],
    ['a file that is not a list', 'name: chickpeas', 'pulses.yaml: the file must be a list of entries'],
    ['a file that is not YAML', '- name: [chickpeas', 'pulses.yaml: not YAML'],
  ])('is refused with %s', (_, text, message) => {
    expect(() => read(text)).toThrow(message);
  });

  test('is refused when its name is claimed by another file, whatever the capitals, and both places are told', () => {
    const files = [{ area: 'grains', text: "- {name: Chana, usual: dried, forms: {dried: 'sr28:16056'}}" }, { area: 'pulses', text: chickpeas }];
    expect(() => kitchenEntries(files, sample)).toThrow('pulses.yaml: chickpeas: the name "chana" is already claimed by grains.yaml: Chana');
  });

  test('is refused together with all the other faulty ones, so that one run tells everything', () => {
    expect(() => read(chickpeas.replace('16056', '99999').replace('unit: tin', 'unit: barrel'))).toThrow(/no food has the code[\s\S]*unknown unit barrel/);
  });
});

/** The areas of plants, fungi and what is made of them: the ones this file vouches for. */
const plantAreas = ['vegetables', 'fruit', 'herbs-and-spices', 'pulses', 'nuts-and-seeds', 'fungi-and-sea-vegetables'];
const data = join(import.meta.dirname, '..', '..', 'data');
const foods = new Map(compileFoods(data).header.entries.map((food) => [food.code, food]));
const files = kitchenFiles(data).filter(({ area }) => plantAreas.includes(area));
const entries = kitchenEntries(files, { foods: new Set(foods.keys()), units: knownUnits(data), sources: knownSources(data) });

interface State {
  readonly name: string;
  readonly form: FoodForm;
  readonly table: string;
  readonly group: string;
}

/** Every form whose table food is the food itself. */
const sameForms: State[] = entries.flatMap((entry) =>
  (Object.entries(entry.forms) as [FoodForm, KitchenEntry['forms'][FoodForm]][]).flatMap(([form, food]) => {
    if (food?.nearness !== 'same' || food.code === null) return [];
    const { name: table, group } = foods.get(food.code)!;
    return [{ name: entry.name, form, table, group }];
  }),
);
const statesOf = (form: FoodForm): State[] => sameForms.filter((state) => state.form === form);
/** States that do not fit, and exceptions that nothing needs any more. */
function unfit(states: readonly State[], fits: (state: State) => boolean, allowed: Readonly<Record<string, string>>): string[] {
  const wrong = states.filter((state) => !fits(state));
  const idle = Object.keys(allowed).filter((name) => !wrong.some((state) => state.name === name));
  return [...wrong.filter(({ name }) => !(name in allowed)).map(({ name, form, table }) => `${name} | ${form} | ${table}`), ...idle.map((name) => `no exception needed: ${name}`)];
}

describe('the kitchen names of plants', () => {
  test('are enough for a kitchen: at least 380 things, under at least 1200 names', () => {
    expect(entries.length).toBeGreaterThanOrEqual(380);
    expect(entries.flatMap((entry) => [entry.name, ...entry.also]).length).toBeGreaterThanOrEqual(1200);
  });

  test('give as raw no food that the table calls cooked, tinned, dried or frozen', () => {
    const allowed = {
      // Nuts as sold raw: SR28 calls the shelled kernel dried.
      'brazil nuts': 'dried kernel', 'pine nuts': 'dried kernel', 'black walnuts': 'dried kernel', 'hickory nuts': 'dried kernel', 'white walnuts': 'dried kernel',
      'sunflower seeds': 'dried kernel', 'pumpkin seeds': 'dried kernel', 'safflower seeds': 'dried kernel',
      durian: 'the table joins raw and frozen',
    };
    expect(unfit(statesOf('raw'), ({ table }) => !/cooked|canned|dried|boiled|baked|roasted|frozen|steamed|pickled|dehydrated|stewed|juice|^Spices/i.test(table), allowed)).toEqual([]);
  });

  test('give as tinned only food that the table calls canned', () => {
    expect(unfit(statesOf('canned'), ({ table }) => /canned/i.test(table), {})).toEqual([]);
  });

  test('give as dried only food that the table calls dried, or a dry pulse, spice or noodle', () => {
    const allowed = {
      date: 'dates are sold half dried', 'medjool date': 'dates are sold half dried', poppadoms: 'papad is a dry wafer',
      raisins: 'raisins are dried grapes',
    };
    const dry = ({ table, group }: State): boolean =>
      /dried|dehydrated|flakes|mature seeds, raw|^Lentils, (pink or red, )?raw|^Spices, /i.test(table) || group === 'Grain Legumes';
    expect(unfit(statesOf('dried'), dry, allowed)).toEqual([]);
  });

  test('give as cooked only food that the table calls cooked, and as frozen only frozen food', () => {
    const allowed = {
      'apple sauce': 'stewed apple from a tin', 'portobello mushroom': 'grilled', edamame: 'the table says prepared', 'mashed potato': 'home-prepared',
    };
    expect(unfit(statesOf('cooked'), ({ table }) => /cooked|boiled|baked|steamed|stewed|saut|stir-fried|heated|fried/i.test(table), allowed)).toEqual([]);
    expect(unfit(statesOf('frozen'), ({ table }) => /frozen/i.test(table), {})).toEqual([]);
  });

  test('give no fresh food as ground, powder, flakes or paste', () => {
    const ground = sameForms.filter(({ form }) => ['ground', 'powder', 'flakes', 'paste', 'flour'].includes(form));
    expect(ground.length).toBeGreaterThan(40);
    expect(unfit(ground, ({ table }) => !/\braw\b|fresh|cooked/i.test(table), {})).toEqual([]);
  });

  test('give no food salted or sweetened in the table where an unsalted or plain one is meant', () => {
    expect(unfit(sameForms.filter(({ form }) => !['sweetened', 'salted', 'pickled'].includes(form)), ({ table }) => !/with salt|salted(?! and fermented)|, sweetened|syrup/i.test(table), {
      mangosteen: 'the table has it tinned only in syrup', apple: 'tinned apple slices are sweetened, and the entry says so',
    })).toEqual([]);
  });

  test('never give the raw seaweed for the dried one', () => {
    const seaweeds = entries.filter(({ area, forms }) => area === 'fungi-and-sea-vegetables' && Object.values(forms).some((food) => food.code !== null && /^Seaweed/.test(foods.get(food.code)!.name)));
    expect(seaweeds.length).toBeGreaterThan(4);
    for (const { name, forms } of seaweeds)
      for (const form of ['dried', 'powder', 'flakes'] as const) if (forms[form]) expect(`${name} ${foods.get(forms[form].code ?? '')?.name ?? 'no data'}`).toMatch(/, dried$|no data$/);
  });

  test('take no shell off a nut that is sold shelled', () => {
    const shelled = entries.filter(({ area, name, pieces }) => area === 'nuts-and-seeds' && !/shell/.test(name) && pieces.some(({ unit }) => unit === 'handful'));
    for (const { name, forms, usual, refusePercent } of shelled) {
      const code = forms[usual]?.code ?? null;
      expect(`${name}: ${refusePercent ?? (code === null ? 0 : (foods.get(code)?.refusePercent ?? 0))} %`).toBe(`${name}: 0 %`);
    }
  });

  test.each([
    ['rocket', 'Arugula, raw'],
    ['arugula', 'Arugula, raw'],
    ['aubergine', 'Eggplant, raw'],
    ['courgette', 'Squash, summer, zucchini, includes skin, raw'],
    ['scallion', 'Onions, spring or scallions (includes tops and bulb), raw'],
    ['tin plum tomatoes', 'Tomatoes, red, ripe, canned, packed in tomato juice, no salt added'],
    ['methi', 'Fenugreek leaves'],
    ['methi seeds', 'Spices, fenugreek seed'],
    ['cilantro', 'Coriander (cilantro) leaves, raw'],
    ['swede', 'Rutabagas, raw'],
    ['ajwain', 'Omum'],
    ['toor dal', 'Red gram, dal'],
    ['urad dal', 'Black gram, dal'],
    ['masoor dal', 'Lentils, pink or red, raw'],
    ['butter beans', 'Lima beans, large, mature seeds, raw'],
    ['sultanas', 'Raisins, golden seedless'],
    ['kalonji', 'Spices, cumin seed'],
  ])('lead "%s" to %s', (asked, table) => {
    const found = entries.filter((entry) => [entry.name, ...entry.also].includes(asked));
    expect(found.map((entry) => foods.get(entry.forms[entry.usual]?.code ?? '')?.name)).toEqual([table]);
  });
});
