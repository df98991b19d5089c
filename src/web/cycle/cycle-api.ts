import type { CycleAnswer, CycleStart } from '../../app/cycle-answer.ts';
import type { Scheme } from '../../core/scheme/index.ts';
import { ask } from '../api.ts';

export interface CycleAsk {
  readonly text: string;
  readonly on: string | null;
  readonly order: 'day-first' | 'month-first' | null;
  readonly scheme: string | Scheme;
  readonly days: number;
  readonly noneSince: boolean;
  readonly menuChanged: string | null;
  readonly region: string;
}

const send = (path: string, body: unknown): Promise<Response> => ask(path, body === undefined ? {} : { method: 'POST', body });

export const cycleApi = {
  start: async () => (await (await send('/cycle', undefined)).json()) as CycleStart,
  workOut: async (ask: CycleAsk) => (await (await send('/cycle', ask)).json()) as CycleAnswer,
  calendar: async (ask: CycleAsk) => (await send('/cycle/calendar', ask)).blob(),
};

/** Hands a file to the browser to save. */
export function saveFile(name: string, content: Blob): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
