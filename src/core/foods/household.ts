import { foldWord, plainText } from './word-forms.ts';

/** A household measure of a table, read: "1 cup, 1\" pieces, loosely packed" is one cup in the states pieces and packed. */
export interface HouseholdReading {
  /** How many units the grams are for. */
  readonly count: number;
  /** `cup`, `tbsp`, `tsp`, `fl-oz`, `pint`, `quart`, `ml` for volumes, `g`, `oz`, `lb` for weights, else the thing counted, singular ("leaf", "potato", "medium"). */
  readonly unit: string;
  readonly kind: 'volume' | 'mass' | 'count';
  readonly size: 'small' | 'medium' | 'large' | null;
  /** Words of state, folded: "chopped", "slice", "packed". */
  readonly states: readonly string[];
  /** True when the grams are what so much of another food gives ("1 cup, dry, yields"): no weight of the measure itself. */
  readonly isYield: boolean;
  /** True when the text says that refuse is still in ("with refuse"). */
  readonly withRefuse: boolean;
}

const volumes: Readonly<Record<string, string>> = {
  cup: 'cup', tbsp: 'tbsp', tablespoon: 'tbsp', tbs: 'tbsp', tsp: 'tsp', teaspoon: 'tsp', pint: 'pint', quart: 'quart', ml: 'ml', 'fl oz': 'fl-oz',
};
const masses: Readonly<Record<string, string>> = { g: 'g', gram: 'g', oz: 'oz', ounce: 'oz', lb: 'lb', pound: 'lb' };
const sizes: Readonly<Record<string, HouseholdReading['size']>> = { small: 'small', medium: 'medium', med: 'medium', large: 'large' };
const fillers = new Set(['or', 'and', 'with', 'without', 'of', 'the', 'a', 'in', 'to', 'x', 'not', 'dia', 'long', 'thick', 'approx', 'about', 'each', 'nlea', 'per']);

function readCount(text: string): [number, string] {
  const mixed = /^(\d+)\s*-\s*(\d+)\/(\d+)\s*(.*)$/.exec(text);
  if (mixed) return [Number(mixed[1]) + Number(mixed[2]) / Number(mixed[3]), mixed[4] ?? ''];
  const fraction = /^(\d+)\/(\d+)\s*(.*)$/.exec(text);
  if (fraction && Number(fraction[2]) > 0) return [Number(fraction[1]) / Number(fraction[2]), fraction[3] ?? ''];
  const decimal = /^(\d*\.?\d+)\s*(.*)$/.exec(text);
  return decimal ? [Number(decimal[1]), decimal[2] ?? ''] : [1, text];
}

/** Reads a household text of the tables; null when it is empty or counts nothing. Brackets (sizes in inches, yields) only tell size and refuse. */
export function readHousehold(text: string): HouseholdReading | null {
  const plain = plainText(text).trim();
  const [count, rest] = readCount(plain);
  if (!(count > 0)) return null;
  const withRefuse = /with refuse|with bone/.test(rest) && !/without refuse|excluding refuse/.test(rest);
  const isYield = /\byields?\b|\bprepared\b|amount to make/.test(rest);
  const outside = rest.replace(/\bnot packed\b/g, ' ').replace(/\(.*?\)/g, ' , ').replace(/\bextra large\b/g, 'extra-large').replace(/\bfl\.? ?oz\b/g, 'floz');
  const words = outside
    .replace(/\d+[\d./-]*\s*("|inch(es)?|cm)?/g, ' ')
    .split(/[^a-z-]+/)
    .filter((w) => w !== '' && w !== '-');
  const [first, ...others] = words;
  if (first === undefined) return null;
  const size = words.map((w) => sizes[w]).find((s) => s !== undefined) ?? null;
  const head = first === 'floz' ? 'fl oz' : foldWord(first);
  const states = others.filter((w) => !fillers.has(w) && sizes[w] === undefined).map(foldWord);
  const volume = volumes[head];
  if (volume !== undefined) return { count, unit: volume, kind: 'volume', size, states, isYield, withRefuse };
  const mass = masses[head];
  if (mass !== undefined) return { count, unit: mass, kind: 'mass', size, states, isYield, withRefuse };
  // "1 large potato", "1 potato, large": the noun is the unit, "1 large" alone is a piece.
  const noun = sizes[head] !== undefined ? (states[0] ?? 'piece') : head;
  return { count, unit: noun, kind: 'count', size, states: states.filter((s) => s !== noun), isYield, withRefuse };
}
