import { clashingPairs } from './clashing-pairs.ts';
import type { EitherOr, PlanModel, PlanObjective, TimeLag } from './plan-model.ts';
import { ClauseStore } from './clause-store.ts';
import { Energy } from './energy.ts';
import { LinearAtMost } from './linear.ts';
import { Timetable, tasksOf } from './timetable.ts';
import { EDGE, LISTED, Trail, type ViewEdges } from './trail.ts';

interface EdgeRow {
  from: number;
  to: number;
  weight: number;
  guardView: number;
  guardValue: number;
}

/** Both views of one lag: the later start is pushed up, the earlier one down. */
function rowsOf(lag: TimeLag, guardView: number, guardValue: number): EdgeRow[] {
  return [
    { from: 2 * lag.from, to: 2 * lag.to, weight: lag.ticks, guardView, guardValue },
    { from: 2 * lag.to + 1, to: 2 * lag.from + 1, weight: lag.ticks, guardView, guardValue },
  ];
}

/** Variables: one per activity, then one per choice, the model's own and those of clashing pairs (1: the first lag holds), then the objective. */
export class Propagation {
  readonly trail: Trail;
  readonly clauses: ClauseStore;
  readonly objectiveVariable: number;
  readonly choices: readonly EitherOr[];
  private readonly edgesFrom: readonly Int32Array[];
  private readonly edgesGuardedBy: readonly Int32Array[];
  private readonly timetables: readonly Timetable[];
  private readonly energies: readonly (Energy | null)[];
  private readonly watchers: readonly Int32Array[];
  private readonly dirty: Uint8Array;
  private readonly tired: Uint8Array;
  private readonly sums: readonly LinearAtMost[];

  constructor(model: PlanModel, objective: PlanObjective) {
    const count = model.activities.length;
    this.choices = [...model.choices, ...clashingPairs(model)];
    this.objectiveVariable = count + this.choices.length;
    const lower = model.activities.map((activity) => Math.max(0, activity.earliest));
    const upper = model.activities.map((activity) => Math.min(model.horizon, activity.latest));
    const rows = model.lags.flatMap((lag) => rowsOf(lag, -1, 0));
    this.choices.forEach((choice, c) => {
      const variable = count + c;
      lower.push(0);
      upper.push(1);
      rows.push(...rowsOf(choice.first, 2 * variable, 1), ...rowsOf(choice.second, 2 * variable + 1, 0));
    });
    let least = objective.constant;
    let most = objective.constant;
    for (const { activity, weight } of objective.terms) {
      least += weight * (weight > 0 ? lower[activity]! : upper[activity]!);
      most += weight * (weight > 0 ? upper[activity]! : lower[activity]!);
    }
    lower.push(least);
    upper.push(most);
    const single = objective.terms.length === 1 && objective.terms[0]!.weight === 1 ? objective.terms[0]! : null;
    if (single) rows.push(...rowsOf({ from: single.activity, to: this.objectiveVariable, ticks: objective.constant }, -1, 0));
    const edges: ViewEdges = {
      from: Int32Array.from(rows, (row) => row.from),
      to: Int32Array.from(rows, (row) => row.to),
      weight: Int32Array.from(rows, (row) => row.weight),
      guardView: Int32Array.from(rows, (row) => row.guardView),
      guardValue: Int32Array.from(rows, (row) => row.guardValue),
    };
    this.trail = new Trail(lower, upper, edges);
    const viewCount = 2 * lower.length;
    const gather = (key: (row: EdgeRow) => number): Int32Array[] => {
      const lists: number[][] = Array.from({ length: viewCount }, () => []);
      rows.forEach((row, i) => key(row) >= 0 && lists[key(row)]!.push(i));
      return lists.map((list) => Int32Array.from(list));
    };
    this.edgesFrom = gather((row) => row.from);
    this.edgesGuardedBy = gather((row) => row.guardView);
    this.clauses = new ClauseStore(this.trail);
    const tables = model.resources.map((resource, r) => ({ tasks: tasksOf(model, r), capacity: resource.capacity }));
    const crowded = tables.filter((table) => table.tasks.reduce((sum, task) => sum + task.demand, 0) > table.capacity);
    this.timetables = crowded.map((table) => new Timetable(this.trail, table.tasks, table.capacity));
    this.energies = crowded.map((table) => Energy.for(this.trail, table.tasks, table.capacity));
    const watchers: number[][] = Array.from({ length: viewCount }, () => []);
    crowded.forEach((table, r) => {
      const seen = new Set(table.tasks.flatMap((task) => [task.from, task.to]));
      for (const variable of seen) {
        watchers[2 * variable]!.push(r);
        watchers[2 * variable + 1]!.push(r);
      }
    });
    this.watchers = watchers.map((list) => Int32Array.from(list));
    this.dirty = new Uint8Array(crowded.length).fill(1);
    this.tired = new Uint8Array(crowded.length).fill(1);
    const views = (sum: PlanObjective): { view: number; coefficient: number }[] =>
      sum.terms.filter((term) => term.weight !== 0).map((term) => ({ view: 2 * term.activity + (term.weight < 0 ? 1 : 0), coefficient: Math.abs(term.weight) }));
    const sums = model.limits.map((limit) => new LinearAtMost(this.trail, views(limit), limit.atMost - limit.constant));
    if (!single) sums.push(new LinearAtMost(this.trail, [...views(objective), { view: 2 * this.objectiveVariable + 1, coefficient: 1 }], -objective.constant));
    this.sums = sums;
  }

