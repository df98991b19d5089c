import { CLAUSE, type Trail } from './trail.ts';

/**
 * Learned clauses under two watched literals (Moskewicz et al. 2001). A watch sits on the view whose
 * rise makes the literal false and remembers the value at which that happens.
 */
export class ClauseStore {
  /** Per view and bucket of thresholds: clause, threshold pairs. */
  private readonly watches: (number[] | undefined)[][];
  private readonly origin: Int32Array;
  private readonly shift: Uint8Array;
  private readonly trail: Trail;
  private refs: number[] = [];

  constructor(trail: Trail) {
    this.trail = trail;
    const { lo } = trail;
    this.origin = lo.slice();
    this.shift = new Uint8Array(lo.length);
    this.watches = Array.from(lo, (low, view) => {
      const range = -lo[view ^ 1]! - low + 2;
      while (range >> this.shift[view]! > 1024) this.shift[view]! += 1;
      return new Array<number[] | undefined>((range >> this.shift[view]!) + 1).fill(undefined);
    });
  }

  get count(): number {
    return this.refs.length;
  }

  /** Adds a clause of at least two literals; the first two are watched. `glue` is the number of levels in it. */
  add(pairs: readonly number[], glue: number): number {
    const ref = this.trail.writeClause(pairs);
    this.trail.clauses[ref + 1] = glue;
    this.refs.push(ref);
    this.watch(ref, 0);
    this.watch(ref, 1);
    return ref;
  }

  private watch(ref: number, position: number): void {
    const at = ref + 2 + 2 * position;
    const { clauses } = this.trail;
    this.put(clauses[at]! ^ 1, 1 - clauses[at + 1]!, ref);
  }

  private put(view: number, threshold: number, ref: number): void {
    const bucket = (threshold - this.origin[view]!) >> this.shift[view]!;
    const list = this.watches[view]![bucket];
    if (list) list.push(ref, threshold);
    else this.watches[view]![bucket] = [ref, threshold];
  }

  /** Looks at the clauses that a rise of `view` above `before` may have made unit. False on failure. */
  propagate(view: number, before: number): boolean {
    const origin = this.origin[view]!;
    const shift = this.shift[view]!;
    const lists = this.watches[view]!;
    const last = (this.trail.lo[view]! - origin) >> shift;
    for (let bucket = (before + 1 - origin) >> shift; bucket <= last; bucket += 1) {
      const list = lists[bucket];
      if (list && list.length > 0 && !this.visit(view, before, list)) return false;
    }
    return true;
  }

  private visit(view: number, before: number, list: number[]): boolean {
    const { trail } = this;
    const { lo, clauses } = trail;
    const now = lo[view]!;
    const falseView = view ^ 1;
    let kept = 0;
    let ok = true;
    let at = 0;
    const end = list.length;
    for (; at < end; at += 2) {
      const ref = list[at]!;
      const threshold = list[at + 1]!;
      list[kept] = ref;
      list[kept + 1] = threshold;
      kept += 2;
      if (threshold > now || threshold <= before) continue;
      const first = ref + 2;
      if (clauses[first] === falseView) {
        const value = clauses[first + 1]!;
        clauses[first] = clauses[first + 2]!;
        clauses[first + 1] = clauses[first + 3]!;
        clauses[first + 2] = falseView;
        clauses[first + 3] = value;
      }
      const firstView = clauses[first]!;
      const firstValue = clauses[first + 1]!;
      if (lo[firstView]! >= firstValue) continue;
      const stop = first + 2 * clauses[ref]!;
      let other = first + 4;
      while (other < stop && lo[clauses[other]! ^ 1]! > -clauses[other + 1]!) other += 2;
      if (other < stop) {
        const otherView = clauses[other]!;
        const otherValue = clauses[other + 1]!;
        clauses[other] = falseView;
        clauses[other + 1] = clauses[first + 3]!;
        clauses[first + 2] = otherView;
        clauses[first + 3] = otherValue;
        this.put(otherView ^ 1, 1 - otherValue, ref);
        kept -= 2;
      } else if (!trail.raise(firstView, firstValue, CLAUSE, ref)) {
        ok = false;
        at += 2;
        break;
      }
    }
    for (; at < end; at += 1) list[kept++] = list[at]!;
    list.length = kept;
    return ok;
  }

  /** Forgets about half of the clauses, those of many levels first, older ones first. Only at level 0, where no reason is needed. */
  reduce(): void {
    const { trail } = this;
    const old = trail.clauses.slice(0, trail.clausesSize);
    const glues = this.refs.map((ref) => old[ref + 1]!);
    const middle = glues.slice().sort((a, b) => a - b)[Math.floor(glues.length / 2)] ?? 0;
    const recent = this.refs.length * 0.75;
    const keep = this.refs.filter((_, i) => glues[i]! <= 2 || glues[i]! < middle || i > recent);
    trail.clausesSize = 0;
    this.refs = [];
    for (const lists of this.watches) lists.fill(undefined);
    for (const ref of keep) {
      const pairs = Array.from(old.subarray(ref + 2, ref + 2 + 2 * old[ref]!));
      this.restore(pairs, old[ref + 1]!);
    }
  }

  /** Puts a clause back at level 0: drops it when true, cuts literals that are false for good. */
  private restore(pairs: readonly number[], glue: number): void {
    const { lo } = this.trail;
    const rest: number[] = [];
    for (let i = 0; i < pairs.length; i += 2) {
      const view = pairs[i]!;
      const value = pairs[i + 1]!;
      if (lo[view]! >= value) return;
      if (lo[view ^ 1]! < 1 - value) rest.push(view, value);
    }
    if (rest.length >= 4) this.add(rest, glue);
  }
}
