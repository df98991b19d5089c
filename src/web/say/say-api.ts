import type { DishChoices } from '../../app/dish-choices.ts';
import type { SayReport } from '../../app/say-report.ts';
import type { LawId } from '../../core/statements/index.ts';
import { Refusal } from '../api.ts';

export interface SayAsk {
  readonly text: string;
  readonly choices: DishChoices;
  readonly script: string;
  readonly laws: readonly LawId[];
  readonly client: readonly string[];
}

/** Asks the desk to hold a script against a dish. */
export async function askSay(ask: SayAsk, signal: AbortSignal): Promise<SayReport> {
  const response = await fetch('/api/say', { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(ask), signal });
  const body = (await response.json()) as SayReport & { title?: string; code?: string };
  if (!response.ok) throw new Refusal(body.title, body.code ?? 'unknown');
  return body;
}
