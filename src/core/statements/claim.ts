/** What kind of claim a stretch of words makes: tests/cases/statements/labelling-guide.md defines each. In order of precedence. */
export const claimClasses = ['caution', 'disease', 'fear', 'absolute', 'weight', 'cycle-hormone', 'endorsement', 'function', 'comparison', 'quantified', 'nutrient-content', 'kitchen-science', 'well-being'] as const;
export type ClaimClass = (typeof claimClasses)[number];

export const polarities = ['asserted', 'negated', 'question', 'reported', 'hedged'] as const;
export type Polarity = (typeof polarities)[number];

/** One claim found in a sentence. Offsets are characters of the whole script. */
export interface Claim {
  readonly class: ClaimClass;
  readonly polarity: Polarity;
  readonly start: number;
  readonly end: number;
  readonly span: string;
  /** Nutrients, or groups without a table value, that the claim is about. */
  readonly nutrients: readonly string[];
  /** Named things it acts on: conditions, parts of the body, hormones. */
  readonly objects: readonly string[];
  /** Foods that the sentence names. */
  readonly foods: readonly string[];
  /** For whom it is said, as far as the sentence names them: "teenagers", "pregnant". */
  readonly people: readonly string[];
  /** How sure the reading is, 0 to 1; null when only a turn of phrase or a relation was read. */
  readonly chance: number | null;
  /** The words that speak most for the class, strongest first. */
  readonly because: readonly string[];
}
