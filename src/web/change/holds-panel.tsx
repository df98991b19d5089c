import { useState } from 'react';
import type { ChangeDesk } from '../../app/change-desk.ts';
import type { AllergenItemReport } from '../../app/change-report.ts';
import type { AllergenState } from '../../core/foods/index.ts';
import type { DishState } from '../dish/use-dish.ts';
import { changeApi } from './change-api.ts';
import { useAsked } from './use-asked.ts';

const groups: readonly { readonly state: AllergenState; readonly title: string; readonly sign: string }[] = [
  { state: 'contains', title: 'Contains', sign: '●' }, { state: 'may', title: 'May contain', sign: '◐' }, { state: 'unknown', title: 'Not known', sign: '?' }, { state: 'not', title: 'Not by its ingredients', sign: '○' },
];

function Item({ item }: { readonly item: AllergenItemReport }) {
  return (
    <li>
      <details>
        <summary><strong>{item.name}</strong>{item.members.length > 0 && `: ${item.members.join(', ')}`}</summary>
        <ul>{item.reasons.map((r) => <li key={r}>{r}</li>)}</ul>
        <p className="quiet">{item.clause}{item.remark !== null && `. ${item.remark}`}</p>
      </details>
    </li>
  );
}

/** What the dish holds by the law of a place, which diets it fits, and FODMAP notes. */
export function HoldsPanel({ dish, choices, list, onList }: { readonly dish: DishState; readonly choices: ChangeDesk['options']; readonly list: string; readonly onList: (list: string) => void }) {
  const { answer, trouble } = useAsked(JSON.stringify([dish.text, dish.choices, list]), (signal) => changeApi.allergens({ text: dish.text, choices: dish.choices }, signal));
  const [perLine, setPerLine] = useState(false);
  return (
    <div>
      <div className="fields"><label className="field wide"><span>Allergens by the law of</span><select value={list} onChange={(e) => onList(e.target.value)}>{choices.allergenLists.map((l) => <option key={l.id} value={l.id}>{l.name}</option>)}</select></label></div>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      {answer !== null && (
        <>
          <p className="change-caution">{answer.caution}</p>
          {groups.map(({ state, title, sign }) => {
            const items = answer.items.filter((i) => i.state === state);
            if (items.length === 0) return null;
            return (
              <section key={state} className="change-holds" data-state={state}>
                <h3><span aria-hidden="true">{sign}</span> {title}</h3>
                {state === 'not' ? <p>{items.map((i) => i.name).join(', ')}</p> : <ul>{items.map((i) => <Item key={i.id} item={i} />)}</ul>}
              </section>
            );
          })}
          {answer.saidAnyway.length > 0 && <p>Not on this list, told all the same: {answer.saidAnyway.map((s) => `${s.name} (${s.words})`).join(', ')}.</p>}
          <h3>Diets</h3>
          <table className="change-table"><tbody>{answer.diets.map((d) => <tr key={d.id}><th scope="row">{d.name}</th><td><strong>{d.words}</strong>{d.because !== '' && <span className="swap-why">{d.because}</span>}</td></tr>)}</tbody></table>
          {answer.fodmap.lines.length > 0 && <><h3>FODMAP notes</h3><ul>{answer.fodmap.lines.map((l) => <li key={l.lineId}>{l.text}: {l.kinds.join(', ')}</li>)}</ul><p className="quiet">{answer.fodmap.caution} {answer.fodmap.source}</p></>}
          <details open={perLine} onToggle={(e) => setPerLine(e.currentTarget.open)}>
            <summary>Line by line</summary>
            <table className="change-table">
              <thead><tr><th scope="col">Line</th><th scope="col">Contains</th><th scope="col">May contain</th></tr></thead>
              <tbody>{answer.lines.map((l) => <tr key={l.lineId}><td>{l.text}</td><td>{l.contains.join(', ') || '–'}{l.unknown && <span className="swap-why">the rest is not known: read the pack</span>}</td><td>{l.may.join(', ') || '–'}</td></tr>)}</tbody>
            </table>
          </details>
          <p className="quiet">{answer.list.source}. Checked: {answer.list.checked}. {answer.list.note}</p>
        </>
      )}
    </div>
  );
}
