import type { Unit } from '../quantity/index.ts';

/** How finely a cook measures: whole eggs, quarter spoons, fives of grams. */
export type RoundingKind = 'egg' | 'piece' | 'pack' | 'spoon' | 'cup' | 'gram' | 'kilo' | 'ounce' | 'pound' | 'length' | 'vague';

/** A rung of the ladder: up to `below`, in steps of `step`. */
interface Rung {
  readonly below: number;
  readonly steps: readonly number[];
}

const thirds = [1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4, 1] as const;
const every = (step: number): readonly number[] => [step];

/** Common practice, no source: what a kitchen can measure or cut. */
const ladders: Readonly<Record<RoundingKind, readonly Rung[]>> = {
  egg: [{ below: 0.75, steps: [0.5] }, { below: Infinity, steps: every(1) }],
  piece: [{ below: 1, steps: thirds }, { below: 4, steps: every(0.5) }, { below: Infinity, steps: every(1) }],
  pack: [{ below: 1, steps: thirds }, { below: 6, steps: every(0.5) }, { below: Infinity, steps: every(1) }],
  spoon: [{ below: 0.25, steps: [1 / 8, 1 / 4] }, { below: 2, steps: every(0.25) }, { below: 6, steps: every(0.5) }, { below: Infinity, steps: every(1) }],
  cup: [{ below: 1, steps: thirds }, { below: 3, steps: every(0.25) }, { below: 8, steps: every(0.5) }, { below: Infinity, steps: every(1) }],
  gram: [{ below: 1, steps: every(0.1) }, { below: 5, steps: every(0.5) }, { below: 30, steps: every(1) }, { below: 250, steps: every(5) }, { below: 1000, steps: every(10) }, { below: 5000, steps: every(50) }, { below: Infinity, steps: every(100) }],
  kilo: [{ below: 1, steps: every(0.01) }, { below: 3, steps: every(0.05) }, { below: Infinity, steps: every(0.1) }],
  ounce: [{ below: 1, steps: every(0.25) }, { below: 12, steps: every(0.5) }, { below: Infinity, steps: every(1) }],
  pound: [{ below: 4, steps: every(0.25) }, { below: Infinity, steps: every(0.5) }],
  length: [{ below: 1, steps: every(0.25) }, { below: 10, steps: every(0.5) }, { below: Infinity, steps: every(1) }],
  vague: [{ below: 1, steps: every(0.5) }, { below: 4, steps: every(0.5) }, { below: Infinity, steps: every(1) }],
};

/** Finest amount of each kind; smaller amounts are kept to three figures, as no kitchen step is near. */
const finest = (kind: RoundingKind): number => Math.min(...(ladders[kind][0]?.steps ?? [1]));

const threeFigures = (value: number): number => Number(value.toPrecision(3));

/** The amount that a cook would measure, in the same unit; never 0 for something. */
export function cookRound(value: number, kind: RoundingKind): number {
  if (!(value > 0) || !Number.isFinite(value)) return value;
  if (value < finest(kind) * 0.8) return kind === 'egg' ? 0.5 : threeFigures(value);
  const rung = ladders[kind].find((r) => value < r.below) ?? ladders[kind].at(-1)!;
  if (rung.steps.length > 1) return rung.steps.reduce((best, step) => (Math.abs(step - value) < Math.abs(best - value) ? step : best));
  const step = rung.steps[0] ?? 1;
  return Number((Math.max(1, Math.round(value / step)) * step).toFixed(4));
}

const grams = new Set(['g', 'ml', 'mg']);
const packs = new Set(['tin', 'jar', 'packet', 'bag', 'sachet', 'box', 'bottle', 'carton', 'tub', 'tube', 'punnet', 'pouch', 'tray', 'cube', 'ball', 'block']);

/** How a unit is rounded; null stands for bare pieces. */
export function roundingKind(unit: Unit | null, isEgg: boolean): RoundingKind {
  if (unit === null || unit.id === 'piece') return isEgg ? 'egg' : 'piece';
  if (unit.vague) return 'vague';
  if (packs.has(unit.id)) return 'pack';
  if (unit.spoon && unit.id !== 'cup') return 'spoon';
  if (grams.has(unit.id)) return 'gram';
  switch (unit.kind) {
    case 'mass': return unit.id === 'lb' || unit.id === 'stone' ? 'pound' : unit.id === 'oz' ? 'ounce' : 'kilo';
    case 'volume': return unit.id === 'l' || unit.id === 'dl' || unit.id === 'cl' ? 'kilo' : 'cup';
    case 'length': return 'length';
    case 'count': return 'piece';
  }
}

const fractions: readonly (readonly [number, string])[] = [[1 / 8, '⅛'], [1 / 4, '¼'], [1 / 3, '⅓'], [1 / 2, '½'], [2 / 3, '⅔'], [3 / 4, '¾']];

/** A number as a recipe prints it: 1½, ¼, 250, 0.8. */
export function quantityText(value: number): string {
  const whole = Math.floor(value + 1e-9);
  const rest = value - whole;
  if (Math.abs(rest) < 1e-6) return String(whole);
  const sign = fractions.find(([size]) => Math.abs(size - rest) < 0.0006)?.[1];
  if (sign !== undefined && whole < 20) return whole === 0 ? sign : `${whole}${sign}`;
  return String(threeFigures(value));
}
