import { seededRandom, type RandomSource } from '../../src/core/quantity/index.ts';
import type { PlanModel } from '../../src/core/cooking/index.ts';

export interface ProgenCell {
  readonly jobs: number;
  readonly complexity: number;
  readonly factor: number;
  readonly strength: number;
}

/** The full design of the j30 set: Kolisch, Sprecher & Drexl 1995, table 2 (single mode). */
export const designCells: readonly ProgenCell[] = [1.5, 1.8, 2.1].flatMap((complexity) =>
  [0.25, 0.5, 0.75, 1].flatMap((factor) => [0.2, 0.5, 0.7, 1].map((strength) => ({ jobs: 30, complexity, factor, strength }))),
);

/**
 * A project drawn after the published design of ProGen (Kolisch, Sprecher & Drexl 1995, "Characterization and generation of a
 * general class of resource-constrained project scheduling problems"): our own code, so the instances are not those of the library.
 */
export function progen(cell: ProgenCell, seed: number): PlanModel {
  const random = seededRandom(seed);
  const durations = [0, ...Array.from({ length: cell.jobs }, () => pick(random, 1, 10)), 0];
  const successors = network(cell, random);
  const demands = requests(cell, random);
  const starts = earliest(successors, durations);
  const capacities = [0, 1, 2, 3].map((r) => {
    const least = Math.max(1, ...demands.map((row) => row[r]!));
    const peak = Math.max(...starts.map((_, t) => starts.reduce((sum, s, j) => (s <= t && t < s + durations[j]! ? sum + demands[j]![r]! : sum), 0)), ...usage(starts, durations, demands, r));
    return least + Math.round(cell.strength * Math.max(0, peak - least));
  });
  const horizon = durations.reduce((a, b) => a + b, 0);
  return {
    activities: durations.map((duration, i) => ({ id: String(i + 1), duration, earliest: 0, latest: horizon })),
    resources: capacities.map((capacity, r) => ({ id: `R${r + 1}`, capacity })),
    uses: demands.flatMap((row, i) => row.flatMap((demand, resource) => (demand > 0 && durations[i]! > 0 ? [{ resource, from: i, to: i, demand }] : []))),
    lags: successors.flatMap((list, i) => [...list].map((to) => ({ from: i, to, ticks: durations[i]! }))),
    choices: [],
    limits: [],
    horizon,
  };
}

function pick(random: RandomSource, low: number, high: number): number {
  return low + Math.floor(random.uniform() * (high - low + 1));
}

function usage(starts: readonly number[], durations: readonly number[], demands: readonly (readonly number[])[], resource: number): number[] {
  const end = Math.max(...starts.map((s, j) => s + durations[j]!));
  return Array.from({ length: end }, (_, t) => starts.reduce((sum, s, j) => (s <= t && t < s + durations[j]! ? sum + demands[j]![resource]! : sum), 0));
}

function earliest(successors: readonly ReadonlySet<number>[], durations: readonly number[]): number[] {
  const starts = durations.map(() => 0);
  for (let i = 0; i < starts.length; i += 1) for (const to of successors[i]!) starts[to] = Math.max(starts[to]!, starts[i]! + durations[i]!);
  return starts;
}

/** Arcs without redundancy: three first and three last jobs, at most three arcs in and out, `complexity` arcs a node on average. */
function network(cell: ProgenCell, random: RandomSource): Set<number>[] {
  const last = cell.jobs + 1;
  const out: Set<number>[] = Array.from({ length: last + 1 }, () => new Set());
  const into: Set<number>[] = Array.from({ length: last + 1 }, () => new Set());
  const reach = (from: number, to: number): boolean => from === to || [...out[from]!].some((next) => next <= to && reach(next, to));
  const join = (from: number, to: number): void => {
    out[from]!.add(to);
    into[to]!.add(from);
  };
  const redundant = (from: number, to: number): boolean =>
    reach(from, to) ||
    [...out[from]!].some((next) => reach(next, to)) ||
    // would make an existing arc redundant: p → q with p reaching from and to reaching q
    out.some((list, p) => reach(p, from) && [...list].some((q) => !(p === from && q === to) && reach(to, q) && !(q === to && p === from)));
  for (let j = 1; j <= 3; j += 1) {
    join(0, j);
    join(cell.jobs + 1 - j, last);
  }
  for (let j = 4; j <= cell.jobs; j += 1) {
    const options = Array.from({ length: j - 1 }, (_, k) => k + 1).filter((i) => i <= cell.jobs - 3 && out[i]!.size < 3 && !redundant(i, j));
    const chosen = options[pick(random, 0, options.length - 1)];
    if (chosen !== undefined) join(chosen, j);
  }
  for (let i = cell.jobs - 3; i >= 1; i -= 1) {
    if (out[i]!.size > 0) continue;
    const options = Array.from({ length: cell.jobs - i }, (_, k) => i + 1 + k).filter((j) => j > 3 && into[j]!.size < 3 && !redundant(i, j));
    const chosen = options[pick(random, 0, options.length - 1)];
    if (chosen === undefined) join(i, last);
    else join(i, chosen);
  }
  const wanted = Math.round(cell.complexity * (cell.jobs + 2));
  let arcs = out.reduce((sum, list) => sum + list.size, 0);
  for (let tries = 0; arcs < wanted && tries < 20000; tries += 1) {
    const from = pick(random, 1, cell.jobs - 3);
    const to = pick(random, Math.max(4, from + 1), cell.jobs);
    if (out[from]!.size >= 3 || into[to]!.size >= 3 || redundant(from, to)) continue;
    join(from, to);
    arcs += 1;
  }
  for (let j = 1; j <= cell.jobs; j += 1) {
    if (into[j]!.size === 0) join(0, j);
    if (out[j]!.size === 0) join(j, last);
  }
  return out;
}

/** Demands 1 to 10 on a share `factor` of the job and resource pairs, each job at least one. */
function requests(cell: ProgenCell, random: RandomSource): number[][] {
  const rows = Array.from({ length: cell.jobs + 2 }, () => [0, 0, 0, 0]);
  const free: [number, number][] = [];
  for (let j = 1; j <= cell.jobs; j += 1) {
    const own = pick(random, 0, 3);
    rows[j]![own] = pick(random, 1, 10);
    for (let r = 0; r < 4; r += 1) if (r !== own) free.push([j, r]);
  }
  let left = Math.round(cell.factor * 4 * cell.jobs) - cell.jobs;
  while (left > 0 && free.length > 0) {
    const at = pick(random, 0, free.length - 1);
    const [j, r] = free.splice(at, 1)[0]!;
    rows[j]![r] = pick(random, 1, 10);
    left -= 1;
  }
  return rows;
}
