import type { CookAnswer, CookOrder } from '../../app/cook-dishes.ts';
import type { LiveView } from '../../app/live-cooking.ts';
import type { Kitchen, Tap } from '../../core/cooking/index.ts';
import { call as ask, Refusal } from '../api.ts';

/** A refusal in the server's words, or that nobody answered. */
export class CookRefusal extends Error {
  readonly offline: boolean;
  constructor(title: string, offline: boolean) {
    super(title);
    this.offline = offline;
  }
}

/** The desk's `call`, with what the live page says when nobody answers. */
async function call<T>(path: string, init: { method?: string; body?: unknown } = {}): Promise<T> {
  try {
    return await ask<T>(path, init);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const offline = error.code === 'offline';
    throw new CookRefusal(offline ? 'Truepot does not answer. Look whether it is still running in its window; your taps are kept here and sent as soon as it does.' : error.message, offline);
  }
}

export interface UsualKitchen {
  readonly kitchen: Kitchen;
  readonly wordsPerMinute: number;
  readonly deadAirSeconds: number;
}

export const cookApi = {
  kitchen: () => call<UsualKitchen>('/cook/kitchen'),
  plan: (order: CookOrder) => call<CookAnswer>('/cook/plan', { method: 'POST', body: order }),
  begin: (order: CookOrder) => call<LiveView | Exclude<CookAnswer, { kind: 'plan' }>>('/cook/live', { method: 'POST', body: order }),
  live: (minute: number) => call<LiveView | null>(`/cook/live?minute=${minute.toFixed(3)}`),
  tap: (id: string, tap: Tap, minute: number) => call<LiveView>(`/cook/live/${id}/tap`, { method: 'POST', body: { tap, minute } }),
  end: (id: string) => call<void>(`/cook/live/${id}`, { method: 'DELETE' }),
};
