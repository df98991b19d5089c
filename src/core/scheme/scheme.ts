/** What a window is counted from. `ovulation` day 0 is the day itself; `next-period` day −1 the day before it; `period-start` day 1 the first day. */
export const anchors = ['period-start', 'ovulation', 'next-period'] as const;
export type Anchor = (typeof anchors)[number];

export interface WindowEdge {
  readonly anchor: Anchor;
  readonly day: number;
}

/** A stretch of days, both ends included. `scaled`: days counted from the period start are stretched from the textbook length to hers. */
export interface SchemeWindow {
  readonly from: WindowEdge;
  readonly to: WindowEdge;
  readonly stretch: 'fixed' | 'scaled';
}

/** How strong the evidence for a rule is, as its author sees it. */
export const evidenceGrades = ['none-found', 'experience', 'weak', 'mixed', 'fair'] as const;
export type EvidenceGrade = (typeof evidenceGrades)[number];

/** A rule's source when nobody has published it. */
export const ownExperience = 'practitioner-experience';

export const directions = ['more', 'steady', 'less'] as const;
export type Direction = (typeof directions)[number];

/** Carbohydrate, fat, protein, fibre, energy or a named nutrient, and which way. */
export interface Emphasis {
  readonly what: string;
  readonly direction: Direction;
}

/** What a rule advises; empty lists and nulls say nothing. Amounts are for a day. */
export interface RuleAdvice {
  readonly emphasis: readonly Emphasis[];
  readonly favour: readonly string[];
  readonly leave: readonly string[];
  /** Hours without food, the night counted. */
  readonly fastingHours: number | null;
  readonly energyKcal: number | null;
  readonly proteinG: number | null;
  readonly carbohydrateG: number | null;
  readonly training: string | null;
  readonly heatAndCold: string | null;
  readonly workload: string | null;
  readonly sleep: string | null;
}

export interface SchemeRule {
  readonly id: string;
  readonly title: string;
  readonly window: SchemeWindow;
  /** The days of a fixed-day scheme, day 1 the first of the period; `to` null runs to the next period. Null: worked out from the textbook cycle. */
  readonly fixedDays: { readonly from: number; readonly to: number | null } | null;
  readonly advice: RuleAdvice;
  readonly evidence: EvidenceGrade;
  readonly source: string;
}

/** A practitioner's own rules for phases, as data. */
export interface Scheme {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  readonly invented: boolean;
  /** The one cycle that fixed days are written for. */
  readonly textbook: { readonly length: number; readonly ovulationDay: number };
  /** A rule is said for a day from this chance on. */
  readonly sayFrom: number;
  readonly rules: readonly SchemeRule[];
}

export const noAdvice: RuleAdvice = { emphasis: [], favour: [], leave: [], fastingHours: null, energyKcal: null, proteinG: null, carbohydrateG: null, training: null, heatAndCold: null, workload: null, sleep: null };
