import { hasPhrase } from './allergen-words.ts';
import type { AllergenReason, SubstanceStates } from './allergen-state.ts';
import type { AllergenTables, Diet, SubstanceId } from './allergen-tables.ts';

/** `fits`: nothing by its composition breaks it; `may-break`: something may; `unknown`: a composition is not known. */
export type DietVerdict = 'fits' | 'breaks' | 'may-break' | 'unknown';

export interface ToldDiet {
  readonly diet: Diet;
  readonly verdict: DietVerdict;
  readonly by: readonly { readonly substance: SubstanceId; readonly reasons: readonly AllergenReason[] }[];
}

/** Every diet told for a dish's substances. Traces from shared lines do not break a diet; recipes that differ may. */
export function toldDiets(tables: AllergenTables, states: SubstanceStates): readonly ToldDiet[] {
  return tables.diets.map((diet) => {
    const asked = diet.brokenBy.map((substance) => ({ substance, told: states.get(substance) ?? { state: 'unknown' as const, reasons: [] } }));
    const doubts = diet.doubtful.map((substance) => ({ substance, told: states.get(substance) ?? { state: 'unknown' as const, reasons: [] } }));
    const breaking = asked.filter(({ told }) => told.state === 'contains');
    const maybe = [...asked.filter(({ told }) => told.state === 'may' && told.reasons.some((r) => r.code !== 'cross-contact')), ...doubts.filter(({ told }) => told.state === 'contains' || told.state === 'may')];
    const unknown = asked.filter(({ told }) => told.state === 'unknown');
    const by = (found: typeof asked): ToldDiet['by'] => found.map(({ substance, told }) => ({ substance, reasons: told.reasons }));
    if (breaking.length > 0) return { diet, verdict: 'breaks', by: by(breaking) };
    if (maybe.length > 0) return { diet, verdict: 'may-break', by: by(maybe) };
    return unknown.length > 0 ? { diet, verdict: 'unknown', by: by(unknown) } : { diet, verdict: 'fits', by: [] };
  });
}

/** Kinds of FODMAP that the words of a food speak of; notes only, amounts that people bear differ. */
export function fodmapKinds(tables: AllergenTables, names: readonly string[]): readonly string[] {
  const text = names.join(' , ');
  if (tables.fodmap.except.some((phrase) => hasPhrase(text, phrase))) return [];
  return tables.fodmap.notes.filter((note) => note.words.some((word) => hasPhrase(text, word) || hasPhrase(text, `${word}s`))).map((note) => note.kind);
}
