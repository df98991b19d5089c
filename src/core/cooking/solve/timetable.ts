import type { PlanModel } from './plan-model.ts';
import { LISTED, type Trail } from './trail.ts';

export interface Task {
  readonly from: number;
  readonly to: number;
  /** Duration of the last activity of the use: the use ends at start(to) + tail. */
  readonly tail: number;
  readonly demand: number;
}

/** Uses of one resource, biggest demand first. */
export function tasksOf(model: PlanModel, resource: number): Task[] {
  return model.uses
    .filter((use) => use.resource === resource && use.demand > 0)
    .map((use) => ({ from: use.from, to: use.to, tail: model.activities[use.to]!.duration, demand: use.demand }))
    .filter((task) => task.from !== task.to || task.tail > 0)
    .sort((a, b) => b.demand - a.demand);
}

/**
 * The cumulative constraint by timetabling, each inference explained at one point in time
 * (Schutt, Feydy, Stuckey & Wallace 2011).
 */
export class Timetable {
  private readonly trail: Trail;
  readonly tasks: readonly Task[];
  readonly capacity: number;
  private readonly profile: Int32Array;
  private readonly pairs: number[] = [];

  constructor(trail: Trail, tasks: readonly Task[], capacity: number) {
    this.trail = trail;
    this.tasks = tasks;
    this.capacity = capacity;
    const { lo } = trail;
    const end = tasks.reduce((most, task) => Math.max(most, -lo[2 * task.to + 1]! + task.tail), 0);
    this.profile = new Int32Array(end + 2);
  }

  propagate(): boolean {
    const { trail, tasks, profile, capacity } = this;
    const { lo } = trail;
    let first = profile.length;
    let last = 0;
    for (const task of tasks) {
      const from = -lo[2 * task.from + 1]!;
      const to = lo[2 * task.to]! + task.tail;
      if (from >= to) continue;
      first = Math.min(first, from);
      last = Math.max(last, to);
      for (let t = from; t < to; t += 1) profile[t]! += task.demand;
    }
    let ok = true;
    for (let t = first; t < last && ok; t += 1) {
      if (profile[t]! > capacity) {
        this.crowd(t, -1, capacity);
        trail.conflict.length = 0;
        trail.conflict.push(...this.pairs);
        ok = false;
      }
    }
    if (first < last) {
      for (let i = 0; i < tasks.length && ok; i += 1) ok = this.pushLater(i) && this.pushEarlier(i);
    }
    if (first < last) profile.fill(0, first, last);
    return ok;
  }

  private pushLater(i: number): boolean {
    const { lo } = this.trail;
    const task = this.tasks[i]!;
    const room = this.capacity - task.demand;
    const latest = -lo[2 * task.from + 1]!;
    let floor = lo[2 * task.from]!;
    if (floor === latest) return true;
    for (;;) {
      let t = Math.min(lo[2 * task.to]! + task.tail, latest) - 1;
      while (t >= floor && this.profile[t]! <= room) t -= 1;
      if (t < floor) return true;
      this.crowd(t, i, room);
      this.pairs.push(2 * task.to, t + 1 - task.tail);
      if (!this.trail.raise(2 * task.from, t + 1, LISTED, this.trail.writeList(this.pairs))) return false;
      if (task.from !== task.to) {
        if (t + 1 >= latest) return true;
        floor = t + 1;
        return true;
      }
      floor = t + 1;
    }
  }

  private pushEarlier(i: number): boolean {
    const { lo } = this.trail;
    const task = this.tasks[i]!;
    const room = this.capacity - task.demand;
    for (;;) {
      const latestEnd = -lo[2 * task.to + 1]! + task.tail;
      let t = Math.max(-lo[2 * task.from + 1]!, lo[2 * task.to]! + task.tail);
      while (t < latestEnd && this.profile[t]! <= room) t += 1;
      if (t >= latestEnd) return true;
      this.crowd(t, i, room);
      this.pairs.push(2 * task.from + 1, -t);
      if (!this.trail.raise(2 * task.to + 1, task.tail - t, LISTED, this.trail.writeList(this.pairs))) return false;
      if (task.from !== task.to) return true;
    }
  }

  /** Fills `pairs` with why tasks other than `except` take more than `room` at `t`. */
  private crowd(t: number, except: number, room: number): void {
    const { lo } = this.trail;
    const { pairs } = this;
    pairs.length = 0;
    let sum = 0;
    for (let j = 0; j < this.tasks.length && sum <= room; j += 1) {
      if (j === except) continue;
      const task = this.tasks[j]!;
      if (-lo[2 * task.from + 1]! > t || lo[2 * task.to]! + task.tail <= t) continue;
      sum += task.demand;
      pairs.push(2 * task.from + 1, -t, 2 * task.to, t + 1 - task.tail);
    }
  }
}
