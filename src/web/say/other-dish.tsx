import { useEffect, useState } from 'react';
import type { DeskOptions } from '../../app/desk.ts';
import type { SavedDish } from '../../app/ports.ts';
import { api } from '../api.ts';
import type { OtherDish } from './say-api.ts';

/** The dish that "less" and "more" compare with: a saved one or a demo dish. `own` is the dish of the page itself, which is not offered. */
export function OtherDishChoice({ own, options, compared, onChoose }: { readonly own: string | null; readonly options: DeskOptions; readonly compared: string | null; readonly onChoose: (other: OtherDish | null) => void }) {
  const [saved, setSaved] = useState<readonly SavedDish[]>([]);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    api.dishes('', false).then(setSaved).catch((error: unknown) => setTrouble(error instanceof Error ? error.message : String(error)));
  }, []);
  const offered = saved.filter((dish) => dish.id !== own);
  const choose = (value: string): void => {
    const demo = options.demos.find((d) => `demo:${d.name}` === value);
    onChoose(demo ? { text: demo.text } : value === '' ? null : { id: value });
  };
  return (
    <div className="other-dish">
      <label className="field">
        <span>“Less”, “reduced” and “more” compare with</span>
        <select defaultValue="" onChange={(e) => choose(e.target.value)}>
          <option value="">no other dish</option>
          {offered.length > 0 && <optgroup label="Saved dishes">{offered.map((dish) => <option key={dish.id} value={dish.id}>{dish.name}</option>)}</optgroup>}
          <optgroup label="Demo dishes">{options.demos.map((demo) => <option key={demo.name} value={`demo:${demo.name}`}>{demo.name}</option>)}</optgroup>
        </select>
      </label>
      {compared !== null && <p className="quiet">{compared} Name the other dish in the sentence.</p>}
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
    </div>
  );
}
