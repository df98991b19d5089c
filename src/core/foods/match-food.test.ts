import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FoodMatch, MatchContext } from './food-match.ts';
import { sampleEntries } from './kitchen-sample.fixture.ts';
import { matchFood } from './match-food.ts';
import { buildFoodIndex } from './match-index.ts';
import { sampleOwnFood, sampleTable } from './sample-foods.fixture.ts';
import { searchFoods } from './search.ts';

const index = buildFoodIndex(sampleEntries, sampleTable());
const plain: MatchContext = { unit: null, unitKind: null, hasAmount: true, remarks: [] };

function match(name: string, more: { qualifiers?: string[]; context?: Partial<MatchContext> } = {}): FoodMatch {
  return matchFood({ name, qualifiers: more.qualifiers ?? [] }, { ...plain, ...more.context }, index);
}
const read = (name: string, more: Parameters<typeof match>[1] = {}): string => {
  const m = match(name, more);
  return m.entry ? `${m.entry.name}, ${m.form}` : m.via;
};

describe('a food named in the kitchen', () => {
  it('is found by any of its names, in the plural, misspelt or in another order', () => {
    const table: [string, string][] = [
      ['onions', 'onion, raw'], ['Tomatoes', 'tomato, raw'], ['RADISHES', 'radish, raw'], ['anchovies', 'anchovies, canned'], ['scallions', 'spring onion, raw'], ['flour, plain', 'plain flour, raw'], ['all-purpose flour', 'plain flour, raw'],
      ['chick peas', 'chickpeas, canned'], ['butter nut squash', 'butternut squash, raw'], ['swiss chrad', 'chard, raw'], ['onoin', 'onion, raw'], ['bay leaves', 'bay leaf, dried'], ['leg of lamb', 'lamb, raw'], ['cilantro', 'coriander, raw'],
    ];
    for (const [words, food] of table) expect(read(words), words).toBe(food);
  });

  it('keeps its meaning under praise, size and cutting words', () => {
    for (const words of ['large ripe tomatoes', 'organic tomatoes', 'good-quality vine tomatoes', 'chopped fresh tomatoes', 'a few tomatoes on the vine']) expect(read(words), words).toBe('tomato, raw');
    expect(match('large organic free-range eggs').confidence).toBe(1);
  });

  it('is the longest name inside the words', () => {
    const table: [string, string][] = [['peanut butter', 'peanut butter, raw'], ['butter beans', 'butter beans, canned'], ['chicken breast', 'chicken breast, raw'], ['chicken stock', 'chicken stock, raw'], ['spring onions', 'spring onion, raw'], ['ground almonds', 'ground almonds, ground'], ['extra virgin olive oil', 'olive oil, raw']];
    for (const [words, food] of table) expect(read(words), words).toBe(food);
  });

  it('is not another food that shares a word', () => {
    const others = [
      'tomato ketchup', 'rice vinegar', 'coconut milk', 'almond milk', 'egg noodles', 'garlic salt', 'garlic bread', 'chicken soup', 'rice pudding', 'lemon curd', 'orange squash', 'onion gravy', 'butter chicken curry', 'parsley sauce', 'lamb stock', 'chicken livers', 'egg custard',
      'milk chocolate', 'olive bread', 'rice noodles', 'almond croissant', 'coconut yogurt', 'vine leaves', 'lemon balm syrup', 'salt fish', 'radish leaves pickle', 'onion seeds', 'orange blossom water', 'lemon leaves', 'thyme honey',
    ];
    for (const words of others) expect(match(words).entry, words).toBeNull();
  });

  it('is not guessed from a short word one letter away', () => {
    for (const words of ['shard', 'chare', 'eff', 'mils', 'land', 'ride', 'sale']) expect(match(words).entry, words).toBeNull();
  });

  it('lets a herb or tomato have its sort in front', () => {
    expect([read('lemon thyme'), read('cherry tomatoes'), read('orange pepper')]).toEqual(['thyme, dried', 'tomato, raw', 'bell pepper, raw']);
  });

  it('loses sureness with words nobody knows, and says which', () => {
    const m = match('zorbian onions');
    expect(m.entry?.name).toBe('onion');
    expect(m.confidence).toBeLessThan(0.9);
    expect(m.note).toEqual({ code: 'unknown-words', data: { words: 'zorbian' } });
  });

  it('says when it read a slip', () => {
    expect(match('broccolli').via).toBe('none');
    expect(match('coriandar').note).toBeNull();
    expect(match('chickn').note).toEqual({ code: 'slip-read', data: { typed: 'chickn', read: 'chicken' } });
  });

  it('may be cut short or lose its vowels where one food alone can be meant, and says so', () => {
    const table: [string, string][] = [['chkn stock', 'chicken stock, raw'], ['corian leaves', 'coriander, raw'], ['btr beans', 'butter beans, canned'], ['radi', 'radish, raw'], ['plain flr', 'plain flour, raw']];
    for (const [words, food] of table) expect([read(words), match(words).note?.code], words).toEqual([food, 'slip-read']);
    for (const words of ['mil', 'co', 'p', 'gar bread']) expect(match(words).entry, words).toBeNull();
  });

  it('is told by the unit and by qualifiers that belong to its name', () => {
    expect(read('chicken', { context: { unit: 'breast', unitKind: 'count' } })).toBe('chicken breast, raw');
    expect(read('beans', { qualifiers: ['butter'] })).toBe('butter beans, canned');
    expect(read('almonds', { qualifiers: ['ground'] })).toBe('ground almonds, ground');
    expect(read('tomatoes', { qualifiers: ['chopped'] })).toBe('tomato, raw');
  });

  it('does not begin behind "in", "from" or "with"', () => {
    expect(match('aquafaba from 1 tin of chickpeas').entry).toBeNull();
    expect(match('zorb', { qualifiers: ['in olive oil'] }).entry).toBeNull();
    expect(read('chickpeas', { qualifiers: ['in water', 'drained'] })).toBe('chickpeas, canned');
  });

  it('takes the first of two foods and says so', () => {
    expect(read('olive or sunflower oil')).toBe('olive oil, raw');
    expect(match('salt and pepper').reasons.map((r) => r.code)).toContain('second-food');
  });
});

