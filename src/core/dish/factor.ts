import type { Interval } from '../quantity/index.ts';

export type FactorKind = 'published' | 'fitted' | 'none';

/** Why a factor was taken, or why it could not be. */
export type FactorWhy =
  | 'better-on-held-out-families' // the kind that came nearer to analysed values of families it had not seen
  | 'only-source' // the other has no figure
  | 'liquid-is-eaten' // SR28 has no pairs with the liquid kept, so the published row with the liquid is used
  | 'nearest-way-without-leaching' // the liquid is eaten and the published table has no figure: the dry way of the same family
  | 'stays-in-the-pot' // a mineral in a liquid that is eaten
  | 'moves-with-the-fat'
  | 'by-minutes' // alcohol
  | 'not-cooked'
  | 'warmed-only'
  | 'no-factor-known';

/** A factor of one source for one nutrient. */
export interface Factor {
  readonly kind: FactorKind;
  readonly share: number;
  /** Source id of data/sources, and where in it. */
  readonly source: string;
  readonly locator: string;
}

/** What is left of a nutrient in a line after cooking: a share of what the raw food held. */
export interface Kept {
  readonly share: Interval;
  readonly used: Factor;
  /** The factor of the other source, for the panel. */
  readonly other: Factor | null;
  readonly why: FactorWhy;
  /** Standard deviation of the factor alone, in logs. */
  readonly deviation: number;
  /** Exponent that the minutes put on the table's factor; 1 where time plays no part. */
  readonly time: number;
}
