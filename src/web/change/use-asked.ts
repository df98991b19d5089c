import { useEffect, useState } from 'react';

export interface Asked<T> {
  readonly answer: T | null;
  readonly trouble: string | null;
  readonly busy: boolean;
}

export const troubleText = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Asks again whenever `key` changes, a moment after; the answer before stays until the new one is there. A null key asks nothing. */
export function useAsked<T>(key: string | null, ask: (signal: AbortSignal) => Promise<T>): Asked<T> {
  const [state, setState] = useState<Asked<T>>({ answer: null, trouble: null, busy: false });
  useEffect(() => {
    if (key === null) return undefined;
    const abort = new AbortController();
    const wait = setTimeout(() => {
      setState((now) => ({ ...now, busy: true }));
      ask(abort.signal)
        .then((answer) => setState({ answer, trouble: null, busy: false }))
        .catch((error: unknown) => {
          if (!abort.signal.aborted) setState((now) => ({ ...now, trouble: troubleText(error), busy: false }));
        });
    }, 200);
    return () => {
      clearTimeout(wait);
      abort.abort();
    };
    // The key says everything that the question depends on.
  }, [key]);
  return state;
}
