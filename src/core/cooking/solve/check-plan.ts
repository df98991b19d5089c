import { objectiveValue, type PlanModel } from './plan-model.ts';

export type PlanBreach =
  | { readonly kind: 'start-outside'; readonly activity: number }
  | { readonly kind: 'lag'; readonly lag: number; readonly short: number }
  | { readonly kind: 'choice'; readonly choice: number }
  | { readonly kind: 'limit'; readonly limit: number }
  | { readonly kind: 'over-capacity'; readonly resource: number; readonly tick: number; readonly used: number };

/** Every hard constraint that these starts break, tick by tick; empty for a sound plan. Written apart from the solver, to check it. */
export function checkPlan(model: PlanModel, starts: readonly number[]): readonly PlanBreach[] {
  const breaches: PlanBreach[] = [];
  const at = (activity: number): number => starts[activity] ?? Number.NaN;
  model.activities.forEach((activity, i) => {
    if (!(at(i) >= activity.earliest && at(i) <= activity.latest) || !Number.isInteger(at(i))) breaches.push({ kind: 'start-outside', activity: i });
  });
  const short = (lag: { from: number; to: number; ticks: number }): number => at(lag.from) + lag.ticks - at(lag.to);
  model.lags.forEach((lag, i) => {
    if (!(short(lag) <= 0)) breaches.push({ kind: 'lag', lag: i, short: short(lag) });
  });
  model.choices.forEach((choice, i) => {
    if (!(short(choice.first) <= 0 || short(choice.second) <= 0)) breaches.push({ kind: 'choice', choice: i });
  });
  model.limits.forEach((limit, i) => {
    if (!(objectiveValue(limit, starts) <= limit.atMost)) breaches.push({ kind: 'limit', limit: i });
  });
  model.resources.forEach((resource, r) => {
    const used = new Map<number, number>();
    for (const use of model.uses) {
      if (use.resource !== r) continue;
      const end = at(use.to) + (model.activities[use.to]?.duration ?? 0);
      for (let tick = at(use.from); tick < end; tick += 1) used.set(tick, (used.get(tick) ?? 0) + use.demand);
    }
    for (const [tick, total] of used) if (total > resource.capacity) breaches.push({ kind: 'over-capacity', resource: r, tick, used: total });
  });
  return breaches;
}
