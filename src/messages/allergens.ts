import type { AllergenReason, AllergenState, DietVerdict } from '../core/foods/index.ts';

/** The state of an allergen in few words. `not` never says "free from". */
export function allergenStateText(state: AllergenState): string {
  switch (state) {
    case 'contains': return 'contains';
    case 'may': return 'may contain';
    case 'unknown': return 'not known';
    case 'not': return 'not by its ingredients';
  }
}

/** Why a substance is told; `line` is the line's own words, null for the method. */
export function allergenReasonText(reason: AllergenReason, line: string | null): string {
  const at = line === null ? '' : ` (${line})`;
  const why = reason.why === null ? '' : ` ${reason.why}`;
  switch (reason.code) {
    case 'composition': return `It is in ${reason.of}${at}.`;
    case 'some-recipes': return `Some recipes or kinds of ${reason.of} hold it${at}.${why}`;
    case 'cross-contact': return `Traces can come with ${reason.of}${at}.${why}`;
    case 'form': return `The form brings it: ${reason.of}${at}.${why}`;
    case 'words': return `The words say so: “${reason.of}”${at}.`;
    case 'treatment': return `“${reason.of}” in the line${at}.${why}`;
    case 'claim': return `The line says “${reason.of}”${at}: check the pack, it is not proven here.`;
    case 'instead': return `The line offers “${reason.of}” instead${at}.`;
    case 'ready-made': return `${capital(reason.of)} is bought ready and makers’ recipes differ${at}: read the pack.`;
    case 'no-composition': return `Nobody has said what is in ${reason.of}${at}.`;
    case 'words-not-read': return `The words “${reason.of}” were not read${at}, so it may be another food.`;
    case 'method': return `The method speaks of “${reason.of}”, which stands in no line.`;
    case 'not-read': return 'Part of the text was not read, so nothing can be ruled out.';
  }
}

export function dietVerdictText(verdict: DietVerdict): string {
  switch (verdict) {
    case 'fits': return 'fits, by its ingredients';
    case 'breaks': return 'does not fit';
    case 'may-break': return 'may not fit';
    case 'unknown': return 'not known';
  }
}

/** Stands with every telling of allergens. */
export const allergenCaution = 'Worked out from ingredients as a kitchen usually buys them. It knows nothing of your packs, your kitchen or who cooked before: read every label, and never serve someone with an allergy on the word of this list.';

export const fodmapCaution = 'Notes only: what a person bears depends on the amount and on the person. Ask a dietitian before leaving foods out.';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
