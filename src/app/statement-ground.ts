import type { EvidenceNote, StatementRules, StatementVocabulary } from '../core/statements/index.ts';
import type { ValueStore } from './ports.ts';

/** Rules and words of statements, loaded and made ready once by an adapter. */
export interface StatementGround {
  readonly rules: StatementRules;
  readonly vocabulary: StatementVocabulary;
}

const ownNotesKey = 'evidence-notes';

/** Her own evidence notes, kept on her machine. */
export async function readOwnNotes(values: ValueStore): Promise<EvidenceNote[]> {
  const kept = await values.get(ownNotesKey);
  return Array.isArray(kept) ? (kept as EvidenceNote[]) : [];
}

/** Adds a note, or replaces the one with its id at its place. */
export async function keepOwnNote(values: ValueStore, note: EvidenceNote): Promise<EvidenceNote[]> {
  const kept = await readOwnNotes(values);
  const notes = kept.some((n) => n.id === note.id) ? kept.map((n) => (n.id === note.id ? note : n)) : [...kept, note];
  await values.put(ownNotesKey, notes);
  return notes;
}

export async function dropOwnNote(values: ValueStore, id: string): Promise<EvidenceNote[]> {
  const notes = (await readOwnNotes(values)).filter((n) => n.id !== id);
  await values.put(ownNotesKey, notes);
  return notes;
}
