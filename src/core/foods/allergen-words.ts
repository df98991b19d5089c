import type { AllergenTables, SubstanceId } from './allergen-tables.ts';
import { plainText, singular } from './word-forms.ts';

/** Words of a text in a row with a space at each end, hyphens opened, singular and plural kept as written. */
function wordRow(text: string): string {
  return ` ${plainText(text).replace(/'/g, '').replace(/[^a-z0-9]+/g, ' ').trim()} `;
}

/** The same for a phrase of the tables. */
const phraseRow = (phrase: string): string => wordRow(phrase);

/** Whether a phrase stands in the text as whole words. */
export function hasPhrase(text: string, phrase: string): boolean {
  return wordRow(text).includes(phraseRow(phrase));
}

/** A substance that a text's words name. */
export interface NamedSubstance {
  readonly substance: SubstanceId;
  readonly word: string;
}

/** Looks for the words of substances in a text; phrases that only sound like them are read first. */
export interface AllergenWordFinder {
  /** Words of `known` (names whose composition is already told) are not looked at. */
  find(text: string, known: readonly string[]): readonly NamedSubstance[];
}

/** Builds the finder once for the tables. A phrase is matched as whole words, longest first. */
export function allergenWordFinder(tables: Pick<AllergenTables, 'substances' | 'neutral' | 'readAs'>): AllergenWordFinder {
  const bySize = (a: readonly [string, string], b: readonly [string, string]): number => b[0].length - a[0].length;
  const replacements = [
    ...tables.neutral.map((phrase) => [phraseRow(phrase), ' '] as const),
    ...Object.entries(tables.readAs).map(([phrase, as]) => [phraseRow(phrase), phraseRow(as)] as const),
  ].sort(bySize);
  const words = tables.substances.flatMap((s) => s.words.map((word) => ({ substance: s.id, word, row: phraseRow(word) })));
  return {
    find(text, known) {
      let row = wordRow(text);
      for (const [phrase, as] of replacements) row = row.replaceAll(phrase, as);
      const told = new Set(known.flatMap((name) => wordRow(name).trim().split(' ').flatMap((w) => [w, singular(w)])));
      const isTold = (word: string): boolean => word.split(' ').every((w) => told.has(w) || told.has(singular(w)));
      const found = new Map<SubstanceId, string>();
      for (const { substance, word, row: wanted } of words) {
        if (!found.has(substance) && row.includes(wanted) && !isTold(word)) found.set(substance, word);
      }
      return [...found].map(([substance, word]) => ({ substance, word }));
    },
  };
}
