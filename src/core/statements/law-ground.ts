import { isNutrientId, nutrient as nutrientOf, type NutrientId } from '../foods/index.ts';
import type { Claim, ClaimClass } from './claim.ts';
import { levelFindings, levelsFor, type LevelFinding } from './disclosure-levels.ts';
import { healthFindings, type Emphasis, type HealthFinding } from './health-claims.ts';
import type { LawId } from './law.ts';
import { nutritionFindings, type NutritionFinding } from './nutrition-claims.ts';
import type { Plate } from './plate.ts';
import type { StatementRules } from './statement-rules.ts';
import type { LawVerdict, Reason, VerdictKind } from './verdict.ts';

/** Everything that is worked out once for a dish under one law. */
export interface LawGround {
  readonly law: LawId;
  readonly plate: Plate;
  /** The dish that it is compared with; null when none was chosen. */
  readonly other: Plate | null;
  readonly rules: StatementRules;
  readonly nutrition: readonly NutritionFinding[];
  readonly health: readonly HealthFinding[];
  /** The permitted wordings as `plainWords` gives them, in the order of `health`. */
  readonly wordings: readonly string[];
  /** The dish held against the disclosure levels of the United States; empty under other laws. */
  readonly levels: readonly LevelFinding[];
}

/** Lower case, letters and figures only: for comparing sentences. */
export function plainWords(text: string): string {
  return text.toLowerCase().replace(/[\u2019]/g, "'").replace(/[^a-z0-9' ]+/g, ' ').replace(/\s+/g, ' ').trim();
}

/** Holds the dish against all nutrition and health claims of a law. */
export function lawGround(law: LawId, input: { readonly plate: Plate; readonly other: Plate | null; readonly rules: StatementRules; readonly emphasis: Emphasis; readonly on: string }): LawGround {
  const { plate, other, rules, emphasis, on } = input;
  const nutrition = nutritionFindings(law, { plate, rules: rules.nutrition, references: rules.references, other, on });
  const health = healthFindings(law, { plate, rules: rules.nutrition, references: rules.references, other, on }, nutrition, { rules: rules.health, emphasis });
  const row = law === 'us' ? levelsFor(rules.levels, plate) : null;
  return { law, plate, other, rules, nutrition, health, wordings: health.map((h) => plainWords(h.sentence)), levels: row === null ? [] : levelFindings(row, plate) };
}

/** What the judges look at beside the claim itself. */
export interface ClaimContext {
  readonly ground: LawGround;
  /** The whole sentence. */
  readonly sentence: string;
  readonly botanicals: readonly string[];
}

export function verdict(ground: LawGround, kind: VerdictKind, more: Partial<Omit<LawVerdict, 'law' | 'kind'>> = {}): LawVerdict {
  return { law: ground.law, kind, clauses: [], reasons: [], measurements: [], disclose: [], nutrition: [], health: [], ...more };
}

/** The verdict that the law's own table gives a kind of claim. */
export function byTable(ground: LawGround, kind: ClaimClass | 'botanical', reasons: readonly Reason[]): LawVerdict {
  const row = ground.rules.verdicts[kind]?.[ground.law];
  if (!row) return verdict(ground, 'free', { reasons });
  const anyHolds = ground.health.some((h) => h.judged.standing === 'holds');
  const kindOf: Record<typeof row.verdict, VerdictKind> = { 'not-lawful': 'not-lawful', substantiate: 'proof', free: 'free', 'with-listed-claim': anyHolds ? 'near' : 'not-lawful' };
  return verdict(ground, kindOf[row.verdict], { clauses: row.clauses, reasons });
}

const unlistedBy = { eu: 'eu-art-8', gb: 'gb-art-8', us: 'us-101-13', codex: 'codex-cxg23-3' } as const;

/** The law lists no nutrition claim of this kind for the nutrient (empty when none is named). */
export function noSuchContentClaim(ground: LawGround, nutrient: string, kind: string, clause: string = unlistedBy[ground.law]): LawVerdict {
  return verdict(ground, 'not-lawful', { clauses: [clause], reasons: [{ code: 'no-such-content-claim', data: { nutrient, kind } }] });
}

/** Verdicts on several nutrients of one claim as one of this kind; `reasons` come after theirs. */
export function together(ground: LawGround, kind: VerdictKind, each: readonly LawVerdict[], reasons: readonly Reason[] = []): LawVerdict {
  return verdict(ground, kind, {
    clauses: [...new Set(each.flatMap((v) => v.clauses))], reasons: [...each.flatMap((v) => v.reasons), ...reasons],
    measurements: each.flatMap((v) => v.measurements), nutrition: each.flatMap((v) => v.nutrition),
  });
}

const asIf: Readonly<Record<string, string>> = { question: 'also-as-question', reported: 'also-as-report', hedged: 'also-hedged' };

/** The way of saying that does not change the verdict: a question, a report or a "may" still makes the claim. */
export function manner(claim: Claim): Reason[] {
  const code = asIf[claim.polarity];
  return code === undefined ? [] : [{ code, data: {} }];
}

/** A name of the table's nutrient under this law: folate is judged in the unit the law uses. */
export function lawNutrient(ground: LawGround, id: string): string {
  if (id !== 'folate') return id;
  return ground.nutrition.some((f) => f.nutrient === 'folate') ? 'folate' : 'folate-dfe';
}

export function known(id: string): id is NutrientId {
  return isNutrientId(id) && nutrientOf(id).id === id;
}
