import { DECISION, type Trail } from './trail.ts';

const NONE = -0x80000000;

export interface Lesson {
  /** Literals of the learned clause; the first becomes true after the jump back, the second is from the level jumped to. */
  readonly pairs: number[];
  readonly level: number;
  readonly glue: number;
}

/**
 * Conflict analysis to the first unique implication point over bound literals
 * (Marques-Silva & Sakallah 1999; for bounds Feydy & Stuckey 2009). Several needs on one view merge into the strongest.
 */
export class Learning {
  private readonly trail: Trail;
  private readonly need: Int32Array;
  private readonly needAt: Int32Array;
  private touched: number[] = [];
  private readonly bump: (view: number, value: number) => void;
  private readonly reasons: number[] = [];
  private here = 0;
  private hereStart = 0;

  constructor(trail: Trail, bump: (view: number, value: number) => void) {
    this.trail = trail;
    this.need = new Int32Array(trail.lo.length).fill(NONE);
    this.needAt = new Int32Array(trail.lo.length);
    this.bump = bump;
  }

  private positionOf(view: number, value: number): number {
    const { last, before, previous } = this.trail;
    let at = last[view]!;
    while (at >= 0 && before[at]! >= value) at = previous[at]!;
    return at;
  }

  private levelOf(position: number): number {
    const { levelStart } = this.trail;
    let low = 0;
    let high = levelStart.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (levelStart[middle]! <= position) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  private add(view: number, value: number): void {
    const at = this.positionOf(view, value);
    if (at < this.trail.levelStart[0]!) return;
    const had = this.need[view]!;
    if (had >= value) return;
    if (had === NONE) this.touched.push(view);
    else if (this.needAt[view]! >= this.hereStart) this.here -= 1;
    if (at >= this.hereStart) this.here += 1;
    this.need[view] = value;
    this.needAt[view] = at;
    this.bump(view, value);
  }

  /** Learns from `trail.conflict`; null when it holds at level 0: nothing satisfies the model. Leaves the trail part-way undone: jump back after it. */
  learn(): Lesson | null {
    const { trail } = this;
    const first = trail.conflict;
    let top = 0;
    for (let i = 0; i < first.length; i += 2) top = Math.max(top, this.levelOf(this.positionOf(first[i]!, first[i + 1]!)));
    if (top === 0) return null;
    if (top < trail.level) while (trail.size > trail.levelStart[top]!) trail.pop();
    this.hereStart = trail.levelStart[top - 1]!;
    this.here = 0;
    for (const view of this.touched) this.need[view] = NONE;
    this.touched = [];
    for (let i = 0; i < first.length; i += 2) this.add(first[i]!, first[i + 1]!);
    let uip = -1;
    for (;;) {
      const at = trail.size - 1;
      const view = trail.view[at]!;
      const value = this.need[view]!;
      if (value === NONE || value <= trail.before[at]!) {
        trail.pop();
        continue;
      }
      if (this.here === 1) {
        uip = view;
        break;
      }
      const kind = trail.kind[at]!;
      const data = trail.data[at]!;
      this.need[view] = NONE;
      this.here -= 1;
      trail.pop();
      this.touched.splice(this.touched.indexOf(view), 1);
      this.reasons.length = 0;
      trail.explain(kind, data, view, value, this.reasons);
      for (let i = 0; i < this.reasons.length; i += 2) this.add(this.reasons[i]!, this.reasons[i + 1]!);
    }
    return this.clause(uip);
  }

  private clause(uip: number): Lesson {
    const pairs = [uip ^ 1, 1 - this.need[uip]!];
    let level = 0;
    const levels = new Set<number>();
    for (const view of this.touched) {
      if (view === uip || this.implied(view)) continue;
      const own = this.levelOf(this.needAt[view]!);
      levels.add(own);
      pairs.push(view ^ 1, 1 - this.need[view]!);
      if (own > level) {
        level = own;
        const at = pairs.length - 2;
        [pairs[2], pairs[at]] = [pairs[at]!, pairs[2]!];
        [pairs[3], pairs[at + 1]] = [pairs[at + 1]!, pairs[3]!];
      }
    }
    return { pairs, level, glue: levels.size + 1 };
  }

  /** True when the other needs already imply this one: it can be left out (Sörensson & Biere 2009, local form). */
  private implied(view: number): boolean {
    const { trail } = this;
    const at = this.needAt[view]!;
    if (trail.kind[at] === DECISION) return false;
    this.reasons.length = 0;
    trail.explain(trail.kind[at]!, trail.data[at]!, view, this.need[view]!, this.reasons);
    for (let i = 0; i < this.reasons.length; i += 2) {
      const other = this.reasons[i]!;
      const value = this.reasons[i + 1]!;
      // A stronger need of a later date could in turn rest on this one: only older ones count.
      if (this.need[other]! >= value && this.needAt[other]! < at) continue;
      if (this.positionOf(other, value) >= trail.levelStart[0]!) return false;
    }
    return true;
  }
}