describe('the form', () => {
  it('comes from the words, the unit and the remarks', () => {
    const table: [string, Parameters<typeof match>[1], string][] = [
      ['tomatoes', { context: { unit: 'tin', unitKind: 'count' } }, 'tomato, canned'],
      ['canned tomatoes', {}, 'tomato, canned'],
      ['tomatoes, chopped, canned', {}, 'tomato, canned'],
      ['dried chickpeas', {}, 'chickpeas, dried'],
      ['chickpeas', { qualifiers: ['cooked'] }, 'chickpeas, cooked'],
      ['frozen kale', {}, 'kale, frozen'],
      ['lemon', { context: { remarks: ['juice-only'] } }, 'lemon, juice'],
      ['lemon', { context: { remarks: ['zest-only'] } }, 'lemon, peel'],
      ['zest of a lemon', {}, 'lemon, peel'],
      ['lemon juice', {}, 'lemon, juice'],
      ['garlic powder', {}, 'garlic, powder'],
      ['unsalted butter', {}, 'butter, unsalted'],
      ['semi-skimmed milk', {}, 'milk, low-fat'],
      ['toasted almonds', {}, 'almonds, toasted'],
      ['almonds', { qualifiers: ['toasted'] }, 'almonds, toasted'],
    ];
    for (const [words, more, food] of table) expect(read(words, more), words).toBe(food);
  });

  it('of a herb is fresh when it comes in sprigs or chopped, dried when it comes in spoons', () => {
    expect(read('thyme', { context: { unit: 'sprig', unitKind: 'count' } })).toBe('thyme, raw');
    expect(read('thyme', { qualifiers: ['chopped'] })).toBe('thyme, raw');
    expect(read('thyme', { context: { unit: 'tsp', unitKind: 'volume' } })).toBe('thyme, dried');
    expect(read('fresh thyme')).toBe('thyme, raw');
  });

  it('of a citrus fruit by the squeeze or spoon is its juice', () => {
    expect(read('lemon', { context: { unit: 'squeeze', unitKind: 'volume' } })).toBe('lemon, juice');
    expect(read('lemon', { qualifiers: ['chopped'], context: { unit: 'tbsp', unitKind: 'volume' } })).toBe('lemon, raw');
    expect(read('lemon')).toBe('lemon, raw');
  });

  it('of what lies in its juice in a tin is not the juice', () => {
    expect(read('tomatoes', { qualifiers: ['whole', 'in juice'], context: { unit: 'tin', unitKind: 'count', remarks: ['juice-only'] } })).toBe('tomato, canned');
  });

  it('of a lemon in wedges is its juice, as somebody squeezes them', () => {
    expect([read('lemon', { qualifiers: ['cut into wedges'] }), read('orange', { qualifiers: ['cut into wedges'] })]).toEqual(['lemon, juice', 'orange, raw']);
  });

  it('that only a remark asks for stays the food, with a note', () => {
    const m = match('radish', { context: { remarks: ['juice-only'] } });
    expect([m.entry?.name, m.form, m.nearness, m.note?.code]).toEqual(['radish', 'raw', 'near', 'form-missing']);
    expect(match('kale', { qualifiers: ['frozen', 'thawed and squeezed'], context: { remarks: ['juice-only'] } })).toMatchObject({ form: 'frozen', nearness: 'same' });
  });

  it('that the food lacks gives the nearest one and says so', () => {
    const m = match('frozen chard');
    expect([m.entry?.name, m.form, m.nearness]).toEqual(['chard', 'raw', 'near']);
    expect(m.note).toEqual({ code: 'form-missing', data: { name: 'chard', asked: 'frozen', used: 'raw' } });
  });

  it('that is another product is not the food', () => {
    for (const words of ['onion powder juice', 'tomato juice', 'chickpea flour', 'radish oil', 'tomato paste']) expect(match(words).entry, words).toBeNull();
  });

  it('of one word with two meanings follows the unit', () => {
    expect(read('pepper', { context: { unit: 'tsp', unitKind: 'volume' } })).toBe('black pepper, ground');
    expect(read('pepper')).toBe('bell pepper, raw');
    expect(read('pepper', { context: { hasAmount: false } })).toBe('black pepper, ground');
    expect(match('pepper').reasons.map((r) => r.code)).toContain('several-meanings');
  });
});

