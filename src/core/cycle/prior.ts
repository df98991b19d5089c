import type { CycleModel } from './model.ts';

/** The multiplier of a woman's spread at an age (years), by straight lines between the tabled ages. */
export function spreadFactor(model: CycleModel, age: number): number {
  const table = model.parameters.ownSpread.byAge;
  const first = table[0]!;
  if (age <= first.age) return first.factor;
  for (let i = 1; i < table.length; i += 1) {
    const [a, b] = [table[i - 1]!, table[i]!];
    if (age <= b.age) return a.factor + ((b.factor - a.factor) * (age - a.age)) / (b.age - a.age);
  }
  return table[table.length - 1]!.factor;
}

/** Prior weights of every state: their logarithms, and what each is multiplied by where ranges are drawn. */
export interface Prior {
  readonly log: Float64Array;
  readonly rangeFactor: Float64Array;
}

const remembered = new WeakMap<CycleModel, Map<number | null, Prior>>();

/**
 * The prior for a woman of this age in years (null: not known, the population's middle age and
 * no age factor). Ranges are drawn with women's spreads taken as more varied (forecast-range.ts).
 * Worked out once for each age.
 */
export function priorFor(model: CycleModel, age: number | null): Prior {
  let known = remembered.get(model);
  if (!known) remembered.set(model, (known = new Map<number | null, Prior>()));
  let prior = known.get(age);
  if (!prior) {
    const log = workOutPrior(model, age, false);
    prior = { log, rangeFactor: workOutPrior(model, age, true).map((range, s) => Math.exp(Math.min(300, range - log[s]!))) };
    known.set(age, prior);
  }
  return prior;
}

function workOutPrior(model: CycleModel, age: number | null, forRange: boolean): Float64Array {
  const { typicalLength: place, missedEntry, range } = model.parameters;
  const ownSpread = forRange ? { ...model.parameters.ownSpread, median: range.spreadMedian, logDeviation: range.spreadLogDeviation } : model.parameters.ownSpread;
  const years = age === null ? 0 : Math.min(place.ageTo, Math.max(place.ageFrom, age)) - place.ageMiddle;
  const move = place.perYear * years;
  const factor = age === null ? 1 : spreadFactor(model, age);
  const nS = model.spreads.length;
  const keepers = missedEntry.length;
  const out = new Float64Array(model.cells * keepers);
  const lengthWeights = new Float64Array(model.typical.length);
  model.typical.forEach((m, t) => {
    const step = ((model.typical[t + 1] ?? 2 * m - model.typical[t - 1]!) - (model.typical[t - 1] ?? 2 * m - model.typical[t + 1]!)) / 2;
    let density = 0;
    for (const bell of place.bells) density += (bell.weight / bell.deviation) * Math.exp(-0.5 * ((m - bell.mean - move) / bell.deviation) ** 2);
    lengthWeights[t] = density * step;
  });
  model.typical.forEach((m, t) => {
    const centre = Math.log(ownSpread.median * factor) + ownSpread.lengthSlope * Math.log(Math.max(m, ownSpread.lengthReference) / ownSpread.lengthReference);
    let total = 0;
    const bySpread = Float64Array.from(model.spreads, (s) => {
      const w = Math.exp(-0.5 * ((Math.log(s) - centre) / ownSpread.logDeviation) ** 2);
      total += w;
      return w;
    });
    for (let s = 0; s < nS; s += 1)
      for (let k = 0; k < keepers; k += 1) out[(t * nS + s) * keepers + k] = Math.log(lengthWeights[t]! * (bySpread[s]! / total) * missedEntry[k]!.weight + 1e-300);
  });
  return out;
}
