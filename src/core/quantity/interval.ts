/** A best estimate with a range around it, all three in the unit of the context. */
export interface Interval {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

/** An exact value: a range of no width. */
export function exactly(value: number): Interval {
  return { low: value, value, high: value };
}
