import type { Task } from './timetable.ts';
import { LISTED, type Trail } from './trail.ts';

/**
 * Energetic reasoning on one resource: in a window [a, b) the tasks need at least their smallest possible
 * overlap with it; more than capacity × length is a failure, and a task that would not fit beside the
 * others is pushed out (Erschler & Lopez 1990; explained as in Schutt, Feydy & Stuckey 2013).
 * Windows run from an earliest start to a latest end. Tasks that span several activities are left out: a smaller need is still a true one.
 */
export class Energy {
  private readonly trail: Trail;
  private readonly tasks: readonly Task[];
  private readonly capacity: number;
  private readonly est: Int32Array;
  private readonly lst: Int32Array;
  private readonly part: Int32Array;
  private readonly duration: Int32Array;
  private readonly demand: Int32Array;
  private readonly widest: number;
  private readonly order: number[];
  private readonly pairs: number[] = [];

  /** Null when all tasks together never exceed what fits side by side: nothing to reason about. */
  static for(trail: Trail, tasks: readonly Task[], capacity: number): Energy | null {
    const single = tasks.filter((task) => task.from === task.to);
    return single.length < 3 || capacity > 1 ? null : new Energy(trail, single, capacity);
  }

  private constructor(trail: Trail, tasks: readonly Task[], capacity: number) {
    this.trail = trail;
    this.tasks = tasks;
    this.capacity = capacity;
    this.est = new Int32Array(tasks.length);
    this.lst = new Int32Array(tasks.length);
    this.part = new Int32Array(tasks.length);
    this.duration = Int32Array.from(tasks, (task) => task.tail);
    this.demand = Int32Array.from(tasks, (task) => task.demand);
    this.widest = Math.max(...this.demand);
    this.order = tasks.map((_, i) => i);
  }

  propagate(): boolean {
    const { tasks, est, lst, order, capacity, duration, demand } = this;
    const { lo } = this.trail;
    const count = tasks.length;
    for (let i = 0; i < count; i += 1) {
      est[i] = lo[2 * tasks[i]!.from]!;
      lst[i] = -lo[2 * tasks[i]!.from + 1]!;
    }
    order.sort((x, y) => est[y]! - est[x]!);
    for (let k = 0; k < count; k += 1) {
      const b = lst[k]! + duration[k]!;
      let repeated = false;
      for (let j = 0; j < k && !repeated; j += 1) repeated = lst[j]! + duration[j]! === b;
      if (repeated) continue;
      let inside = 0;
      let fill = 0;
      while (fill < count) {
        const a = est[order[fill]!]!;
        while (fill < count && est[order[fill]!]! === a) {
          const i = order[fill]!;
          const overlap = Math.min(duration[i]!, b - lst[i]!);
          if (overlap > 0) inside += demand[i]! * overlap;
          fill += 1;
        }
        if (a >= b) continue;
        let need = inside;
        for (let later = fill; later < count; later += 1) {
          const i = order[later]!;
          const left = est[i]! + duration[i]! - a;
          const right = b - lst[i]!;
          if (left <= 0 || right <= 0) continue;
          need += demand[i]! * Math.min(duration[i]!, left, right, b - a);
        }
        const spare = capacity * (b - a) - need;
        if (spare < 0) return this.fail(a, b, -spare - 1);
        if (spare < this.widest * (b - a) && !this.push(a, b, spare)) return false;
      }
    }
    return true;
  }

  private overlap(i: number, a: number, b: number): number {
    const tail = this.duration[i]!;
    return Math.max(0, Math.min(tail, this.est[i]! + tail - a, b - this.lst[i]!, b - a));
  }

  /** Tasks whose earliest (or latest) place does not fit beside the others in the window. */
  private push(a: number, b: number, spare: number): boolean {
    const { tasks, est, lst, trail } = this;
    for (let i = 0; i < tasks.length; i += 1) {
      const tail = this.duration[i]!;
      const demand = this.demand[i]!;
      if (demand * Math.min(tail, b - a) <= spare || est[i] === lst[i] || est[i]! >= b || lst[i]! + tail <= a) continue;
      const { from } = tasks[i]!;
      const early = Math.min(tail, est[i]! + tail - a, b - a, b - est[i]!);
      const late = Math.min(tail, b - lst[i]!, b - a, lst[i]! + tail - a);
      const own = this.overlap(i, a, b);
      const fits = Math.floor((spare + demand * own) / demand);
      if (early > fits && b - fits > est[i]!) {
        this.collect(a, b, { except: i, surplus: demand * (fits + 1) - (spare + demand * own) - 1 });
        this.pairs.push(2 * from, a + fits + 1 - tail);
        if (!trail.raise(2 * from, b - fits, LISTED, trail.writeList(this.pairs))) return false;
        return true;
      }
      if (late > fits && a + fits - tail < lst[i]!) {
        this.collect(a, b, { except: i, surplus: demand * (fits + 1) - (spare + demand * own) - 1 });
        this.pairs.push(2 * from + 1, fits + 1 - b);
        if (!trail.raise(2 * from + 1, tail - a - fits, LISTED, trail.writeList(this.pairs))) return false;
        return true;
      }
    }
    return true;
  }

  private fail(a: number, b: number, surplus: number): boolean {
    this.collect(a, b, { except: -1, surplus });
    this.trail.conflict.length = 0;
    this.trail.conflict.push(...this.pairs);
    return false;
  }

  /** Why the tasks need that much of the window, weakened by what is more than enough. */
  private collect(a: number, b: number, how: { except: number; surplus: number }): void {
    const { tasks, pairs, part } = this;
    pairs.length = 0;
    let { surplus } = how;
    for (let i = 0; i < tasks.length; i += 1) {
      part[i] = i === how.except ? 0 : this.overlap(i, a, b);
      const cost = part[i]! * tasks[i]!.demand;
      if (cost > 0 && cost <= surplus) {
        surplus -= cost;
        part[i] = 0;
      }
    }
    for (let i = 0; i < tasks.length; i += 1) {
      if (part[i] === 0) continue;
      const { demand, from, tail } = tasks[i]!;
      const cut = Math.min(part[i]! - 1, Math.floor(surplus / demand));
      surplus -= cut * demand;
      const kept = part[i]! - cut;
      pairs.push(2 * from, a + kept - tail, 2 * from + 1, kept - b);
    }
  }
}
