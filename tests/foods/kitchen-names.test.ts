import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/core/quantity/index.ts';
import { kitchen, match, table } from './kitchen-table.ts';

const names = kitchen.flatMap((entry) => [entry.name, ...entry.also].map((name) => ({ entry, name })));

describe('every kitchen name', () => {
  it('is read as its own food, alone or under praise and size', () => {
    const wrong = names.filter(({ entry, name }) => match(name).entry !== entry).map(({ entry, name }) => `${name} (${entry.name}): ${match(name).entry?.name}`);
    // A few names belong to two foods; the unit decides between them.
    expect(wrong.length, wrong.join('; ')).toBeLessThanOrEqual(names.length * 0.002);
    const praised = names.filter(({ entry, name }) => match(`good-quality organic ${name}`).entry !== entry);
    expect(praised.length, praised.map((p) => p.name).join('; ')).toBeLessThanOrEqual(names.length * 0.004);
  });

  it('leads to foods that the tables have', () => {
    for (const entry of kitchen) for (const food of Object.values(entry.forms)) if (food.code !== null) expect(table.find(food.code), `${entry.name} ${food.code}`).not.toBeNull();
  });
});

/** One slip in one word: a letter left out, put in, changed, or two swapped. */
function slip(name: string, uniform: () => number): string | null {
  const words = name.split(' ');
  const at = Math.floor(uniform() * words.length);
  const word = words[at] ?? '';
  if (word.length < 4) return null;
  const i = 1 + Math.floor(uniform() * (word.length - 1));
  const letter = 'abcdefghijklmnopqrstuvwxyz'[Math.floor(uniform() * 26)] ?? 'a';
  const kinds = [word.slice(0, i) + word.slice(i + 1), word.slice(0, i) + letter + word.slice(i), word.slice(0, i) + letter + word.slice(i + 1), word.slice(0, i) + (word[i + 1] ?? '') + (word[i] ?? '') + word.slice(i + 2)];
  const typed = kinds[Math.floor(uniform() * kinds.length)] ?? word;
  return typed === word ? null : [...words.slice(0, at), typed, ...words.slice(at + 1)].join(' ');
}

describe('a kitchen name with one slip', () => {
  it('is mostly read, seldom as another food, and then with a note or less sureness', () => {
    const random = seededRandom(20_260);
    let tried = 0;
    let right = 0;
    const wrong: string[] = [];
    const silent: string[] = [];
    for (const entry of kitchen) {
      const typed = slip(entry.name, () => random.uniform());
      if (typed === null) continue;
      tried++;
      const m = match(typed);
      if (m.entry === entry) right++;
      else if (m.entry) {
        wrong.push(`${typed} → ${m.entry.name}`);
        if (m.confidence > 0.95 && m.note === null) silent.push(`${typed} → ${m.entry.name}`);
      }
    }
    expect(right / tried).toBeGreaterThan(0.88);
    expect(wrong.length / tried, wrong.join('; ')).toBeLessThan(0.02);
    expect(silent.length / tried, silent.join('; ')).toBeLessThan(0.005);
  });
});

describe('a food that shares a word with another', () => {
  it('is not taken for it', () => {
    const pairs: [string, string][] = [
      ['chicken soup', 'chicken'], ['lamb tagine', 'lamb'], ['mushroom ketchup', 'mushroom'], ['bread sauce', 'bread'], ['chilli jam', 'chilli'], ['banana bread', 'banana'], ['banana leaf', 'banana'], ['carrot cake', 'carrot'], ['carrot tops', 'carrot'],
      ['oat cream', 'cream'], ['cashew cream', 'cream'], ['coconut flour', 'flour'], ['raspberry leaf tea', 'raspberry'], ['nettle tea', 'tea'], ['tomato soup', 'tomato'], ['oxtail soup', 'oxtail'], ['chicken and mushroom pie', 'chicken'], ['cheese alternative', 'cheese'], ['zorbian oil', 'oil'], ['lemongrass paste', 'lemongrass'],
    ];
    for (const [words, head] of pairs) {
      const m = match(words);
      expect(m.entry?.name.includes(head) ?? false, `${words} → ${m.entry?.name}`).toBe(false);
    }
  });
});

describe('words of everyday lines', () => {
  it('lead to the table food that a cook means', () => {
    const lines: [string, string[], Partial<Parameters<typeof match>[2]>, RegExp][] = [
      ['plum tomatoes', [], { unit: 'tin', unitKind: 'count' }, /^Tomatoes, red, ripe, canned/],
      ['chickpeas', [], { unit: 'tin', unitKind: 'count' }, /^Chickpeas.*canned/],
      ['chickpeas', ['cooked'], {}, /^Chickpeas.*cooked, boiled, without salt/],
      ['brown rice', ['cooked'], {}, /^Rice, brown, long-grain, cooked/],
      ['pepper', ['freshly ground'], { unit: 'tsp', unitKind: 'volume' }, /^Spices, pepper, black/],
      ['pepper', [], { hasAmount: false }, /^Spices, pepper, black/],
      ['red pepper', ['deseeded', 'sliced'], {}, /^Peppers, sweet, red, raw/],
      ['lemon', [], { remarks: ['juice-only'] }, /^Lemon juice, raw/],
      ['lemon', [], { remarks: ['zest-only'] }, /^Lemon peel, raw/],
      ['zest of an orange', [], {}, /^Orange peel, raw/],
      ['juice of half a lime', [], {}, /^Lime juice, raw/],
      ['skinless salmon fillets', [], {}, /^Fish, salmon/],
      ['tuna in spring water', [], {}, /^Fish, tuna, light, canned in water/],
      ['kidney beans in chilli sauce', [], {}, /^Beans, kidney.*canned/],
      ['corn', ['on the cob'], {}, /^Corn, sweet, yellow, raw/],
      ['sardines', ['in olive oil', 'drained'], { unit: 'tin', unitKind: 'count' }, /^Fish, sardine, Atlantic, canned in oil/],
      ['vegetable stock cube dissolved', ['in 500ml boiling water'], {}, /broth cubes, dry/],
      ['puy lentils', [], { unit: 'pouch', unitKind: 'count' }, /^Lentils.*cooked/],
      ['raw brown rice', [], {}, /^Rice, brown, long-grain, raw/],
      ['frozen peas', [], {}, /^Peas, green, frozen/],
      ['kale', ['chopped'], { unit: 'handful', unitKind: 'volume' }, /^Kale, raw/],
      ['thyme', [], { unit: 'sprig', unitKind: 'count' }, /^Thyme, fresh/],
      ['thyme', [], { unit: 'tsp', unitKind: 'volume' }, /^Spices, thyme, dried/],
      ['coriander', ['chopped'], { unit: 'handful', unitKind: 'volume' }, /^Coriander \(cilantro\) leaves, raw/],
      ['coriander seeds', [], {}, /^Spices, coriander seed/],
      ['eggs', [], {}, /^Egg, whole, raw, fresh/],
      ['eggs', ['hard-boiled'], {}, /^Egg, whole, cooked, hard-boiled/],
    ];
    for (const [name, qualifiers, context, wanted] of lines) {
      const m = match(name, qualifiers, context);
      expect(m.code === null ? '' : table.get(m.code).name, `${name} ${qualifiers.join(' ')}`).toMatch(wanted);
    }
  });
});
