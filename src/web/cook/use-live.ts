import { useCallback, useEffect, useRef, useState } from 'react';
import type { LiveView } from '../../app/live-cooking.ts';
import type { Tap } from '../../core/cooking/index.ts';
import { cookApi, CookRefusal } from './cook-api.ts';

/** Clock minutes from midnight by this device, with seconds as a fraction, on the day that lies nearest the plan. */
export function clockMinute(around: number | null): number {
  const now = new Date();
  const minute = now.getHours() * 60 + now.getMinutes() + now.getSeconds() / 60;
  if (around === null) return minute;
  return minute + 1440 * Math.round((around - minute) / 1440);
}

interface WaitingTap {
  readonly id: string;
  readonly tap: Tap;
  readonly minute: number;
}

const shelf = 'truepot-cook-taps';

function waitingTaps(): WaitingTap[] {
  try {
    return JSON.parse(localStorage.getItem(shelf) ?? '[]') as WaitingTap[];
  } catch {
    return [];
  }
}

export interface Live {
  readonly view: LiveView | null;
  /** False until the first answer. */
  readonly known: boolean;
  readonly minute: number;
  readonly trouble: string | null;
  readonly tap: (tap: Tap) => void;
  readonly end: () => void;
}

/** The evening that is on: follows the clock each second, asks the server each minute, sends taps in order and keeps them while it does not answer. */
export function useLive(first: LiveView | null): Live {
  const [view, setView] = useState<LiveView | null>(first);
  const [known, setKnown] = useState(first !== null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const around = view === null ? null : view.live.plan.end;
  const [minute, setMinute] = useState(() => clockMinute(around));
  const sending = useRef(false);

  useEffect(() => {
    const timer = setInterval(() => setMinute(clockMinute(around)), 1000);
    return () => clearInterval(timer);
  }, [around]);

  const take = useCallback((next: LiveView | null) => {
    setView((old) => (next && old?.id === next.id && old.live.revision > next.live.revision ? old : next));
    setKnown(true);
    setTrouble(null);
  }, []);

  const send = useCallback(async () => {
    if (sending.current) return;
    sending.current = true;
    try {
      for (let list = waitingTaps(); list.length > 0; list = waitingTaps()) {
        const next = list[0]!;
        try {
          take(await cookApi.tap(next.id, next.tap, next.minute));
        } catch (error) {
          if (error instanceof CookRefusal && error.offline) throw error;
          setTrouble(error instanceof Error ? error.message : String(error));
        }
        localStorage.setItem(shelf, JSON.stringify(waitingTaps().slice(1)));
      }
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error));
    } finally {
      sending.current = false;
    }
  }, [take]);

  const whole = Math.floor(minute);
  useEffect(() => {
    let gone = false;
    void (async () => {
      if (waitingTaps().length > 0) await send();
      try {
        const next = await cookApi.live(clockMinute(around));
        if (!gone) take(next);
      } catch (error) {
        if (!gone) setTrouble(error instanceof Error ? error.message : String(error));
      }
    })();
    return () => {
      gone = true;
    };
  }, [whole, around, send, take]);

  const id = view?.id ?? null;
  const tap = useCallback(
    (made: Tap) => {
      if (id === null) return;
      localStorage.setItem(shelf, JSON.stringify([...waitingTaps(), { id, tap: made, minute: clockMinute(around) }]));
      void send();
    },
    [id, around, send],
  );
  const end = useCallback(() => {
    if (id !== null) void cookApi.end(id).then(() => setView(null)).catch((error: unknown) => setTrouble(String(error)));
  }, [id]);
  return { view, known, minute, trouble, tap, end };
}
