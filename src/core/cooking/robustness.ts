import { seededRandom, type RandomSource } from '../quantity/index.ts';
import { latestBounds, type SolvedPlan } from './cook-plan.ts';
import { finalSteps, plannedMinutes } from './kitchen-model.ts';
import type { KitchenRules } from './kitchen.ts';
import { latestStarts, type OrderEdge } from './order-graph.ts';
import { goalObjective } from './stages.ts';
import { objectiveValue } from './solve/plan-model.ts';

/** What happens over many simulated evenings on which steps take as long as they do. All shares are 0 to 1. */
export interface Robustness {
  readonly runs: number;
  readonly seed: number;
  /** Share of evenings on which everything was ready by the planned minute. */
  readonly onTime: number;
  /** Minutes late on nine evenings in ten at most (0.9 quantile), and in the middle one (median). */
  readonly lateAtMost: number;
  readonly lateMedian: number;
  /** Share of evenings on which something had to wait longer than it may. */
  readonly waitedTooLong: number;
  /** Per step: idle minutes placed behind it, share of evenings it began late, and its start at the 0.9 quantile minus the plan. */
  readonly steps: ReadonlyMap<string, { readonly buffer: number; readonly beganLate: number; readonly slip: number }>;
}

export interface Chance {
  readonly seed: number;
  readonly runs: number;
}

/** Triangular on [low, high] with its peak at `mode`, by inversion. */
function triangular(low: number, mode: number, high: number, random: RandomSource): number {
  const u = random.uniform();
  if (high <= low) return mode;
  const turn = (mode - low) / (high - low);
  return u < turn ? low + Math.sqrt(u * (high - low) * (mode - low)) : high - Math.sqrt((1 - u) * (high - low) * (high - mode));
}

/** One row of minutes per activity for each simulated evening: triangular between the shortest, usual and longest time of the step. */
function drawn(plan: SolvedPlan, rules: KitchenRules, chance: Chance): Float64Array[] {
  const random = seededRandom(chance.seed);
  const { kitchen } = plan;
  return Array.from({ length: chance.runs }, () => {
    const row = Float64Array.from(kitchen.model.activities, (activity) => activity.duration);
    for (const step of kitchen.steps) {
      const usual = kitchen.minutes.get(step.id)!;
      const low = Math.min(usual, plannedMinutes(step, kitchen.way, rules, 'low'));
      const high = Math.max(usual, plannedMinutes(step, kitchen.way, rules, 'high'));
      const factor = triangular(low, usual, high, random) / usual;
      for (const part of kitchen.pieces.get(step.id)!) if (kitchen.model.activities[part]!.earliest !== kitchen.model.activities[part]!.latest) row[part]! *= factor;
    }
    return row;
  });
}

/** The order of the plan laid flat: thousands of evenings run over it. */
interface Course {
  readonly order: Int32Array;
  /** Edges into the activity at place p of the order: from `first[p]` up to `first[p + 1]`. */
  readonly first: Int32Array;
  readonly from: Int32Array;
  readonly ticks: Int32Array;
  /** 1 where the ticks count from the end of `from`. */
  readonly fromEnd: Uint8Array;
}

function courseOf(plan: SolvedPlan): Course {
  const count = plan.starts.length;
  const into: OrderEdge[][] = Array.from({ length: count }, () => []);
  for (const edge of plan.edges) if (edge.afterEnd !== null || edge.ticks >= 0) into[edge.to]!.push(edge);
  const order = Int32Array.from(plan.starts.map((_, i) => i).sort((a, b) => plan.starts[a]! - plan.starts[b]! || a - b));
  const flat = [...order].flatMap((i) => into[i]!);
  const first = new Int32Array(count + 1);
  order.forEach((i, place) => (first[place + 1] = first[place]! + into[i]!.length));
  return {
    order,
    first,
    from: Int32Array.from(flat, (edge) => edge.from),
    ticks: Int32Array.from(flat, (edge) => edge.afterEnd ?? edge.ticks),
    fromEnd: Uint8Array.from(flat, (edge) => (edge.afterEnd === null ? 0 : 1)),
  };
}

/** Nothing begins before its planned minute, nor before what it waits for is over. */
function evening(course: Course, starts: readonly number[], minutes: Float64Array, actual = new Float64Array(starts.length)): Float64Array {
  const { order, first, from, ticks, fromEnd } = course;
  for (let place = 0; place < order.length; place += 1) {
    const i = order[place]!;
    let at = starts[i]!;
    for (let edge = first[place]!; edge < first[place + 1]!; edge += 1) {
      const before = from[edge]!;
      const ready = actual[before]! + ticks[edge]! + (fromEnd[edge] === 1 ? minutes[before]! : 0);
      if (ready > at) at = ready;
    }
    actual[i] = at;
  }
  return actual;
}

const grace = 0.5;

