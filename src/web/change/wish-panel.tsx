import { useState } from 'react';
import { Button, Checkbox } from 'react-aria-components';
import type { ChangeDesk } from '../../app/change-desk.ts';
import type { WishReport } from '../../app/change-report.ts';
import type { DeskOptions } from '../../app/desk.ts';
import { isNutrientId } from '../../core/foods/index.ts';
import type { DishState } from '../dish/use-dish.ts';
import { changeApi } from './change-api.ts';
import { troubleText } from './use-asked.ts';

interface Bound { readonly id: string; readonly side: 'least' | 'most'; readonly amount: string }

/** "Reach 100 mg magnesium without nuts, under 2.50 a portion": what to swap, found by looking at every combination. */
export function WishPanel({ dish, options, choices, onText }: { readonly dish: DishState; readonly options: DeskOptions; readonly choices: ChangeDesk['options']; readonly onText: (text: string, label: string) => void }) {
  const [bounds, setBounds] = useState<readonly Bound[]>([{ id: 'magnesium', side: 'least', amount: '100' }]);
  const [without, setWithout] = useState('');
  const [diet, setDiet] = useState('');
  const [cost, setCost] = useState('');
  const [strict, setStrict] = useState(false);
  const [answer, setAnswer] = useState<WishReport | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const change = (at: number, next: Partial<Bound>): void => setBounds(bounds.map((b, i) => (i === at ? { ...b, ...next } : b)));
  const ask = (): void => {
    setBusy(true);
    setTrouble(null);
    const nutrients = bounds.flatMap((b) => (isNutrientId(b.id) && b.amount.trim() !== '' ? [{ id: b.id, least: b.side === 'least' ? Number(b.amount) : null, most: b.side === 'most' ? Number(b.amount) : null }] : []));
    changeApi.wish({ text: dish.text, choices: dish.choices }, { nutrients, without: without.split(',').map((w) => w.trim()).filter((w) => w !== ''), diets: diet === '' ? [] : [diet], costMost: cost.trim() === '' ? null : Number(cost), strict })
      .then(setAnswer).catch((error: unknown) => setTrouble(troubleText(error))).finally(() => setBusy(false));
  };
  return (
    <div>
      <h2>What would I swap to reach …</h2>
      <form className="change-form" onSubmit={(e) => { e.preventDefault(); ask(); }}>
        {bounds.map((bound, i) => (
          <div className="fields" key={i}>
            <label className="field"><span>A portion gives at</span><select value={bound.side} onChange={(e) => change(i, { side: e.target.value === 'most' ? 'most' : 'least' })}><option value="least">least</option><option value="most">most</option></select></label>
            <label className="field"><span>Amount, {options.nutrients.find((n) => n.id === bound.id)?.unit}</span><input inputMode="decimal" value={bound.amount} onChange={(e) => change(i, { amount: e.target.value })} /></label>
            <label className="field wide"><span>of</span><select value={bound.id} onChange={(e) => change(i, { id: e.target.value })}>{options.nutrients.map((n) => <option key={n.id} value={n.id}>{n.name}</option>)}</select></label>
            {bounds.length > 1 && <Button className="plain" onPress={() => setBounds(bounds.filter((_, j) => j !== i))}>Take out</Button>}
          </div>
        ))}
        <Button className="link" onPress={() => setBounds([...bounds, { id: 'iron', side: 'least', amount: '' }])}>Add a nutrient</Button>
        <div className="fields">
          <label className="field wide"><span>Without (for example nuts, milk)</span><input value={without} onChange={(e) => setWithout(e.target.value)} list="substances" /></label>
          <label className="field"><span>Fits the diet</span><select value={diet} onChange={(e) => setDiet(e.target.value)}><option value="">any</option>{choices.diets.map((d) => <option key={d.id} value={d.id}>{d.name}</option>)}</select></label>
          <label className="field"><span>Under, a portion</span><input inputMode="decimal" value={cost} placeholder="any cost" onChange={(e) => setCost(e.target.value)} /></label>
        </div>
        <datalist id="substances"><option value="nuts" /><option value="gluten" />{choices.substances.map((s) => <option key={s.id} value={s.id}>{s.name}</option>)}</datalist>
        <Checkbox isSelected={strict} onChange={setStrict}><span className="box" aria-hidden="true" /> Also rule out traces and foods whose composition is not known</Checkbox>
        <Button type="submit" isDisabled={busy}>{busy ? 'Looking …' : 'Look at every set of up to three swaps'}</Button>
      </form>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      {answer !== null && (
        <div aria-live="polite">
          <p>{answer.words}</p>
          <ol className="swap-list">
            {answer.answers.map((found) => (
              <li className="swap-option" key={found.text}>
                {found.swaps.length === 0 ? <p>As it is.</p> : found.swaps.map((s) => <p key={s.lineId} className="swap-pair"><span>{s.before}</span> <span aria-hidden="true">→</span> <strong>{s.after}</strong><span className="swap-why">{s.why[0]}</span></p>)}
                <p className="swap-facts">{found.nutrients.map((n) => <span key={n.id}><strong>{n.name}</strong> {n.words}</span>)}<span><strong>Cost</strong> {found.cost}</span></p>
                {found.notSure.length > 0 && <p className="asks-line">Not sure, read the packs: {found.notSure.slice(0, 4).join('; ')}{found.notSure.length > 4 && `; and ${found.notSure.length - 4} more`}.</p>}
                {found.swaps.length > 0 && <Button onPress={() => onText(found.text, found.swaps.map((s) => `${s.after} for ${s.before}`).join('; '))}>Put {found.swaps.length === 1 ? 'it' : 'them'} in</Button>}
              </li>
            ))}
          </ol>
        </div>
      )}
    </div>
  );
}
