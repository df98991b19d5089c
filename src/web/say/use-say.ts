import { useCallback, useEffect, useState } from 'react';
import type { DishChoices } from '../../app/dish-choices.ts';
import type { SayReport } from '../../app/say-report.ts';
import type { LawId } from '../../core/statements/index.ts';
import { askSay, type OtherDish } from './say-api.ts';

const scriptKey = 'truepot script';
const lawsKey = 'truepot laws';

function keptLaws(): readonly LawId[] {
  try {
    const kept = JSON.parse(localStorage.getItem(lawsKey) ?? '["eu"]') as LawId[];
    return kept.length > 0 ? kept : ['eu'];
  } catch {
    return ['eu'];
  }
}

/** A report and the script that it speaks of: while she types, the two are a moment apart. */
export interface Checked {
  readonly script: string;
  readonly report: SayReport;
}

export interface SayState {
  readonly script: string;
  readonly laws: readonly LawId[];
  readonly pregnant: boolean;
  readonly other: OtherDish | null;
  readonly checked: Checked | null;
  readonly trouble: string | null;
  setScript(script: string): void;
  setLaws(laws: readonly LawId[]): void;
  setPregnant(is: boolean): void;
  setOther(other: OtherDish | null): void;
  /** Checks the same script once more, after something else has changed. */
  again(): void;
}

/** The script being worked on, kept from one visit to the next, and its report a moment after each change. */
export function useSay(dish: { readonly text: string; readonly choices: DishChoices }): SayState {
  const [script, setScript] = useState(() => localStorage.getItem(scriptKey) ?? '');
  const [laws, setLaws] = useState(keptLaws);
  const [pregnant, setPregnant] = useState(false);
  const [other, setOther] = useState<OtherDish | null>(null);
  const [round, setRound] = useState(0);
  const [checked, setChecked] = useState<Checked | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const { text, choices } = dish;
  useEffect(() => {
    localStorage.setItem(scriptKey, script);
    localStorage.setItem(lawsKey, JSON.stringify(laws));
    const abort = new AbortController();
    const wait = setTimeout(() => {
      askSay({ text, choices, script, laws, client: pregnant ? ['pregnant', 'trying'] : [], other }, abort.signal)
        .then((report) => { setChecked({ script, report }); setTrouble(null); })
        .catch((error: unknown) => { if (!abort.signal.aborted) setTrouble(error instanceof Error ? error.message : String(error)); });
    }, 300);
    return () => { clearTimeout(wait); abort.abort(); };
  }, [text, choices, script, laws, pregnant, other, round]);
  const again = useCallback(() => setRound((n) => n + 1), []);
  return { script, laws, pregnant, other, checked, trouble, setScript, setLaws, setPregnant, setOther, again };
}
