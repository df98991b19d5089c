import type { Claim } from './claim.ts';
import type { Plate } from './plate.ts';

export const evidenceGrades = ['well-established', 'mixed', 'early', 'traditional-only', 'contradicted'] as const;
export type EvidenceGrade = (typeof evidenceGrades)[number];

/** What is known about a statement that practitioners make; a row of data/statements/evidence or one of her own. */
export interface EvidenceNote {
  readonly id: string;
  /** Foods, nutrients and subjects by which a sentence finds it: every group must have a word in the sentence. */
  readonly about: readonly (readonly string[])[];
  readonly statement: string;
  readonly grade: EvidenceGrade;
  readonly finding: string;
  readonly citation: string;
  readonly doi: string | null;
  readonly population: string;
  /** What the studies gave, in words. */
  readonly dose: string | null;
  /** The same as a figure, to hold against a portion: grams a day of a food or extract. */
  readonly doseG: number | null;
  /** Names of the food in a dish whose grams stand beside the dose. */
  readonly doseFood: readonly string[];
  readonly checked: 'abstract' | 'secondary' | 'memory';
}

export interface EvidenceMatch {
  readonly note: EvidenceNote;
  /** Grams of the food in one portion of this dish; null when the dish has none or the weight is unknown. */
  readonly portionG: number | null;
}

function gramsOf(plate: Plate, names: readonly string[]): number | null {
  const here = plate.foods.filter((food) => food.names.some((name) => names.some((wanted) => name.includes(wanted))));
  if (here.length === 0 || here.some((food) => food.portionG === null)) return null;
  return here.reduce((sum, food) => sum + (food.portionG ?? 0), 0);
}

/** The notes that speak of a sentence: all word groups of a note are named in it. The most specific first. */
export function evidenceFor(sentence: string, claims: readonly Claim[], library: { readonly notes: readonly EvidenceNote[]; readonly plate: Plate }): EvidenceMatch[] {
  if (claims.length === 0) return [];
  const text = ` ${sentence.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ')} `;
  const names = (group: readonly string[]): boolean => group.some((word) => text.includes(` ${word}`));
  return library.notes
    .filter((note) => note.about.every(names))
    .sort((a, b) => b.about.length - a.about.length)
    .slice(0, 3)
    .map((note) => ({ note, portionG: note.doseFood.length === 0 ? null : gramsOf(library.plate, note.doseFood) }));
}
