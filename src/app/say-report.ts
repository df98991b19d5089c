import type { ClaimClass, EvidenceGrade, LawId, Polarity, VerdictKind } from '../core/statements/index.ts';

/** A script checked against a dish, as the faces show it and as `truepot say --json` prints it. Words are ready to read. */
export interface SayReport {
  readonly title: string;
  readonly laws: readonly { readonly id: LawId; readonly name: string }[];
  /** Set when nothing was checked, with the reason; the lists below are then empty. */
  readonly notChecked: string | null;
  /** "Less" and "more" are held against another dish: which, and in what amount. Null when none was chosen. */
  readonly compared: { readonly dish: string; readonly other: string; readonly words: string } | null;
  readonly sentences: readonly SaySentence[];
  /** What holds of the dish, law by law. */
  readonly holds: readonly LawHolds[];
  readonly cautions: readonly SayCaution[];
  readonly sheet: TalkSheet;
}

export interface SaySentence {
  readonly text: string;
  /** Characters of the script, end excluded. */
  readonly start: number;
  readonly end: number;
  readonly sayable: boolean;
  readonly claims: readonly SayClaim[];
  /** Said in its place on the talk sheet; null when it stands as it is or nothing passes. */
  readonly instead: { readonly text: string; readonly beside: readonly string[] } | null;
  readonly evidence: readonly SayEvidence[];
  readonly cautions: readonly string[];
}

export interface SayClaim {
  readonly class: ClaimClass;
  readonly className: string;
  readonly polarity: Polarity;
  readonly polarityName: string;
  readonly span: string;
  readonly start: number;
  readonly end: number;
  /** The strictest of the laws asked for. */
  readonly kind: VerdictKind;
  readonly sign: string;
  readonly words: string;
  readonly laws: readonly SayLaw[];
  /** By which words it was read: "Read as a statement on illness by: eases, cramps." */
  readonly readAs: string;
  /** Set when the reading is not sure: she should judge herself. */
  readonly unsure: string | null;
  readonly rewrites: readonly string[];
}

export interface SayLaw {
  readonly law: LawId;
  readonly lawName: string;
  readonly kind: VerdictKind;
  readonly sign: string;
  readonly words: string;
  readonly reasons: readonly string[];
  /** Words that must stand right beside the claim. */
  readonly beside: readonly string[];
  readonly figures: readonly string[];
  readonly clauses: readonly string[];
}

export interface SayEvidence {
  readonly id: string;
  readonly statement: string;
  readonly grade: EvidenceGrade;
  readonly gradeName: string;
  readonly finding: string;
  readonly population: string;
  /** "The studies gave 2 g a day; a portion has 0.4 g." Null where no dose is known. */
  readonly dose: string | null;
  readonly citation: string;
  readonly doi: string | null;
  readonly checked: string;
}

export interface LawHolds {
  readonly law: LawId;
  readonly name: string;
  /** Nutrition claims that hold, then those that hold on the estimate only. */
  /** Words that must stand beside any of these claims. */
  readonly beside: readonly string[];
  readonly claims: readonly { readonly words: string; readonly sure: boolean; readonly figures: readonly string[]; readonly clause: string }[];
  /** Permitted health claims that these unlock, nearest to the theme first. */
  readonly health: readonly { readonly sentence: string; readonly sure: boolean; readonly condition: string; readonly checked: string }[];
}

export interface SayCaution {
  readonly id: string;
  readonly text: string;
  readonly source: string;
}

/** The script as it may be said, with its sources, and the text to publish beside it. `beside` must stand with the line, `reading` tells how its claims were read. */
export interface TalkSheet {
  readonly lines: readonly { readonly text: string; readonly changedFrom: string | null; readonly beside: readonly string[]; readonly reading: readonly string[]; readonly notes: readonly number[] }[];
  readonly footnotes: readonly string[];
  readonly description: string;
}
