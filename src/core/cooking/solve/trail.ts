/**
 * Bounds of whole-number variables with a trail to undo them and a reason for each change.
 *
 * Variable i has two views: 2i is the variable, 2i+1 its negative, so every bound is a lower bound
 * and a literal is "view ≥ value". Its negation is "view^1 ≥ 1 − value". This is lazy clause
 * generation (Ohrimenko, Stuckey & Codish 2009) with bound literals that need no Boolean of their own.
 */
export const DECISION = 0;
export const EDGE = 1;
export const CLAUSE = 2;
export const LISTED = 3;

export interface ViewEdges {
  /** lo[to] ≥ lo[from] + weight, while lo[guardView] ≥ guardValue (guardView −1: always). */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly weight: Int32Array;
  readonly guardView: Int32Array;
  readonly guardValue: Int32Array;
}

const grown = <T extends Int32Array | Uint8Array>(array: T): T => {
  const next = new (array.constructor as new (n: number) => T)(array.length * 2);
  next.set(array);
  return next;
};

export class Trail {
  readonly lo: Int32Array;
  /** Index on the trail of the newest entry of a view, −1 when it still has its first bound. */
  readonly last: Int32Array;
  view = new Int32Array(1024);
  before = new Int32Array(1024);
  previous = new Int32Array(1024);
  kind = new Uint8Array(1024);
  data = new Int32Array(1024);
  size = 0;
  /** Entries below this index have been handed to the propagators. */
  head = 0;
  readonly levelStart: number[] = [];
  private readonly levelList: number[] = [];
  /** Explanations written out in full: count, then view and value pairs. */
  list = new Int32Array(4096);
  listSize = 0;
  clauses = new Int32Array(4096);
  clausesSize = 0;
  readonly edges: ViewEdges;
  /** After a failure: literals that hold and cannot hold together (view, value pairs). */
  readonly conflict: number[] = [];

  constructor(lower: readonly number[], upper: readonly number[], edges: ViewEdges) {
    this.lo = new Int32Array(lower.length * 2);
    this.last = new Int32Array(lower.length * 2).fill(-1);
    lower.forEach((value, i) => {
      this.lo[2 * i] = value;
      this.lo[2 * i + 1] = -(upper[i] ?? 0);
    });
    this.edges = edges;
  }

  get level(): number {
    return this.levelStart.length;
  }

  openLevel(): void {
    this.levelStart.push(this.size);
    this.levelList.push(this.listSize);
  }

  /** Raises a lower bound. False on failure, with `conflict` filled. */
  raise(view: number, value: number, kind: number, data: number): boolean {
    if (value <= this.lo[view]!) return true;
    if (value > -this.lo[view ^ 1]!) {
      this.conflict.length = 0;
      this.explain(kind, data, view, value, this.conflict);
      this.conflict.push(view ^ 1, 1 - value);
      return false;
    }
    const at = this.size;
    if (at === this.view.length) {
      this.view = grown(this.view);
      this.before = grown(this.before);
      this.previous = grown(this.previous);
      this.kind = grown(this.kind);
      this.data = grown(this.data);
    }
    this.view[at] = view;
    this.before[at] = this.lo[view]!;
    this.previous[at] = this.last[view]!;
    this.kind[at] = kind;
    this.data[at] = data;
    this.lo[view] = value;
    this.last[view] = at;
    this.size = at + 1;
    return true;
  }

  /** Appends literals that imply "view ≥ value", all older than the change itself. */
  // eslint-disable-next-line max-params -- the innermost loop: no object per call
  explain(kind: number, data: number, view: number, value: number, out: number[]): void {
    if (kind === EDGE) {
      const { from, weight, guardView, guardValue } = this.edges;
      out.push(from[data]!, value - weight[data]!);
      if (guardView[data]! >= 0) out.push(guardView[data]!, guardValue[data]!);
    } else if (kind === CLAUSE) {
      const count = this.clauses[data]!;
      for (let i = 0, at = data + 2; i < count; i += 1, at += 2) {
        const other = this.clauses[at]!;
        if (other !== view) out.push(other ^ 1, 1 - this.clauses[at + 1]!);
      }
    } else if (kind === LISTED) {
      const count = this.list[data]!;
      for (let i = 0, at = data + 1; i < count; i += 1, at += 2) out.push(this.list[at]!, this.list[at + 1]!);
    }
  }

  /** Stores an explanation of view and value pairs; kept until its level is undone. */
  writeList(pairs: readonly number[]): number {
    const at = this.listSize;
    while (at + pairs.length + 1 > this.list.length) this.list = grown(this.list);
    this.list[at] = pairs.length / 2;
    for (let i = 0; i < pairs.length; i += 1) this.list[at + 1 + i] = pairs[i]!;
    this.listSize = at + pairs.length + 1;
    return at;
  }

  /** A clause in the store: count, activity slot, then view and value pairs. Returns its place. */
  writeClause(pairs: readonly number[]): number {
    const at = this.clausesSize;
    while (at + pairs.length + 2 > this.clauses.length) this.clauses = grown(this.clauses);
    this.clauses[at] = pairs.length / 2;
    this.clauses[at + 1] = 0;
    for (let i = 0; i < pairs.length; i += 1) this.clauses[at + 2 + i] = pairs[i]!;
    this.clausesSize = at + pairs.length + 2;
    return at;
  }

  /** Takes the newest change back. */
  pop(): void {
    const at = this.size - 1;
    const view = this.view[at]!;
    this.lo[view] = this.before[at]!;
    this.last[view] = this.previous[at]!;
    this.size = at;
  }

  /** Undoes every level above `level`. */
  backTo(level: number): void {
    if (this.level <= level) return;
    const start = this.levelStart[level]!;
    while (this.size > start) this.pop();
    this.listSize = this.levelList[level]!;
    this.levelStart.length = level;
    this.levelList.length = level;
    this.head = Math.min(this.head, this.size);
  }
}
