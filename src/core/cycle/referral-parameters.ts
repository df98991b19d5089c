/** How soon to see someone: `now` today or this week, `soon` within weeks, `mention` at the next visit, `note` to know. */
export const urgencies = ['now', 'soon', 'mention', 'note'] as const;
export type Urgency = (typeof urgencies)[number];

export type CriterionId =
  | 'bleeding-after-menopause' | 'soaking' | 'severe-mood' | 'pregnancy-possible' | 'no-bleeding' | 'bleeding-between' | 'bleeding-after-sex' | 'pelvic-pain'
  | 'low-energy' | 'persistently-long' | 'heavy' | 'frequency' | 'duration' | 'sudden-change' | 'regularity' | 'transition';

export interface Criterion {
  readonly id: CriterionId;
  readonly urgency: Urgency;
  readonly source: string;
  readonly locator: string;
}

export interface CycleLimits {
  readonly shortest: number;
  readonly longest: number;
  readonly bleedDays: number;
}

/** data/parameters/cycle/referral.yaml. Days, years and cycles as named. */
export interface ReferralParameters {
  readonly limits: {
    readonly adult: CycleLimits;
    readonly teen: CycleLimits & { readonly underAge: number };
    readonly regularity: { readonly bands: readonly { readonly from: number; readonly to: number; readonly days: number }[]; readonly unknownAge: number };
    readonly noBleeding: { readonly days: number };
    readonly late: { readonly days: number };
    readonly persistentlyLong: { readonly days: number; readonly cycles: number };
    readonly transition: { readonly fromAge: number; readonly apart: number; readonly gap: number };
    readonly afterMenopause: { readonly months: number; readonly urgentFromAge: number; readonly likelyFromAge: number };
    readonly change: { readonly days: number; readonly recent: number; readonly before: number };
    readonly edgeDays: { readonly days: number };
    readonly lookBack: { readonly cycles: number; readonly days: number };
  };
  readonly criteria: readonly Criterion[];
  readonly questions: readonly { readonly id: CriterionId; readonly words: readonly string[]; readonly ask: string }[];
  readonly crisisLines: readonly { readonly region: string; readonly text: string; readonly source: string }[];
}
