import type { EitherOr, PlanModel } from './plan-model.ts';

/** More pairs than this slow the search more than they help (measured on the drawn j30 projects). */
const mostPairs = 800;
/** Beyond this many activities the closure of the lags costs too much. */
const mostActivities = 250;

/** Longest lag from each activity to each other, −Infinity where none (Floyd 1962, Warshall 1962). */
function longestLags(model: PlanModel): Float64Array[] {
  const count = model.activities.length;
  const rows = model.activities.map((_, i) => {
    const row = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
    row[i] = 0;
    return row;
  });
  for (const lag of model.lags) rows[lag.from]![lag.to] = Math.max(rows[lag.from]![lag.to]!, lag.ticks);
  for (let k = 0; k < count; k += 1) {
    for (let i = 0; i < count; i += 1) {
      const through = rows[i]![k]!;
      if (through === Number.NEGATIVE_INFINITY) continue;
      for (let j = 0; j < count; j += 1) if (through + rows[k]![j]! > rows[i]![j]!) rows[i]![j] = through + rows[k]![j]!;
    }
  }
  return rows;
}

/** Pairs of uses that are too much for a resource together, as "one before the other": true anyway, but good to learn about. */
export function clashingPairs(model: PlanModel): EitherOr[] {
  if (model.activities.length > mostActivities) return [];
  const lags = longestLags(model);
  const pairs = new Map<string, EitherOr>();
  model.resources.forEach((resource, r) => {
    // A use that may last no time at all can sit inside another.
    const uses = model.uses.filter((use) => use.resource === r && use.demand > 0 && lags[use.from]![use.to]! + model.activities[use.to]!.duration > 0);
    uses.forEach((a, i) =>
      uses.slice(i + 1).forEach((b) => {
        if (a.demand + b.demand <= resource.capacity) return;
        const aTail = model.activities[a.to]!.duration;
        const bTail = model.activities[b.to]!.duration;
        if (lags[a.to]![b.from]! >= aTail || lags[b.to]![a.from]! >= bTail) return;
        pairs.set(`${a.from} ${a.to} ${b.from} ${b.to}`, { first: { from: a.to, to: b.from, ticks: aTail }, second: { from: b.to, to: a.from, ticks: bTail } });
      }),
    );
  });
  return pairs.size > mostPairs ? [] : [...pairs.values()];
}