describe('a food without a kitchen name', () => {
  it('is taken from the tables only when their name says it, plain and raw first', () => {
    const m = match('salsify');
    expect([m.via, m.code, m.nearness]).toEqual(['search', 'sr28:90003', 'near']);
    expect(m.note).toEqual({ code: 'table-name', data: { name: 'salsify', table: 'Salsify, raw' } });
    expect(match('boiled salsify').code).toBe('sr28:90002');
    expect(match('pecans').code).toBe('sr28:90006');
  });

  it('stays unknown otherwise, with others to choose from', () => {
    for (const words of ['salsify sorbet', 'pecan liqueur', 'quince', 'xyzzy', '', '   ', '!!!']) {
      const m = match(words);
      expect([m.via, m.code, m.confidence], words).toEqual(['none', null, 0]);
    }
    expect(match('salsify sorbet').alternatives.length).toBeGreaterThan(0);
    for (const words of ['salsify sorbet', 'tomato ketchup', 'onion']) {
      const names = match(words).alternatives.map((a) => a.name);
      expect(new Set(names).size, words).toBe(names.length);
    }
  });
});

describe('a food of her own', () => {
  it('goes before a kitchen name that is no longer', () => {
    const own = buildFoodIndex(sampleEntries, sampleTable([sampleOwnFood('Gran’s chicken stock'), sampleOwnFood('kale')]));
    expect(matchFood({ name: 'grans chicken stock', qualifiers: [] }, plain, own)).toMatchObject({ via: 'own', code: 'own:Gran-s-chicken-stock', entry: null });
    expect(matchFood({ name: 'kale', qualifiers: [] }, plain, own).via).toBe('own');
    expect(matchFood({ name: 'chicken stock', qualifiers: [] }, plain, own).entry?.name).toBe('chicken stock');
  });
});

describe('matching, whatever is typed', () => {
  it('never throws, and keeps confidence between 0 and 1', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), fc.array(fc.string({ maxLength: 12 }), { maxLength: 3 }), fc.option(fc.string({ maxLength: 6 })), (name, qualifiers, unit) => {
        const m = matchFood({ name, qualifiers }, { ...plain, unit }, index);
        expect(m.confidence).toBeGreaterThanOrEqual(0);
        expect(m.confidence).toBeLessThanOrEqual(1);
        expect(m.via === 'none').toBe(m.code === null && m.entry === null);
      }),
    );
  });

  it('reads the singular and the plural of a kitchen name as the same food', () => {
    const names = sampleEntries.flatMap((e) => [e.name, ...e.also]).filter((n) => /[a-z]$/.test(n) && !/(s|y|f|leaf)$/.test(n));
    fc.assert(fc.property(fc.constantFrom(...names), (name) => { expect(read(`${name}s`)).toBe(read(name)); }));
  });

  it('does not mind capitals or spaces', () => {
    fc.assert(fc.property(fc.constantFrom(...sampleEntries.map((e) => e.name)), (name) => { expect(read(`  ${name.toUpperCase()} `)).toBe(read(name)); }));
  });
});

describe('the picker', () => {
  it('finds unfinished and misspelt words, kitchen names first', () => {
    expect(searchFoods('tom', index, 3)[0]?.name).toBe('tomato');
    expect(searchFoods('chikpeas', index, 3)[0]?.name).toBe('chickpeas');
    expect(searchFoods('cilantro', index, 3)[0]).toMatchObject({ name: 'coriander', matchedName: 'cilantro', via: 'kitchen-name' });
    expect(searchFoods('garbanzo canned', index, 3)[0]).toMatchObject({ name: 'chickpeas', form: 'canned' });
  });

  it('puts plain foods before ready meals and baby foods, and shows the state', () => {
    const hits = searchFoods('salsify', index, 5);
    expect(hits.map((h) => h.code)).toEqual(['sr28:90003', 'sr28:90002', 'sr28:90004']);
    expect(hits.map((h) => h.state)).toEqual(['raw', 'cooked, boiled', null]);
  });

  it('gives each food once and no more than asked for', () => {
    const hits = searchFoods('pepper', index, 2);
    expect(hits.length).toBe(2);
    expect(new Set(hits.map((h) => h.name)).size).toBe(2);
    expect(searchFoods('', index, 5)).toEqual([]);
    expect(searchFoods('   ,,, ', index, 5)).toEqual([]);
  });

  it('answers any text without failing', () => {
    fc.assert(fc.property(fc.string({ maxLength: 40 }), (query) => { expect(searchFoods(query, index, 5).length).toBeLessThanOrEqual(5); }));
  });
});
