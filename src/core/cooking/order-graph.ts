import type { PlanModel } from './solve/plan-model.ts';

/** start(to) ≥ start(from) + ticks, and whether `ticks` counts from the end of `from` (then a longer step pushes). */
export interface OrderEdge {
  readonly from: number;
  readonly to: number;
  readonly ticks: number;
  /** Ticks after the end of `from`; null when the edge does not hang on its duration. */
  readonly afterEnd: number | null;
}

/** Units of one resource handed out in order of time: for each use the numbers it gets, from 1. */
export function handOut(model: PlanModel, starts: readonly number[], resource: number): ReadonlyMap<number, readonly number[]> {
  const freeAt = new Array<number>(model.resources[resource]!.capacity).fill(Number.NEGATIVE_INFINITY);
  const given = new Map<number, number[]>();
  const uses = model.uses
    .map((use, index) => ({ use, index, start: starts[use.from]!, end: starts[use.to]! + model.activities[use.to]!.duration }))
    .filter(({ use, start, end }) => use.resource === resource && end > start)
    .sort((a, b) => a.start - b.start || a.end - b.end);
  for (const { use, index, start, end } of uses) {
    // The unit that has been free the shortest keeps the others free for longer stretches.
    const free = freeAt.map((at, unit) => ({ at, unit })).filter((entry) => entry.at <= start).sort((a, b) => b.at - a.at || a.unit - b.unit).slice(0, use.demand);
    for (const { unit } of free) freeAt[unit] = end;
    given.set(index, free.map((entry) => entry.unit + 1).sort((a, b) => a - b));
  }
  return given;
}

/**
 * The plan as a partial order: its lags, the chosen side of each choice, and who hands which unit to whom.
 * Any starts that keep these edges keep every resource (Policella et al. 2004).
 */
export function orderEdges(model: PlanModel, starts: readonly number[]): OrderEdge[] {
  const edge = (lag: { from: number; to: number; ticks: number }): OrderEdge => {
    const rest = lag.ticks - model.activities[lag.from]!.duration;
    return { ...lag, afterEnd: rest >= 0 ? rest : null };
  };
  const edges = model.lags.map(edge);
  for (const choice of model.choices) {
    const { first, second } = choice;
    edges.push(edge(starts[first.from]! + first.ticks <= starts[first.to]! ? first : second));
  }
  model.resources.forEach((_, resource) => {
    const given = handOut(model, starts, resource);
    const order = [...given].sort((a, b) => starts[model.uses[a[0]]!.from]! - starts[model.uses[b[0]]!.from]!);
    const lastOf = new Map<number, number>();
    for (const [index, units] of order) {
      const use = model.uses[index]!;
      for (const unit of units) {
        const before = lastOf.get(unit);
        if (before !== undefined && before !== use.from) edges.push({ from: before, to: use.from, ticks: model.activities[before]!.duration, afterEnd: 0 });
        lastOf.set(unit, use.to);
      }
    }
  });
  return edges;
}

/**
 * The latest starts that keep every edge and do not pass `latest`, with `buffers` of idle ticks after each activity.
 * Null when a greatest distance leaves no room for the buffers.
 */
export function latestStarts(edges: readonly OrderEdge[], latest: readonly number[], buffers: readonly number[]): number[] | null {
  const starts = [...latest];
  for (let round = 0; round <= starts.length; round += 1) {
    let changed = false;
    for (const edge of edges) {
      const most = starts[edge.to]! - edge.ticks - (edge.afterEnd === null ? 0 : (buffers[edge.from] ?? 0));
      if (starts[edge.from]! > most) {
        starts[edge.from] = most;
        changed = true;
      }
    }
    if (!changed) return starts;
  }
  return null;
}
