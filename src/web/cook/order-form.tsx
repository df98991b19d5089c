import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { CookOrder } from '../../app/cook-dishes.ts';
import type { Kitchen, When } from '../../core/cooking/index.ts';

export interface DishChoice {
  readonly name: string;
  readonly text: string;
}

export interface OrderDraft {
  readonly dishes: readonly DishChoice[];
  readonly time: string;
  readonly when: When['kind'];
  readonly rings: number;
  readonly cooks: number;
  readonly shelves: number;
  readonly script: string;
  readonly rate: number;
}

export function usualDraft(kitchen: Kitchen, wordsPerMinute: number): OrderDraft {
  return { dishes: [{ name: '', text: '' }], time: '19:30', when: 'serve-at', rings: kitchen.rings, cooks: kitchen.cooks, shelves: kitchen.shelves, script: '', rate: wordsPerMinute };
}

function minuteOf(time: string): number {
  const [hour, minute] = time.split(':').map(Number);
  return (hour ?? 0) * 60 + (minute ?? 0);
}

export function orderOf(draft: OrderDraft, now: number): CookOrder {
  const when: When = draft.when === 'serve-at' ? { kind: 'serve-at', minute: minuteOf(draft.time), notBefore: null } : { kind: draft.when, minute: Math.floor(now) };
  return {
    dishes: draft.dishes.filter((dish) => dish.text.trim() !== '').map((dish) => ({ name: dish.name.trim() === '' ? null : dish.name.trim(), text: dish.text })),
    kitchen: { rings: draft.rings, cooks: draft.cooks, shelves: draft.shelves },
    when,
    script: draft.script.trim() === '' ? null : draft.script,
    wordsPerMinute: draft.rate,
    deadAirSeconds: null,
  };
}

interface FormProps {
  readonly draft: OrderDraft;
  readonly onChange: (draft: OrderDraft) => void;
  readonly saved: readonly DishChoice[];
  readonly busy: boolean;
  readonly onPlan: () => void;
}

/** Her dishes, her kitchen, when, and what she wants to say. */
export function OrderForm({ draft, onChange, saved, busy, onPlan }: FormProps) {
  const [pick, setPick] = useState('');
  const set = (change: Partial<OrderDraft>): void => onChange({ ...draft, ...change });
  const dish = (index: number, change: Partial<DishChoice>): void => set({ dishes: draft.dishes.map((one, i) => (i === index ? { ...one, ...change } : one)) });
  const count = (label: string, key: 'rings' | 'cooks' | 'shelves' | 'rate', range: [number, number]) => (
    <label className="field"><span>{label}</span><input type="number" min={range[0]} max={range[1]} value={draft[key]} onChange={(event) => set({ [key]: Number(event.target.value) })} /></label>
  );
  return (
    <form className="cook-form" onSubmit={(event) => { event.preventDefault(); onPlan(); }}>
      {draft.dishes.map((one, index) => (
        <fieldset key={index}>
          <legend>Dish {index + 1}</legend>
          <label className="field"><span>Name (or leave it to the text)</span><input value={one.name} onChange={(event) => dish(index, { name: event.target.value })} /></label>
          <label className="field"><span>Recipe with its method, or steps one a line: “chop the onion: 5 min, hands, board”</span><textarea rows={8} value={one.text} onChange={(event) => dish(index, { text: event.target.value })} /></label>
          {draft.dishes.length > 1 && <Button className="plain" onPress={() => set({ dishes: draft.dishes.filter((_, i) => i !== index) })}>Take this dish out</Button>}
        </fieldset>
      ))}
      <div className="cook-row">
        <Button className="plain" onPress={() => set({ dishes: [...draft.dishes, { name: '', text: '' }] })}>Add a dish</Button>
        {saved.length > 0 && (
          <label className="field"><span>Add a saved dish</span>
            <select value={pick} onChange={(event) => {
              const chosen = saved.find((one) => one.name === event.target.value);
              if (chosen) set({ dishes: [...draft.dishes.filter((one) => one.text.trim() !== ''), chosen] });
              setPick('');
            }}>
              <option value="">Choose …</option>
              {saved.map((one) => <option key={one.name}>{one.name}</option>)}
            </select>
          </label>
        )}
      </div>
      <div className="cook-row">
        <label className="field"><span>When</span>
          <select value={draft.when} onChange={(event) => set({ when: event.target.value as When['kind'] })}>
            <option value="serve-at">On the table at</option>
            <option value="start-now">Start now</option>
            <option value="shortest">Shortest, from now</option>
          </select>
        </label>
        {draft.when === 'serve-at' && <label className="field"><span>Time</span><input type="time" value={draft.time} onChange={(event) => set({ time: event.target.value })} /></label>}
        {count('Rings', 'rings', [0, 12])}
        {count('Cooks', 'cooks', [1, 6])}
        {count('Oven shelves', 'shelves', [0, 6])}
      </div>
      <details open={draft.script !== ''}>
        <summary>What you want to say while you cook</summary>
        <label className="field"><span>Paragraphs with an empty line between. “[while the beetroot roasts]” in front ties one to a step.</span><textarea rows={6} value={draft.script} onChange={(event) => set({ script: event.target.value })} /></label>
        <div className="cook-row">{count('Words a minute', 'rate', [40, 400])}</div>
      </details>
      <Button type="submit" isDisabled={busy}>{busy ? 'Planning …' : 'Make the plan'}</Button>
    </form>
  );
}
