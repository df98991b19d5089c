import { seededRandom, type Interval } from '../quantity/index.ts';
import { deviationsOf80 } from './retention.ts';
import type { ValueDeviation } from './cooked-line.ts';

/** One line's part of a nutrient, with the standard deviations (in logs) of what it rests on. */
export interface UncertainPart {
  readonly lineId: string;
  readonly amount: number;
  readonly deviation: ValueDeviation;
}

/** How many portions the pot makes is doubtful too: one share for all lines. */
export interface UncertainShare {
  readonly share: number;
  /** Standard deviation in logs; 0 where the portion is weighed. */
  readonly deviation: number;
}

export type DoubtKind = 'weight' | 'composition' | 'factor' | 'portion';

/** One cause of the range. `widthIfKnown`: what would be left of the range's width if this were sure. */
export interface Doubt {
  readonly kind: DoubtKind;
  /** Null for the size of the portion. */
  readonly lineId: string | null;
  /** Share of the variance, 0 to 1. */
  readonly share: number;
  readonly widthIfKnown: number;
}

export interface PortionInterval {
  /** 80 % interval of the portion value, in the nutrient's unit. */
  readonly interval: Interval;
  /** Largest first. */
  readonly doubts: readonly Doubt[];
}

const lineDoubts = ['weight', 'composition', 'factor'] as const;
const variance = (deviation: number): number => Math.expm1(deviation * deviation);

/**
 * The 80 % interval of one portion's value in closed form: independent lognormal doubts of weight,
 * composition and factor of each line, one doubt of the portion's share, and a lognormal sum
 * matched by its first two moments (Fenton 1960).
 */
export function portionInterval(parts: readonly UncertainPart[], portion: UncertainShare): PortionInterval {
  const total = parts.reduce((sum, part) => sum + part.amount, 0);
  const value = total * portion.share;
  if (!(total > 0)) return { interval: { low: value, value, high: value }, doubts: [] };
  const causes: { kind: DoubtKind; lineId: string | null; variance: number }[] = parts.flatMap((part) => lineDoubts.map((kind) => ({ kind, lineId: part.lineId, variance: (part.amount / total) ** 2 * variance(part.deviation[kind]) })));
  causes.push({ kind: 'portion', lineId: null, variance: variance(portion.deviation) });
  const all = causes.reduce((sum, cause) => sum + cause.variance, 0);
  const deviation = Math.sqrt(Math.log1p(all));
  const reach = Math.exp(deviationsOf80 * deviation);
  const doubts = causes
    .filter((cause) => cause.variance > 0)
    .map(({ kind, lineId, variance: own }): Doubt => ({ kind, lineId, share: own / all, widthIfKnown: Math.sqrt(Math.max(0, 1 - own / all)) }))
    .sort((a, b) => b.share - a.share || ((a.lineId ?? '') < (b.lineId ?? '') ? -1 : 1) || (a.kind < b.kind ? -1 : 1));
  return { interval: { low: value / reach, value, high: value * reach }, doubts };
}

/** The same by drawing (Monte Carlo): lognormal doubts, 10th and 90th percentile. The same seed gives the same digits. */
export function portionIntervalByDraws(parts: readonly UncertainPart[], portion: UncertainShare, chance: { readonly seed: number; readonly draws: number }): Interval {
  const random = seededRandom(chance.seed);
  const drawn = Array.from({ length: chance.draws }, () => {
    const share = portion.share * Math.exp(portion.deviation * random.normal());
    return share * parts.reduce((sum, { amount, deviation: d }) => sum + amount * Math.exp(d.weight * random.normal() + d.composition * random.normal() + d.factor * random.normal()), 0);
  }).sort((a, b) => a - b);
  const at = (q: number): number => drawn[Math.min(drawn.length - 1, Math.floor(q * drawn.length))] ?? 0;
  return { low: at(0.1), value: parts.reduce((sum, part) => sum + part.amount, 0) * portion.share, high: at(0.9) };
}
