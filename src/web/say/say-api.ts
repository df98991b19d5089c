import type { DishChoices } from '../../app/dish-choices.ts';
import type { SayReport } from '../../app/say-report.ts';
import type { LawId } from '../../core/statements/index.ts';
import { call } from '../api.ts';

export interface SayAsk {
  readonly text: string;
  readonly choices: DishChoices;
  readonly script: string;
  readonly laws: readonly LawId[];
  readonly client: readonly string[];
}

/** Asks the desk to hold a script against a dish. */
export function askSay(ask: SayAsk, signal: AbortSignal): Promise<SayReport> {
  return call<SayReport>('/say', { method: 'POST', body: ask, signal });
}
