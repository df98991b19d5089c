import { LISTED, type Trail } from './trail.ts';

/** Σ coefficient × view ≤ limit, with positive coefficients over views. */
export class LinearAtMost {
  private readonly trail: Trail;
  private readonly views: readonly number[];
  private readonly coefficients: readonly number[];
  private readonly limit: number;
  private readonly pairs: number[] = [];

  constructor(trail: Trail, terms: readonly { view: number; coefficient: number }[], limit: number) {
    this.trail = trail;
    this.views = terms.map((term) => term.view);
    this.coefficients = terms.map((term) => term.coefficient);
    this.limit = limit;
  }

  propagate(): boolean {
    const { trail, views, coefficients } = this;
    const { lo } = trail;
    let slack = this.limit;
    for (let i = 0; i < views.length; i += 1) slack -= coefficients[i]! * lo[views[i]!]!;
    if (slack < 0) {
      this.reason(-1);
      trail.conflict.length = 0;
      trail.conflict.push(...this.pairs);
      return false;
    }
    for (let i = 0; i < views.length; i += 1) {
      const view = views[i]!;
      const most = lo[view]! + Math.floor(slack / coefficients[i]!);
      if (most >= -lo[view ^ 1]!) continue;
      this.reason(i);
      if (!trail.raise(view ^ 1, -most, LISTED, trail.writeList(this.pairs))) return false;
    }
    return true;
  }

  private reason(except: number): void {
    this.pairs.length = 0;
    for (let i = 0; i < this.views.length; i += 1) if (i !== except) this.pairs.push(this.views[i]!, this.trail.lo[this.views[i]!]!);
  }
}
