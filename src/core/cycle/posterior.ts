import { longestCycle, longestLuteal, type CycleModel } from './model.ts';
import { priorFor } from './prior.ts';

/** One gap between two neighbouring recorded starts, oldest first. */
export interface ToldCycle {
  /** Whole days from one recorded start to the next. */
  readonly length: number;
  /** Day of ovulation, day 1 the first of the period; null when not known. */
  readonly ovulationDay: number | null;
  /** How far the length may be off either way (days) because a start is only roughly known. */
  readonly slack: number;
}

/** What the record says about a woman: weights over the model's cells, summing to one. */
export interface Posterior {
  readonly model: CycleModel;
  /** Cells with more than a trace of weight, and their weights. */
  readonly cells: Int32Array;
  readonly weights: Float64Array;
  /** The same under the wider prior of spreads that ranges are drawn with. */
  readonly rangeWeights: Float64Array;
  /** Per kept cell and luteal mean, the share of the cell's weight; null when no ovulation of hers is known. */
  readonly luteal: Float64Array | null;
  /** Chance that any one start goes unrecorded, given her record. */
  readonly missedChance: number;
  /** Gaps used; those longer than the model can tell are left out. */
  readonly cyclesUsed: number;
}

export interface Told {
  readonly cycles: readonly ToldCycle[];
  /** Years; null when not known. */
  readonly age: number | null;
}

/** Weight of a gap's evidence: the newest 1, halved every half-life. */
export function recencyWeight(model: CycleModel, cyclesAgo: number): number {
  return 2 ** (-cyclesAgo / model.parameters.recencyHalfLife);
}

/** Bayes's rule over the grid: prior for her age, times the chance of each gap she recorded. */
export function posterior(model: CycleModel, told: Told): Posterior {
  const prior = priorFor(model, told.age);
  const evidence = new Float64Array(prior.log.length);
  const used = addGaps(model, told.cycles, evidence);
  const main = stateWeights(prior.log, evidence);
  const range = new Float64Array(main.length);
  let total = 0;
  for (let s = 0; s < main.length; s += 1) total += range[s] = main[s]! * prior.rangeFactor[s]!;
  for (let s = 0; s < main.length; s += 1) range[s]! /= total;
  return gather(model, told, { main, range }, used);
}

/** Adds the log chance of every gap; gives how many were used. */
function addGaps(model: CycleModel, cycles: readonly ToldCycle[], log: Float64Array): number {
  const longest = model.parameters.longestTold;
  // Gaps of one length share a row: their weights are summed first.
  const exact = new Map<number, number>();
  let used = 0;
  cycles.forEach((cycle, i) => {
    if (cycle.length < 1 || cycle.length > longest) return;
    used += 1;
    const weight = recencyWeight(model, cycles.length - 1 - i);
    if (cycle.slack === 0) exact.set(cycle.length, (exact.get(cycle.length) ?? 0) + weight);
    else addRoughGap(model, cycle, log, weight);
  });
  for (const [length, weight] of exact) addWeighted(log, model.logRecorded, length * log.length, weight);
  return used;
}

function addWeighted(log: Float64Array, table: Float64Array, row: number, weight: number): void {
  for (let s = 0; s < log.length; s += 1) log[s]! += weight * table[row + s]!;
}

/** A gap known only within `slack` days: its chances averaged, the middle counting most. */
function addRoughGap(model: CycleModel, cycle: ToldCycle, log: Float64Array, weight: number): void {
  const states = log.length;
  const mean = new Float64Array(states);
  let total = 0;
  for (let d = -cycle.slack; d <= cycle.slack; d += 1) {
    const g = cycle.length + d;
    if (g < 1 || g > model.parameters.longestTold) continue;
    const w = cycle.slack + 1 - Math.abs(d);
    total += w;
    for (let s = 0; s < states; s += 1) mean[s]! += w * Math.exp(model.logRecorded[g * states + s]!);
  }
  for (let s = 0; s < states; s += 1) log[s]! += weight * Math.log(mean[s]! / total);
}

