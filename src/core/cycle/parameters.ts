import type { KernelShape } from './kernel.ts';

/** One bell of the population's spread of typical cycle lengths (days). */
export interface TypicalLengthBell {
  readonly weight: number;
  readonly mean: number;
  readonly deviation: number;
}

/** A chance for each number of days after (or before, when negative) a sign. */
export type ChanceByDay = readonly { readonly day: number; readonly chance: number }[];

/**
 * Everything the cycle model takes from outside; the figures and their sources stand in
 * data/parameters/cycle/model.yaml. All lengths in days.
 */
export interface CycleParameters {
  readonly typicalLength: {
    readonly bells: readonly TypicalLengthBell[];
    /** Change of typical length per year of age, between the two ages. */
    readonly perYear: number;
    readonly ageFrom: number;
    readonly ageTo: number;
    /** The age at which the bells hold; used too when the age is not known. */
    readonly ageMiddle: number;
  };
  /** A woman's own cycle-to-cycle standard deviation: log-normal over women. */
  readonly ownSpread: {
    readonly median: number;
    readonly logDeviation: number;
    /** How log spread rises with log(typical length / reference), and from which length. */
    readonly lengthSlope: number;
    readonly lengthReference: number;
    /** Multiplier by age: pairs of an age in years and a factor, joined by straight lines. */
    readonly byAge: readonly { readonly age: number; readonly factor: number }[];
  };
  /** Days from ovulation (not counted) to the next start (not counted): a woman's mean and its spread. */
  readonly luteal: {
    readonly mean: number;
    readonly betweenDeviation: number;
    /** How a woman's mean luteal length goes with her typical cycle length (days per day). */
    readonly lengthSlope: number;
    /** Within-woman luteal deviation = share × own spread / sqrt(1 + (own spread / bend)²). */
    readonly withinShare: number;
    readonly withinBend: number;
  };
  readonly follicularShape: KernelShape;
  readonly lutealShape: KernelShape;
  /** Chance that a start was never written down: kinds of record keepers. */
  readonly missedEntry: readonly { readonly weight: number; readonly chance: number }[];
  /** Cycles after which an old cycle counts half. */
  readonly recencyHalfLife: number;
  /** Recorded lengths above this are gaps in the record and tell nothing. */
  readonly longestTold: number;
  /** How the shown range is drawn (forecast-range.ts). */
  readonly range: {
    readonly spreadMedian: number;
    readonly spreadLogDeviation: number;
    /** Own spread at which the level is not leaned either way, days. */
    readonly spreadReference: number;
    /** How much the level is lowered, and leaned per unit of log spread, while her spread is wholly uncertain. */
    readonly doubtShift: number;
    readonly doubtLean: number;
    /** The level never leaves these bounds. */
    readonly levelLeast: number;
    readonly levelMost: number;
    /** Whole days said to her hold between these chances by the plain forecast. */
    readonly saidLeast: number;
    readonly saidMost: number;
    /** Share of what lies outside the range that lies before it. */
    readonly earlyShare: number;
  };
  /** Days of bleeding: mean and standard deviation over cycles. */
  readonly bleed: { readonly mean: number; readonly deviation: number };
  /** Where ovulation lies against a sign, and how often the sign misleads (SignFigures in ovulation-signs.ts). */
  readonly signs: {
    readonly positiveTest: ChanceByDay;
    readonly falseTest: number;
    readonly temperatureShift: ChanceByDay;
    readonly falseShift: number;
    readonly slipperyPeak: ChanceByDay;
    readonly falsePeak: number;
  };
  /** What the words for phases mean in days (phases.ts). */
  readonly phases: { readonly ovulationBefore: number; readonly ovulationAfter: number; readonly beforePeriod: number };
  readonly grid: {
    readonly typical: readonly { readonly from: number; readonly to: number; readonly step: number }[];
    readonly spreads: readonly number[];
    readonly luteals: readonly number[];
  };
}
