import { AppError } from '../../errors.ts';

/** Mass in grams, volume in millilitres, length in centimetres; a count has no size of its own. */
export type UnitKind = 'mass' | 'volume' | 'length' | 'count';

/** Whose cups, spoons and pints are meant: `us` is customary, `us-label` the rounded sizes of US food labels. */
export const measureSystems = ['uk', 'us', 'us-label', 'au', 'metric'] as const;
export type MeasureSystem = (typeof measureSystems)[number];

export interface UnitSize {
  /** Grams, millilitres or centimetres, by the unit's kind. */
  readonly value: number;
  /** Half the usual range as a share of the value; 0 where the unit is defined. */
  readonly spread: number;
  readonly source: string;
  readonly locator: string;
}

/** One unit of data/units.yaml. */
export interface Unit {
  readonly id: string;
  readonly kind: UnitKind;
  readonly one: string;
  readonly many: string;
  /** Spellings in lower case. */
  readonly words: readonly string[];
  /** Spellings told apart by case: `T` a tablespoon, `t` a teaspoon. */
  readonly exactWords: readonly string[];
  /** A hand or eye measure: "a pinch". */
  readonly vague: boolean;
  /** A weight before it is the weight of one: "400 g tin". */
  readonly container: boolean;
  /** The same for a piece of food: "200 g block". */
  readonly holds: boolean;
  /** Behind the food it is part of the name: "chicken thighs". */
  readonly inName: boolean;
  /** May be scant, level or heaped. */
  readonly spoon: boolean;
  readonly sizes: Readonly<Partial<Record<MeasureSystem | 'any', UnitSize>>>;
}

export interface UnitTable {
  readonly units: readonly Unit[];
  find(id: string): Unit | null;
  /** The unit with that id; throws `unknown-unit`. */
  get(id: string): Unit;
  /** Grams, millilitres or centimetres in one unit; null for a count. Throws `unknown-unit`. */
  size(id: string, measures: MeasureSystem): UnitSize | null;
  /** The unit written so: words with single spaces between them, in any case. */
  spelled(phrase: string): Unit | null;
}

export function unitTable(units: readonly Unit[]): UnitTable {
  const byId = new Map(units.map((unit) => [unit.id, unit]));
  const byWord = new Map(units.flatMap((unit) => unit.words.map((word) => [word, unit])));
  const byExactWord = new Map(units.flatMap((unit) => unit.exactWords.map((word) => [word, unit])));
  const get = (id: string): Unit => {
    const unit = byId.get(id);
    if (!unit) throw new AppError('unknown-unit', { id });
    return unit;
  };
  return {
    units,
    get,
    find: (id) => byId.get(id) ?? null,
    size(id, measures) {
      const { sizes } = get(id);
      return sizes[measures] ?? sizes.any ?? null;
    },
    spelled: (phrase) => byExactWord.get(phrase) ?? byWord.get(phrase.toLowerCase()) ?? null,
  };
}

/** Whether the text names a system of measures. */
export function isMeasureSystem(text: string): text is MeasureSystem {
  return (measureSystems as readonly string[]).includes(text);
}
