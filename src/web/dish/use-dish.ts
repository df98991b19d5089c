import { useCallback, useEffect, useRef, useState } from 'react';
import type { DishChoices } from '../../app/dish-choices.ts';
import type { DishReport } from '../../app/dish-report.ts';
import type { SavedDish } from '../../app/ports.ts';
import type { LineCorrection } from '../../core/dish/index.ts';
import { api } from '../api.ts';

export interface DishState {
  readonly text: string;
  readonly choices: DishChoices;
  readonly saved: SavedDish | null;
  readonly report: DishReport | null;
  readonly trouble: string | null;
  readonly working: boolean;
  setText(text: string): void;
  choose(change: Partial<DishChoices>): void;
  /** Keeps what she put right on a line; null takes all her corrections of that line back. */
  correct(lineKey: string, change: Omit<LineCorrection, 'lineKey'> | null): void;
  setSaved(dish: SavedDish): void;
}

interface Draft {
  readonly text: string;
  readonly choices: DishChoices;
}

const draftKey = 'truepot draft';

/** The unsaved dish of last time: closing the window loses nothing. */
function readDraft(): Draft | null {
  try {
    return JSON.parse(localStorage.getItem(draftKey) ?? 'null') as Draft | null;
  } catch {
    return null;
  }
}

/** A dish being worked on: its text and choices, and the report that follows them a moment after each change. */
export function useDish(id: string | null, usual: DishChoices, demo: string): DishState {
  const [draft, setDraft] = useState<Draft | null>(() => (id === null ? { ...{ text: demo, choices: usual }, ...readDraft() } : null));
  const [saved, setSaved] = useState<SavedDish | null>(null);
  const [report, setReport] = useState<DishReport | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [working, setWorking] = useState(false);
  const first = useRef(true);

  useEffect(() => {
    if (id === null) return;
    api.dish(id).then((dish) => {
      setSaved(dish);
      setDraft({ text: dish.text, choices: dish.choices });
    }).catch((error: unknown) => setTrouble(error instanceof Error ? error.message : String(error)));
  }, [id]);

  useEffect(() => {
    if (draft === null) return undefined;
    if (id === null) localStorage.setItem(draftKey, JSON.stringify(draft));
    const abort = new AbortController();
    const wait = setTimeout(() => {
      setWorking(true);
      api.workOut(draft.text, draft.choices, abort.signal).then((now) => {
        setReport(now);
        setTrouble(null);
      }).catch((error: unknown) => {
        if (!abort.signal.aborted) setTrouble(error instanceof Error ? error.message : String(error));
      }).finally(() => setWorking(false));
    }, first.current ? 0 : 250);
    first.current = false;
    return () => {
      clearTimeout(wait);
      abort.abort();
    };
  }, [draft, id]);

  const change = useCallback((next: (now: Draft) => Draft) => setDraft((now) => (now === null ? now : next(now))), []);
  return {
    text: draft?.text ?? '',
    choices: draft?.choices ?? usual,
    saved,
    report,
    trouble,
    working,
    setText: (text) => change((now) => ({ ...now, text })),
    choose: (choices) => change((now) => ({ ...now, choices: { ...now.choices, ...choices } })),
    correct: (lineKey, correction) =>
      change((now) => {
        const others = now.choices.corrections.filter((c) => c.lineKey !== lineKey);
        const before = now.choices.corrections.find((c) => c.lineKey === lineKey);
        const corrections = correction === null ? others : [...others, { ...before, ...correction, lineKey }];
        return { ...now, choices: { ...now.choices, corrections } };
      }),
    setSaved,
  };
}
