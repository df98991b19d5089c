import { Branching } from './branching.ts';
import { checkPlan } from './check-plan.ts';
import { firstPlan } from './first-plan.ts';
import { Learning } from './learning.ts';
import { objectiveValue, type PlanModel, type PlanObjective, type PlanResult, type SearchBudget } from './plan-model.ts';
import { Propagation } from './propagation.ts';
import { CLAUSE, DECISION } from './trail.ts';

/** Luby's restart sequence 1 1 2 1 1 2 4 … (Luby, Sinclair & Zuckerman 1993), from i = 1. */
function luby(i: number): number {
  let size = 1;
  while (size < i + 1) size *= 2;
  if (size === i + 1) return size / 2;
  return luby(i - size / 2 + 1);
}

/** `closed`: nothing is left even without the assumed target; `refuted`: nothing within the target. */
type Round = 'found' | 'closed' | 'refuted' | 'limit';

class Search {
  private readonly model: PlanModel;
  private readonly objective: PlanObjective;
  private readonly propagation: Propagation;
  private readonly branching: Branching;
  private readonly learning: Learning;
  private readonly budget: SearchBudget;
  private best: number[] | null = null;
  private bestValue = Number.POSITIVE_INFINITY;
  private conflicts = 0;
  private learnedLimit = 1000;

  constructor(model: PlanModel, objective: PlanObjective, budget: SearchBudget) {
    this.model = model;
    this.objective = objective;
    this.budget = budget;
    this.propagation = new Propagation(model, objective);
    const { trail } = this.propagation;
    this.branching = new Branching(trail, this.propagation.objectiveVariable + 1, model.activities.length);
    this.learning = new Learning(trail, (view, value) => this.branching.bump(view, value));
  }

  run(start: readonly number[] | null): PlanResult {
    const { trail } = this.propagation;
    const cost = 2 * this.propagation.objectiveVariable;
    if (!this.propagation.start()) return { kind: 'infeasible', conflicts: 0 };
    if (start && checkPlan(this.model, start).length === 0) this.keep(start);
    let restart = 0;
    let probes = 0;
    let stopped = false;
    for (;;) {
      if (this.best) {
        trail.raise(cost + 1, 1 - this.bestValue, DECISION, 0);
        if (trail.lo[cost]! >= this.bestValue || !this.propagation.run()) return this.solved(this.bestValue);
      }
      if (stopped) return this.best ? this.solved(trail.lo[cost]!) : { kind: 'unknown', bound: trail.lo[cost]!, conflicts: this.conflicts };
      restart += 1;
      const gap = this.best ? this.bestValue - trail.lo[cost]! : Number.POSITIVE_INFINITY;
      const probing = gap > 1 && restart % 3 === 0;
      const target = trail.lo[cost]!;
      if (probing) probes += 1;
      const limit = 100 * luby(probing ? probes : restart);
      const outcome = this.round(probing ? target : null, limit, restart > 1);
      this.back(0);
      if (outcome === 'closed') return this.solved(this.bestValue);
      if (outcome === 'refuted') {
        if (!trail.raise(cost, target + 1, DECISION, 0) || !this.propagation.run()) return this.solved(this.bestValue);
      }
      if (this.propagation.clauses.count > this.learnedLimit) {
        this.propagation.clauses.reduce();
        this.learnedLimit += 100;
      }
      stopped = outcome === 'limit' && this.spent();
    }
  }

  private spent(): boolean {
    return this.conflicts >= this.budget.conflicts || (this.budget.stop?.() ?? false);
  }

  private solved(bound: number): PlanResult {
    if (!this.best) return { kind: 'infeasible', conflicts: this.conflicts };
    return { kind: 'solved', starts: this.best, value: this.bestValue, bound: Math.min(bound, this.bestValue), proven: bound >= this.bestValue, conflicts: this.conflicts };
  }

  private back(level: number): void {
    this.propagation.backTo(level);
    this.branching.backTo(level);
  }

  private keep(starts: readonly number[]): void {
    const value = objectiveValue(this.objective, starts);
    if (value >= this.bestValue) return;
    this.best = [...starts];
    this.bestValue = value;
    const { trail, objectiveVariable } = this.propagation;
    this.branching.hasWish = true;
    starts.forEach((at, i) => (this.branching.wish[i] = at));
    for (let i = starts.length; i < objectiveVariable; i += 1) {
      const { first } = this.propagation.choices[i - starts.length]!;
      this.branching.wish[i] = starts[first.from]! + first.ticks <= starts[first.to]! ? 1 : 0;
    }
    this.branching.wish[objectiveVariable] = trail.lo[2 * objectiveVariable]!;
  }

  /** One run between restarts, with "cost ≤ target" assumed when a target is given. */
  private round(target: number | null, limit: number, useActivity: boolean): Round {
    const { propagation } = this;
    const { trail } = propagation;
    const costAtMost = 2 * propagation.objectiveVariable + 1;
    let left = limit;
    for (;;) {
      if (!propagation.run()) {
        this.conflicts += 1;
        left -= 1;
        const lesson = this.learning.learn();
        if (!lesson) return 'closed';
        this.back(lesson.level);
        this.branching.decay();
        const [view, value] = lesson.pairs as [number, number];
        if (lesson.pairs.length === 2) trail.raise(view, value, DECISION, 0);
        else trail.raise(view, value, CLAUSE, propagation.clauses.add(lesson.pairs, lesson.glue));
        if ((this.conflicts & 63) === 0 && this.spent()) return 'limit';
        continue;
      }
      if (left <= 0) return 'limit';
      if (target !== null && trail.level === 0) {
        trail.openLevel();
        if (!trail.raise(costAtMost, -target, DECISION, 0)) return 'refuted';
        continue;
      }
      const next = this.branching.next(useActivity);
      if (!next) {
        this.keep(this.model.activities.map((_, i) => trail.lo[2 * i]!));
        return 'found';
      }
      trail.openLevel();
      trail.raise(next[0], next[1], DECISION, 0);
    }
  }
}

/**
 * The best plan by lazy clause generation, from a first plan when one is given. Exact when the
 * budget lasts; otherwise the best plan found and a bound that no plan can beat. Never a plan that breaks a constraint.
 */
export function minimise(model: PlanModel, objective: PlanObjective, budget: SearchBudget, start: readonly number[] | null = null): PlanResult {
  return new Search(model, objective, budget).run(start ?? firstPlan(model, objective));
}
