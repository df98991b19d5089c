import type { FoodForm, KitchenEntry, KitchenFood, PieceWeight } from './kitchen-name.ts';

const same = (code: string): KitchenFood => ({ code: `sr28:${code}`, nearness: 'same', note: null });

interface Brief {
  also?: string;
  usual?: FoodForm;
  pieces?: readonly (Pick<PieceWeight, 'unit' | 'grams'> & Partial<PieceWeight>)[];
  densities?: Readonly<Record<string, number>>;
  refusePercent?: number;
}

/** A kitchen entry in short: forms as SR28 numbers. For tests only; the real names are in data/tables/kitchen-names. */
export function sampleEntry(name: string, forms: Partial<Record<FoodForm, string>>, more: Brief = {}): KitchenEntry {
  const first = Object.keys(forms)[0] as FoodForm;
  return {
    name,
    also: more.also ? more.also.split(', ') : [],
    area: 'sample',
    usual: more.usual ?? first,
    forms: Object.fromEntries(Object.entries(forms).map(([form, code]) => [form, same(code)])),
    pieces: (more.pieces ?? []).map((p) => ({ size: null, form: null, spread: 0.2, basis: 'gross', source: 'common-practice', locator: 'sample', ...p })),
    densities: Object.entries(more.densities ?? {}).map(([state, gramsAMillilitre]) => ({ state, form: null, gramsAMillilitre, spread: 0.15, source: 'common-practice', locator: 'sample' })),
    refusePercent: more.refusePercent ?? null,
  };
}

/** A few dozen entries that lie close to each other on purpose. */
export const sampleEntries: readonly KitchenEntry[] = [
  sampleEntry('tomato', { raw: '11529', canned: '11531' }, { also: 'tomatoes, cherry tomatoes, plum tomatoes', pieces: [{ unit: 'piece', grams: 85 }, { unit: 'piece', size: 'large', grams: 150 }, { unit: 'tin', form: 'canned', grams: 400, basis: 'net' }] }),
  sampleEntry('onion', { raw: '11282', cooked: '11283' }, { also: 'brown onion', pieces: [{ unit: 'piece', grams: 150 }, { unit: 'piece', size: 'small', grams: 90 }, { unit: 'piece', size: 'large', grams: 225 }], densities: { chopped: 0.68 } }),
  sampleEntry('spring onion', { raw: '11291' }, { also: 'scallion, salad onion' }),
  sampleEntry('garlic', { raw: '11215', powder: '02020' }, { pieces: [{ unit: 'clove', grams: 4 }] }),
  sampleEntry('chicken', { raw: '05006', roasted: '05009' }),
  sampleEntry('chicken breast', { raw: '05062', cooked: '05064' }, { pieces: [{ unit: 'breast', grams: 170, basis: 'net' }, { unit: 'piece', grams: 170, basis: 'net' }] }),
  sampleEntry('chicken stock', { raw: '06172' }, { also: 'chicken broth' }),
  sampleEntry('chickpeas', { canned: '16358', dried: '16056', cooked: '16057' }, { also: 'garbanzo beans, chana', usual: 'canned', pieces: [{ unit: 'tin', form: 'canned', grams: 240, basis: 'net' }] }),
  sampleEntry('butter', { salted: '01001', unsalted: '01145' }),
  sampleEntry('butter beans', { canned: '16073', dried: '16071', cooked: '16072' }, { also: 'lima beans' }),
  sampleEntry('peanut butter', { raw: '16398' }),
  sampleEntry('milk', { raw: '01077', skimmed: '01085', 'low-fat': '01079', powder: '01090' }, { also: 'whole milk' }),
  sampleEntry('lemon', { raw: '09150', juice: '09152', peel: '09156' }, { pieces: [{ unit: 'piece', grams: 100 }] }),
  sampleEntry('thyme', { dried: '02042', raw: '02049' }, { usual: 'dried' }),
  sampleEntry('parsley', { raw: '11297', dried: '02029' }, { also: 'flat-leaf parsley' }),
  sampleEntry('black pepper', { ground: '02030', whole: '02030' }, { also: 'pepper, peppercorns', densities: { '': 0.45 } }),
  sampleEntry('bell pepper', { raw: '11821' }, { also: 'pepper, red pepper, capsicum', pieces: [{ unit: 'piece', grams: 160 }] }),
  sampleEntry('kale', { raw: '11233', cooked: '11234', frozen: '11235' }, { also: 'curly kale' }),
  sampleEntry('chard', { raw: '11147' }, { also: 'swiss chard' }),
  sampleEntry('plain flour', { raw: '20481' }, { also: 'all-purpose flour, flour' }),
  sampleEntry('egg', { raw: '01123', cooked: '01129' }, { pieces: [{ unit: 'piece', grams: 57 }] }),
  sampleEntry('salt', { raw: '02047' }),
  sampleEntry('olive oil', { raw: '04053' }, { also: 'extra virgin olive oil' }),
  sampleEntry('olives', { canned: '09193' }),
  sampleEntry('rice', { dried: '20044', cooked: '20045' }, { also: 'white rice', usual: 'dried' }),
  sampleEntry('almonds', { raw: '12061', toasted: '12563' }),
  sampleEntry('ground almonds', { ground: '12061' }),
  sampleEntry('radish', { raw: '11429' }),
  sampleEntry('anchovies', { canned: '15002' }),
  sampleEntry('bay leaf', { dried: '02004' }),
  sampleEntry('butternut squash', { raw: '11485' }),
  sampleEntry('coriander', { raw: '11165' }, { also: 'cilantro, fresh coriander' }),
  sampleEntry('coriander seed', { whole: '02013', ground: '02013' }),
  sampleEntry('orange', { raw: '09200', juice: '09206', peel: '09216' }),
  sampleEntry('coconut', { raw: '12104' }),
  sampleEntry('lamb', { raw: '17001' }),
  sampleEntry('water', { raw: '14411' }),
];
