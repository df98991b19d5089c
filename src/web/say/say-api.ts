import type { DishChoices } from '../../app/dish-choices.ts';
import type { SayReport } from '../../app/say-report.ts';
import type { EvidenceNote, LawId } from '../../core/statements/index.ts';
import { call } from '../api.ts';

/** A dish to compare with: a saved one, or one given as text. */
export type OtherDish = { readonly id: string } | { readonly text: string };

export interface SayAsk {
  readonly text: string;
  readonly choices: DishChoices;
  readonly script: string;
  readonly laws: readonly LawId[];
  readonly client: readonly string[];
  readonly other: OtherDish | null;
}

export type NoteContent = Omit<EvidenceNote, 'id' | 'checked'>;

/** Asks the desk to hold a script against a dish. */
export function askSay(ask: SayAsk, signal: AbortSignal): Promise<SayReport> {
  return call<SayReport>('/say', { method: 'POST', body: ask, signal });
}

/** Her own evidence notes; each change answers with the list as it is then. */
export const ownNotes = {
  list: () => call<EvidenceNote[]>('/say/evidence/own'),
  add: (note: NoteContent) => call<EvidenceNote[]>('/say/evidence', { method: 'POST', body: note }),
  change: (id: string, note: NoteContent) => call<EvidenceNote[]>(`/say/evidence/${encodeURIComponent(id)}`, { method: 'PUT', body: note }),
  remove: (id: string) => call<EvidenceNote[]>(`/say/evidence/${encodeURIComponent(id)}`, { method: 'DELETE' }),
};
