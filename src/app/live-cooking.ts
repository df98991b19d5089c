import { caughtUp, finished, runningSheet, startLive, tapped, type LiveCook, type SheetRow, type Tap, type TalkTrack } from '../core/cooking/index.ts';
import { AppError } from '../errors.ts';
import { cookDishes, liveTools, talkOf, type CookAnswer, type CookOrder, type CookTools } from './cook-dishes.ts';
import type { Ids, ValueStore } from './ports.ts';

/** What is stored of an evening that is being cooked. */
interface Stored {
  readonly id: string;
  readonly order: CookOrder;
  readonly dishNames: Readonly<Record<string, string>>;
  readonly live: LiveCook;
}

export interface LiveView {
  readonly id: string;
  readonly dishNames: Readonly<Record<string, string>>;
  readonly live: LiveCook;
  readonly talk: TalkTrack | null;
  readonly sheet: readonly SheetRow[];
  readonly finished: boolean;
}

export interface LiveCooking {
  /** Plans the order for live mode and stores it as the evening that is on. */
  begin(order: CookOrder): Promise<LiveView | Exclude<CookAnswer, { kind: 'plan' }>>;
  /** The evening that is on, moved up to `minute`; null when none is. */
  current(minute: number): Promise<LiveView | null>;
  /** One tap at a clock minute; stored before the answer goes out. */
  tap(id: string, tap: Tap, minute: number): Promise<LiveView>;
  /** Ends the evening; its record is let go. */
  end(id: string): Promise<void>;
}

const key = 'cook-live';

/** Live mode over the store of small values: one evening at a time, written on every change, so that a reload or a power cut loses nothing. */
export function liveCooking(tools: CookTools, values: ValueStore, ids: Ids): LiveCooking {
  // One change after the other: two taps in the same moment must not overwrite each other.
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const next = last.then(work, work);
    last = next.catch(() => undefined);
    return next;
  };
  const view = (stored: Stored): LiveView => {
    const { live, order, dishNames } = stored;
    const cooks = live.request.kitchen.cooks;
    const talk = talkOf(order, live.plan, { cooks, names: dishNames, tables: tools.tables });
    return { id: stored.id, dishNames, live, talk, sheet: runningSheet(live.plan, talk, cooks), finished: finished(live) };
  };
  const read = async (): Promise<Stored | null> => ((await values.get(key)) as Stored | null | undefined) ?? null;
  const keep = async (stored: Stored): Promise<LiveView> => {
    await values.put(key, stored);
    return view(stored);
  };
  return {
    begin: (order) =>
      inTurn(async () => {
        const answer = cookDishes(order, tools, true);
        if (answer.kind !== 'plan') return answer;
        return keep({ id: ids.fresh(), order, dishNames: answer.dishNames, live: startLive(answer.request, answer.plan) });
      }),
    current: (minute) =>
      inTurn(async () => {
        const stored = await read();
        if (!stored) return null;
        const live = caughtUp(stored.live, minute, liveTools(tools));
        return live === stored.live ? view(stored) : keep({ ...stored, live });
      }),
    tap: (id, tap, minute) =>
      inTurn(async () => {
        const stored = await read();
        if (stored?.id !== id) throw new AppError('bad-input', { what: 'This cooking is no longer on. Open the plan again and start it once more.' });
        return keep({ ...stored, live: tapped(stored.live, tap, minute, liveTools(tools)) });
      }),
    end: (id) =>
      inTurn(async () => {
        if ((await read())?.id === id) await values.remove(key);
      }),
  };
}
