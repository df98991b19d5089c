import type { Claim, ClaimClass } from './claim.ts';
import type { Plate } from './plate.ts';

/** A caution that goes with what is said; a row of data/parameters/statements/cautions.yaml. Dish cautions are in core/dish. */
export interface SentenceCaution {
  readonly id: string;
  readonly text: string;
  readonly when: {
    /** Words of the sentence: any one is enough. */
    readonly words?: readonly string[];
    readonly classes?: readonly ClaimClass[];
    /** Names of foods in the dish. */
    readonly foods?: readonly string[];
    /** What she told of the client or audience. */
    readonly client?: readonly string[];
  };
  readonly source: string;
  readonly locator: string;
  readonly checked: string;
}

export interface CautionInput {
  readonly sentence: string;
  readonly claims: readonly Claim[];
  readonly plate: Plate;
  /** Tags of the client or audience: pregnant, anticoagulant, eating-disorder-history … */
  readonly client: readonly string[];
}

/** The cautions that a sentence calls for. Each condition that a caution names must be met. */
export function cautionsFor(rules: readonly SentenceCaution[], input: CautionInput): SentenceCaution[] {
  const text = ` ${input.sentence.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ')} `;
  return rules.filter(({ when }) => {
    if (when.words && !when.words.some((word) => text.includes(` ${word}`))) return false;
    if (when.classes && !input.claims.some((claim) => when.classes?.includes(claim.class) && claim.polarity !== 'negated')) return false;
    if (when.foods && !input.plate.foods.some((food) => food.names.some((name) => when.foods?.some((wanted) => name.includes(wanted))))) return false;
    return !when.client || when.client.some((tag) => input.client.includes(tag));
  });
}