  /** The first rest: every lag is looked at once, even where no bound has moved yet. False: nothing satisfies the model. */
  start(): boolean {
    const { lo, edges } = this.trail;
    for (let view = 0; view < lo.length; view += 2) if (lo[view]! > -lo[view + 1]!) return false;
    for (let edge = 0; edge < edges.from.length; edge += 1) if (!this.follow(edge)) return false;
    return this.run();
  }

  /** Runs every propagator to a common rest. False on failure, with the trail's conflict filled. */
  run(): boolean {
    for (;;) {
      if (!this.lagsAndClauses()) return false;
      const table = this.dirty.indexOf(1);
      if (table >= 0) {
        this.dirty[table] = 0;
        this.tired[table] = 1;
        if (!this.timetables[table]!.propagate()) return this.failed();
        continue;
      }
      const before = this.trail.size;
      for (const sum of this.sums) if (!sum.propagate()) return this.failed();
      if (this.trail.size > before) continue;
      const energy = this.tired.indexOf(1);
      if (energy < 0) return true;
      this.tired[energy] = 0;
      if (this.energies[energy] && !this.energies[energy].propagate()) return this.failed();
    }
  }

  /** What was cut short has to be looked at again. */
  private failed(): boolean {
    this.dirty.fill(1);
    return false;
  }

  /** After the learning: jumps back; the tables have to be looked at again. */
  backTo(level: number): void {
    this.trail.backTo(level);
    this.dirty.fill(1);
  }

  private lagsAndClauses(): boolean {
    const { trail } = this;
    while (trail.head < trail.size) {
      const at = trail.head;
      trail.head += 1;
      const view = trail.view[at]!;
      const watchers = this.watchers[view]!;
      for (let i = 0; i < watchers.length; i += 1) this.dirty[watchers[i]!] = 1;
      const list = this.edgesFrom[view]!;
      for (let i = 0; i < list.length; i += 1) if (!this.follow(list[i]!)) return false;
      const guarded = this.edgesGuardedBy[view]!;
      for (let i = 0; i < guarded.length; i += 1) if (!this.follow(guarded[i]!)) return false;
      if (!this.clauses.propagate(view, trail.before[at]!)) return false;
    }
    return true;
  }

  private follow(edge: number): boolean {
    const { trail } = this;
    const { lo, edges } = trail;
    const to = edges.to[edge]!;
    const from = edges.from[edge]!;
    const value = lo[from]! + edges.weight[edge]!;
    const guard = edges.guardView[edge]!;
    if (guard < 0 || lo[guard]! >= edges.guardValue[edge]!) return trail.raise(to, value, EDGE, edge);
    if (value <= -lo[to ^ 1]! || lo[guard ^ 1]! >= 1 - edges.guardValue[edge]!) return true;
    return trail.raise(guard ^ 1, 1 - edges.guardValue[edge]!, LISTED, trail.writeList([from, lo[from]!, to ^ 1, 1 - value]));
  }
}
