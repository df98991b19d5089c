import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { PantryReport } from '../../app/change-desk.ts';
import { changeApi } from './change-api.ts';
import { troubleText } from './use-asked.ts';

/** What she has at home, and which saved dishes use it up. */
export function PantryPanel() {
  const [report, setReport] = useState<PantryReport | null>(null);
  const [draft, setDraft] = useState({ food: '', amount: '', useBy: '' });
  const [trouble, setTrouble] = useState<string | null>(null);
  const show = (asked: Promise<PantryReport>): void => void asked.then((now) => { setReport(now); setTrouble(null); }).catch((error: unknown) => setTrouble(troubleText(error)));
  useEffect(() => show(changeApi.pantry()), []);
  const items = (report?.items ?? []).map(({ food, amount, useBy }) => ({ food, amount, useBy }));
  const add = (): void => {
    show(changeApi.savePantry([...items, { food: draft.food, amount: draft.amount, useBy: draft.useBy === '' ? null : draft.useBy }]));
    setDraft({ food: '', amount: '', useBy: '' });
  };
  return (
    <div>
      <form className="fields price-form" onSubmit={(e) => { e.preventDefault(); add(); }}>
        <label className="field wide"><span>Food</span><input value={draft.food} placeholder="kale" onChange={(e) => setDraft({ ...draft, food: e.target.value })} /></label>
        <label className="field"><span>How much</span><input value={draft.amount} placeholder="200 g" onChange={(e) => setDraft({ ...draft, amount: e.target.value })} /></label>
        <label className="field"><span>Use by</span><input type="date" value={draft.useBy} onChange={(e) => setDraft({ ...draft, useBy: e.target.value })} /></label>
        <Button type="submit" isDisabled={draft.food.trim() === ''}>I have it</Button>
      </form>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      {report !== null && report.items.length === 0 && <p className="quiet">Nothing noted yet. Note what is in the fridge and the cupboard; saved dishes that use it up come up here.</p>}
      {report !== null && report.items.length > 0 && (
        <>
          <table className="change-table">
            <thead><tr><th scope="col">Food</th><th scope="col">How much</th><th scope="col">Use by</th><th scope="col"><span className="sr-only">Take out</span></th></tr></thead>
            <tbody>{report.items.map((item, i) => <tr key={item.id}><td>{item.food}{item.readAs === null && <span className="swap-why">not a food that Truepot knows</span>}</td><td>{item.amount}</td><td>{item.useBy ?? '–'}</td><td><Button className="link" aria-label={`Take out ${item.food}`} onPress={() => show(changeApi.savePantry(items.filter((_, j) => j !== i)))}>Used up</Button></td></tr>)}</tbody>
          </table>
          <h2>To use it up</h2>
          {report.suggestions.length === 0 ? <p className="quiet">No saved dish uses any of it.</p> : (
            <ol className="swap-list">{report.suggestions.slice(0, 10).map((s) => <li key={s.dishId} className="swap-option"><h3><a href={`#/dish/${encodeURIComponent(s.dishId)}`}>{s.name}</a></h3><p className="swap-facts"><span><strong>Uses</strong> {s.uses.join(', ')}</span><span><strong>To buy</strong> {s.toBuy}</span>{s.firstUseBy !== null && <span><strong>By</strong> {s.firstUseBy}</span>}</p></li>)}</ol>
          )}
        </>
      )}
    </div>
  );
}