function onTimeShare(plan: SolvedPlan, course: Course, starts: readonly number[], rows: readonly Float64Array[]): number {
  const serves = [...plan.kitchen.serve.values()];
  let ok = 0;
  const actual = new Float64Array(starts.length);
  for (const row of rows) {
    evening(course, starts, row, actual);
    if (serves.every((serve) => actual[serve]! <= starts[serve]! + grace)) ok += 1;
  }
  return ok / rows.length;
}

/** Simulates the plan. The same seed gives the same answer. */
export function simulate(plan: SolvedPlan, rules: KitchenRules, chance: Chance): Robustness {
  const rows = drawn(plan, rules, chance);
  const course = courseOf(plan);
  const { kitchen, request, starts } = plan;
  const serves = [...kitchen.serve.values()];
  const late: number[] = [];
  const slips = new Map(kitchen.steps.map((step) => [step.id, [] as number[]]));
  let tooLong = 0;
  for (const row of rows) {
    const actual = evening(course, starts, row);
    late.push(Math.max(0, ...serves.map((serve) => actual[serve]! - starts[serve]!)));
    const endOf = (id: string): number => {
      const last = kitchen.pieces.get(id)!.at(-1)!;
      return actual[last]! + row[last]!;
    };
    const startOf = (id: string): number => actual[kitchen.pieces.get(id)![0]!]!;
    for (const step of kitchen.steps) slips.get(step.id)!.push(startOf(step.id) - starts[kitchen.pieces.get(step.id)![0]!]!);
    const links = kitchen.steps.some((step) => step.after.some((link) => link.within !== null && kitchen.pieces.has(link.step) && startOf(step.id) - endOf(link.step) > Math.max(link.within, link.wait) + 1));
    const holds = request.dishes.some((dish) => finalSteps(dish.steps).some((step) => actual[kitchen.serve.get(dish.servedAfter)!]! - endOf(step.id) > dish.hold + 1));
    if (links || holds) tooLong += 1;
  }
  const sorted = [...late].sort((a, b) => a - b);
  const quantile = (list: readonly number[], share: number): number => list[Math.min(list.length - 1, Math.floor(share * list.length))] ?? 0;
  const steps = new Map(
    kitchen.steps.map((step) => {
      const own = slips.get(step.id)!.sort((a, b) => a - b);
      const buffer = plan.buffers[kitchen.pieces.get(step.id)!.at(-1)!] ?? 0;
      return [step.id, { buffer, beganLate: own.filter((slip) => slip > grace).length / own.length, slip: Math.round(quantile(own, 0.9)) }];
    }),
  );
  return {
    runs: chance.runs,
    seed: chance.seed,
    onTime: late.filter((minutes) => minutes <= grace).length / late.length,
    lateAtMost: Math.round(quantile(sorted, 0.9)),
    lateMedian: Math.round(quantile(sorted, 0.5)),
    waitedTooLong: tooLong / rows.length,
    steps,
  };
}

/**
 * Puts idle minutes behind the steps where they raise the chance of being on time most for what they cost in waiting and total time,
 * one or three minutes at a time, until the target is reached or nothing helps any more. The order of the plan stays; every limit is kept.
 */
export function withSlack(plan: SolvedPlan, rules: KitchenRules, chance: Chance): SolvedPlan {
  const rows = drawn(plan, rules, chance);
  const course = courseOf(plan);
  const { kitchen, request } = plan;
  const waiting = goalObjective('waiting', kitchen, request, new Map());
  const total = goalObjective('total', kitchen, request, new Map())!;
  const price = (starts: readonly number[]): number => (waiting ? objectiveValue(waiting, starts) : 0) + 0.25 * objectiveValue(total, starts);
  const latest = latestBounds(plan);
  const candidates = kitchen.steps.filter((step) => step.minutes.high > step.minutes.value).map((step) => kitchen.pieces.get(step.id)!.at(-1)!);
  let current = plan;
  let share = onTimeShare(plan, course, plan.starts, rows);
  for (let round = 0; round < 30 && share < rules.onTimeTarget; round += 1) {
    let best: { plan: SolvedPlan; share: number; score: number } | null = null;
    for (const activity of candidates) {
      for (const more of [1, 3]) {
        const buffers = current.buffers.map((minutes, i) => (i === activity ? minutes + more : minutes));
        const starts = latestStarts(plan.edges, latest, buffers);
        if (!starts || starts.some((at, i) => at < kitchen.model.activities[i]!.earliest)) continue;
        const next = onTimeShare(plan, course, starts, rows);
        const gain = next - share;
        const score = gain / (1 + Math.max(0, price(starts) - price(current.starts)));
        if (gain > 0.004 && (!best || score > best.score)) best = { plan: { ...current, starts, buffers }, share: next, score };
      }
    }
    if (!best) break;
    current = best.plan;
    share = best.share;
  }
  return current;
}
