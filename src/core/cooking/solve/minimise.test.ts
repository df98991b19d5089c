import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlan } from './check-plan.ts';
import { minimise } from './minimise.ts';
import { mirrored, mirroredObjective, mirroredStarts, objectiveValue, type PlanModel, type PlanObjective } from './plan-model.ts';

/** Every assignment of starts in turn: slow and plain, to hold the solver against. */
function bruteForce(model: PlanModel, objective: PlanObjective): number | null {
  let best: number | null = null;
  const starts: number[] = [];
  const visit = (i: number): void => {
    if (i === model.activities.length) {
      if (checkPlan(model, starts).length === 0) {
        const value = objectiveValue(objective, starts);
        if (best === null || value < best) best = value;
      }
      return;
    }
    const activity = model.activities[i]!;
    for (let at = activity.earliest; at <= Math.min(activity.latest, model.horizon); at += 1) {
      starts[i] = at;
      visit(i + 1);
    }
    starts.length = i;
  };
  visit(0);
  return best;
}

const count = 5;
const index = fc.integer({ min: 0, max: count - 1 });
const lag = fc.record({ from: index, to: index, ticks: fc.integer({ min: -5, max: 4 }) }).filter((l) => l.from !== l.to);
const puzzle = fc
  .record({
    durations: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: count, maxLength: count }),
    capacities: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 2, maxLength: 2 }),
    uses: fc.array(fc.record({ resource: fc.integer({ min: 0, max: 1 }), from: index, to: index, demand: fc.integer({ min: 1, max: 3 }) }), { maxLength: 7 }),
    lags: fc.array(lag, { maxLength: 5 }),
    choices: fc.array(fc.record({ first: lag, second: lag }), { maxLength: 2 }),
    weights: fc.array(fc.integer({ min: -2, max: 3 }), { minLength: count, maxLength: count }),
    limit: fc.record({ weights: fc.array(fc.integer({ min: -2, max: 2 }), { minLength: count, maxLength: count }), atMost: fc.integer({ min: -6, max: 12 }) }),
    horizon: fc.integer({ min: 3, max: 7 }),
  })
  .map(({ durations, capacities, uses, lags, choices, weights, limit, horizon }) => {
    // A use that spans activities must not end before it starts: the lag says so.
    const spans = uses.filter((use) => use.from !== use.to).map((use) => ({ from: use.from, to: use.to, ticks: -durations[use.to]! }));
    const model: PlanModel = {
      activities: durations.map((duration, i) => ({ id: `a${i}`, duration, earliest: 0, latest: horizon })),
      resources: capacities.map((capacity, r) => ({ id: `r${r}`, capacity })),
      uses,
      lags: [...lags, ...spans],
      choices,
      limits: [{ terms: limit.weights.map((weight, activity) => ({ activity, weight })), constant: 0, atMost: limit.atMost }],
      horizon,
    };
    const objective: PlanObjective = { terms: weights.map((weight, activity) => ({ activity, weight })), constant: 1 };
    return { model, objective };
  });

describe('the plan solver against brute force', () => {
  it('finds the same best value, or agrees that there is none', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(puzzle, ({ model, objective }) => {
        const expected = bruteForce(model, objective);
        const result = minimise(model, objective, { conflicts: 100_000 });
        if (expected === null) {
          expect(result.kind).toBe('infeasible');
          return;
        }
        expect(result.kind).toBe('solved');
        if (result.kind !== 'solved') return;
        expect(checkPlan(model, result.starts)).toEqual([]);
        expect(result.proven).toBe(true);
        expect(result.value).toBe(expected);
        expect(objectiveValue(objective, result.starts)).toBe(expected);
      }),
      { numRuns: 250 },
    );
  });

  it('finds the same value with time running backwards, and starts that hold forwards', () => {
    fc.assert(
      fc.property(puzzle, ({ model, objective }) => {
        const forward = minimise(model, objective, { conflicts: 100_000 });
        const backward = minimise(mirrored(model), mirroredObjective(model, objective), { conflicts: 100_000 });
        expect(backward.kind).toBe(forward.kind);
        if (forward.kind !== 'solved' || backward.kind !== 'solved') return;
        const starts = mirroredStarts(model, backward.starts);
        expect(checkPlan(model, starts)).toEqual([]);
        expect(objectiveValue(objective, starts)).toBe(forward.value);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps the bound below the value when the budget ends early', () => {
    fc.assert(
      fc.property(puzzle, ({ model, objective }) => {
        const result = minimise(model, objective, { conflicts: 0, stop: () => true });
        if (result.kind !== 'solved') return;
        const expected = bruteForce(model, objective)!;
        expect(result.bound).toBeLessThanOrEqual(expected);
        expect(result.value).toBeGreaterThanOrEqual(expected);
      }),
      { numRuns: 60 },
    );
  });
});
