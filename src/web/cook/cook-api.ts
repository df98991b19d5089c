import type { CookAnswer, CookOrder } from '../../app/cook-dishes.ts';
import type { LiveView } from '../../app/live-cooking.ts';
import type { Kitchen, Tap } from '../../core/cooking/index.ts';

/** A refusal in the server's words, or that nobody answered. */
export class CookRefusal extends Error {
  readonly offline: boolean;
  constructor(title: string, offline: boolean) {
    super(title);
    this.offline = offline;
  }
}

async function call<T>(path: string, init: { method?: string; body?: unknown } = {}): Promise<T> {
  let response: Response;
  try {
    response = await fetch(`/api${path}`, {
      method: init.method ?? 'GET',
      headers: init.body === undefined ? {} : { 'content-type': 'application/json' },
      body: init.body === undefined ? null : JSON.stringify(init.body),
    });
  } catch {
    throw new CookRefusal('Truepot does not answer. Look whether it is still running in its window; your taps are kept here and sent as soon as it does.', true);
  }
  if (response.status === 204) return undefined as T;
  const body = (await response.json()) as { title?: string };
  if (!response.ok) throw new CookRefusal(body.title ?? `The server answered ${response.status}.`, false);
  return body as T;
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