/** Prior times evidence, summing to one. */
function stateWeights(prior: Float64Array, evidence: Float64Array): Float64Array {
  const weights = new Float64Array(prior.length);
  let top = -Infinity;
  for (let s = 0; s < prior.length; s += 1) top = Math.max(top, (weights[s] = prior[s]! + evidence[s]!));
  let total = 0;
  for (let s = 0; s < prior.length; s += 1) {
    // Weights under e^-30 of the best are naught to any figure shown.
    const w = weights[s]! - top < -30 ? 0 : Math.exp(weights[s]! - top);
    total += (weights[s] = w);
  }
  for (let s = 0; s < prior.length; s += 1) weights[s]! /= total;
  return weights;
}

/** Sums the record keepers out and keeps the cells that carry weight. */
function gather(model: CycleModel, told: Told, states: { main: Float64Array; range: Float64Array }, used: number): Posterior {
  const keepers = model.parameters.missedEntry;
  const k = keepers.length;
  const kept: number[] = [];
  const main: number[] = [];
  const range: number[] = [];
  let missed = 0;
  for (let cell = 0; cell < model.cells; cell += 1) {
    let a = 0;
    let b = 0;
    for (let j = 0; j < k; j += 1) {
      const w = states.main[cell * k + j]!;
      a += w;
      b += states.range[cell * k + j]!;
      missed += w * keepers[j]!.chance;
    }
    if (a < 1e-5 && b < 1e-5) continue;
    kept.push(cell);
    main.push(a);
    range.push(b);
  }
  const cells = Int32Array.from(kept);
  const weights = Float64Array.from(main);
  const rangeWeights = Float64Array.from(range);
  const before = weights.slice();
  const luteal = told.cycles.some((c) => c.ovulationDay !== null) ? addOvulations(model, told, cells, weights) : null;
  if (luteal) for (let i = 0; i < cells.length; i += 1) rangeWeights[i]! *= before[i]! > 0 ? weights[i]! / before[i]! : 0;
  for (const w of [weights, rangeWeights]) {
    const sum = w.reduce((a, b) => a + b, 0);
    for (let i = 0; i < w.length; i += 1) w[i]! /= sum;
  }
  return { model, cells, weights, rangeWeights, luteal, missedChance: missed, cyclesUsed: used };
}

/**
 * Where ovulation days are known, the length's own chance is replaced by that of its two parts.
 * Changes `weights` in place; gives each cell's shares over luteal means.
 */
function addOvulations(model: CycleModel, told: Told, cells: Int32Array, weights: Float64Array): Float64Array {
  const nL = model.luteals.length;
  const nS = model.spreads.length;
  const width = longestCycle + 1;
  const n = told.cycles.length;
  const known = told.cycles.flatMap((cycle, i) => {
    const luteal = cycle.ovulationDay === null ? 0 : cycle.length - cycle.ovulationDay;
    return cycle.ovulationDay !== null && luteal >= 1 && luteal <= longestLuteal && cycle.length <= longestCycle ? [{ ...cycle, ovulationDay: cycle.ovulationDay, luteal, weight: recencyWeight(model, n - 1 - i) }] : [];
  });
  const shares = new Float64Array(cells.length * nL);
  const log = new Float64Array(cells.length * nL);
  let top = -Infinity;
  cells.forEach((cell, i) => {
    const t = Math.floor(cell / nS);
    const s = cell % nS;
    for (let l = 0; l < nL; l += 1) {
      let sum = Math.log(weights[i]! * model.lutealPrior[t * nL + l]! + 1e-300);
      for (const cycle of known) {
        const both = model.ovulation[(cell * nL + l) * width + cycle.ovulationDay]! * model.lutealLength[(s * nL + l) * (longestLuteal + 1) + cycle.luteal]!;
        sum += cycle.weight * (Math.log(both + 1e-7) - Math.log(model.length[cell * width + cycle.length]! + 1e-7));
      }
      log[i * nL + l] = sum;
      if (sum > top) top = sum;
    }
  });
  cells.forEach((_, i) => {
    let w = 0;
    for (let l = 0; l < nL; l += 1) w += Math.exp(log[i * nL + l]! - top);
    for (let l = 0; l < nL; l += 1) shares[i * nL + l] = w > 0 ? Math.exp(log[i * nL + l]! - top) / w : 1 / nL;
    weights[i] = w;
  });
  return shares;
}
