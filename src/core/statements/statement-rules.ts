import type { ClaimClass } from './claim.ts';
import type { LawClause } from './clause.ts';
import type { DisclosureLevels } from './disclosure-levels.ts';
import type { EvidenceNote } from './evidence.ts';
import type { HealthRule } from './health-claims.ts';
import type { LawId, ReferenceValues } from './law.ts';
import type { NutritionRule } from './nutrition-claims.ts';
import type { ReferenceAmountRow } from './reference-amount.ts';
import type { SentenceCaution } from './sentence-cautions.ts';
import type { StatementWords } from './vocabulary.ts';

/** What a law makes of a kind of claim that the plate does not settle. */
export interface ClassVerdict {
  readonly verdict: 'not-lawful' | 'substantiate' | 'with-listed-claim' | 'free';
  readonly clauses: readonly string[];
}

export interface RewriteTemplate {
  readonly needs: 'source' | 'high' | 'low' | 'permitted' | 'anySource' | 'anyPermitted';
  readonly text: string;
}

export interface RewriteRules {
  readonly names: Readonly<Record<string, string>>;
  readonly templates: Readonly<Partial<Record<ClaimClass, readonly RewriteTemplate[]>>>;
  readonly plain: readonly string[];
  /** Nutrients that are named first when several could be. */
  readonly prefer: readonly string[];
}

/** Everything that statements are checked with, as compiled from data/. */
export interface StatementRules {
  readonly references: readonly ReferenceValues[];
  readonly nutrition: readonly NutritionRule[];
  /** Of the United States, a row for each kind of food. */
  readonly levels: readonly DisclosureLevels[];
  readonly health: readonly HealthRule[];
  readonly clauses: readonly LawClause[];
  readonly verdicts: Readonly<Partial<Record<ClaimClass | 'botanical', Readonly<Record<LawId, ClassVerdict>>>>>;
  /** Topic by word. */
  readonly topicOf: Readonly<Record<string, string>>;
  readonly rewrites: RewriteRules;
  readonly evidence: readonly EvidenceNote[];
  readonly cautions: readonly SentenceCaution[];
  readonly referenceAmounts: readonly ReferenceAmountRow[];
  readonly words: StatementWords;
}
