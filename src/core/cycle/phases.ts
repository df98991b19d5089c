import type { CycleParameters } from './parameters.ts';

/**
 * The stretches of one cycle, in order. `after-ovulation` ends where the last days before the
 * period begin. Days past the end of a cycle belong to the next one.
 */
export const phases = ['period', 'before-ovulation', 'around-ovulation', 'after-ovulation', 'before-period'] as const;
export type Phase = (typeof phases)[number];

/** One whole cycle as it may come: lengths in days, ovulation on a cycle day (1-based). */
export interface CycleShape {
  readonly length: number;
  readonly ovulationDay: number;
  readonly bleedDays: number;
}

/** The phase of cycle day `day` (1 the first of the period). Where two would meet, the period comes first, then ovulation. */
export function phaseOf(shape: CycleShape, day: number, words: CycleParameters['phases']): Phase {
  if (day <= shape.bleedDays) return 'period';
  if (day < shape.ovulationDay - words.ovulationBefore) return 'before-ovulation';
  if (day <= shape.ovulationDay + words.ovulationAfter) return 'around-ovulation';
  return day > shape.length - words.beforePeriod ? 'before-period' : 'after-ovulation';
}
