import type { SubstanceId } from './allergen-tables.ts';

/**
 * What is known of a substance in a food, a line or a dish. `may`: a recipe, kind or shared line
 * may bring it; `unknown`: nobody has said; `not`: its composition has none. `not` never speaks
 * of traces, kitchens or packs, so it is not "free from".
 */
export type AllergenState = 'contains' | 'may' | 'unknown' | 'not';

export type AllergenReasonCode = 'composition' | 'some-recipes' | 'cross-contact' | 'form' | 'words' | 'treatment' | 'claim' | 'instead' | 'ready-made' | 'no-composition' | 'words-not-read' | 'method' | 'not-read';

export interface AllergenReason {
  readonly code: AllergenReasonCode;
  /** The food, phrase or word behind it. */
  readonly of: string;
  /** A sentence of the tables, null where there is none. */
  readonly why: string | null;
  /** Null for the method and for text that was not read. */
  readonly lineId: string | null;
}

export interface SubstanceState {
  readonly state: AllergenState;
  /** Reasons of the state; for `not` there are none. */
  readonly reasons: readonly AllergenReason[];
}

export type SubstanceStates = ReadonlyMap<SubstanceId, SubstanceState>;

const rank: Readonly<Record<AllergenState, number>> = { contains: 3, may: 2, unknown: 1, not: 0 };

/** The graver of two states; reasons of the same state are kept together. */
export function graver(a: SubstanceState, b: SubstanceState): SubstanceState {
  if (rank[a.state] !== rank[b.state]) return rank[a.state] > rank[b.state] ? a : b;
  const seen = new Set(a.reasons.map((r) => `${r.code} ${r.of} ${r.lineId ?? ''}`));
  const added = b.reasons.filter((r) => !seen.has(`${r.code} ${r.of} ${r.lineId ?? ''}`));
  return added.length === 0 ? a : { state: a.state, reasons: [...a.reasons, ...added] };
}

/** Whether one state is graver than another. */
export function isGraver(a: AllergenState, b: AllergenState): boolean {
  return rank[a] > rank[b];
}

/** States of two things together: for each substance the graver. */
export function together(ids: readonly SubstanceId[], parts: readonly SubstanceStates[]): SubstanceStates {
  return new Map(
    ids.map((id) => {
      let state: SubstanceState = { state: 'not', reasons: [] };
      for (const part of parts) state = graver(state, part.get(id) ?? { state: 'unknown', reasons: [] });
      return [id, state];
    }),
  );
}
