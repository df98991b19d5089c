import type { Trail } from './trail.ts';

/**
 * Which bound to try next: the atoms "variable ≥ value" that took part in recent conflicts first
 * (VSIDS, Moskewicz et al. 2001), kept in a heap; then the variable with the earliest bound.
 */
export class Branching {
  private readonly trail: Trail;
  private readonly base: Int32Array;
  private readonly origin: Int32Array;
  private readonly owner: Int32Array;
  private readonly activity: Float64Array;
  private readonly place: Int32Array;
  private readonly heap: number[] = [];
  private readonly removed: number[] = [];
  private readonly removedLevel: number[] = [];
  private step = 1;
  /** Value of each variable in the best plan so far: the side tried first. */
  readonly wish: Int32Array;
  hasWish = false;
  /** Variables from this index on are fixed by hand only after all before them. */
  private readonly lateFrom: number;

  constructor(trail: Trail, count: number, lateFrom: number) {
    this.trail = trail;
    this.lateFrom = lateFrom;
    this.base = new Int32Array(count);
    this.origin = new Int32Array(count);
    this.wish = new Int32Array(count);
    let total = 0;
    for (let i = 0; i < count; i += 1) {
      this.base[i] = total;
      this.origin[i] = trail.lo[2 * i]!;
      total += Math.max(1, -trail.lo[2 * i + 1]! - trail.lo[2 * i]! + 2);
    }
    this.owner = new Int32Array(total);
    for (let i = 0; i < count; i += 1) this.owner.fill(i, this.base[i], i + 1 < count ? this.base[i + 1]! : total);
    this.activity = new Float64Array(total);
    this.place = new Int32Array(total).fill(-1);
  }

  bump(view: number, value: number): void {
    const variable = view >> 1;
    const threshold = (view & 1) === 0 ? value : 1 - value;
    const atom = this.base[variable]! + threshold - this.origin[variable]!;
    const next = this.activity[atom]! + this.step;
    this.activity[atom] = next;
    if (next > 1e100) {
      for (const [i, value] of this.activity.entries()) this.activity[i] = value * 1e-100;
      this.step *= 1e-100;
    }
    if (this.place[atom]! >= 0) this.up(this.place[atom]!);
    else this.insert(atom);
  }

  decay(): void {
    this.step *= 1 / 0.95;
  }

  private insert(atom: number): void {
    this.place[atom] = this.heap.length;
    this.heap.push(atom);
    this.up(this.heap.length - 1);
  }

  private up(from: number): void {
    const { heap, activity, place } = this;
    const atom = heap[from]!;
    let at = from;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (activity[heap[parent]!]! >= activity[atom]!) break;
      heap[at] = heap[parent]!;
      place[heap[at]!] = at;
      at = parent;
    }
    heap[at] = atom;
    place[atom] = at;
  }

  private takeTop(): number {
    const { heap, activity, place } = this;
    const top = heap[0]!;
    const atom = heap.pop()!;
    place[top] = -1;
    if (heap.length === 0) return top;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= heap.length) break;
      if (child + 1 < heap.length && activity[heap[child + 1]!]! > activity[heap[child]!]!) child += 1;
      if (activity[heap[child]!]! <= activity[atom]!) break;
      heap[at] = heap[child]!;
      place[heap[at]!] = at;
      at = child;
    }
    heap[at] = atom;
    place[atom] = at;
    return top;
  }

  /** Atoms taken out on levels that are being undone go back on the heap. */
  backTo(level: number): void {
    while (this.removedLevel.length > 0 && this.removedLevel[this.removedLevel.length - 1]! > level) {
      this.removedLevel.pop();
      const atom = this.removed.pop()!;
      if (this.place[atom]! < 0) this.insert(atom);
    }
  }

  /** The next literal as [view, value], or null when every variable is fixed. */
  next(useActivity: boolean): readonly [number, number] | null {
    const { lo } = this.trail;
    const { level } = this.trail;
    while (useActivity && this.heap.length > 0) {
      const atom = this.takeTop();
      this.removed.push(atom);
      this.removedLevel.push(level);
      const variable = this.owner[atom]!;
      const threshold = atom - this.base[variable]! + this.origin[variable]!;
      if (lo[2 * variable]! >= threshold || -lo[2 * variable + 1]! < threshold) continue;
      this.removedLevel[this.removedLevel.length - 1] = level + 1;
      const above = this.hasWish && this.wish[variable]! >= threshold;
      return above ? [2 * variable, threshold] : [2 * variable + 1, 1 - threshold];
    }
    let best = -1;
    for (let i = 0; i < this.base.length; i += 1) {
      if (i === this.lateFrom && best >= 0) break;
      if (lo[2 * i]! === -lo[2 * i + 1]!) continue;
      if (best < 0 || lo[2 * i]! < lo[2 * best]! || (lo[2 * i]! === lo[2 * best]! && -lo[2 * i + 1]! < -lo[2 * best + 1]!)) best = i;
    }
    if (best < 0) return null;
    return [2 * best + 1, -lo[2 * best]!];
  }
}
