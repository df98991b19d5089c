import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { SeasonRow } from '../../app/change-desk.ts';
import { changeApi } from './change-api.ts';
import { troubleText } from './use-asked.ts';

const letters = ['J', 'F', 'M', 'A', 'M', 'J', 'J', 'A', 'S', 'O', 'N', 'D'];

/** The months that a text like "9-3" or "4, 6-8" names. */
function monthsOf(text: string): ReadonlySet<number> {
  const months = new Set<number>();
  for (const part of text.split(',')) {
    const [from = 0, to = from] = (part.match(/\d+/g) ?? []).map(Number);
    if (from >= 1 && from <= 12 && to >= 1 && to <= 12) for (let m = from, n = 0; n < 12; m = (m % 12) + 1, n++) {
      months.add(m);
      if (m === to) break;
    }
  }
  return months;
}

/** Months by region; she can change any row and add her own. */
export function MonthsPanel() {
  const [rows, setRows] = useState<readonly SeasonRow[]>([]);
  const [draft, setDraft] = useState({ name: '', months: '' });
  const [trouble, setTrouble] = useState<string | null>(null);
  const show = (asked: Promise<readonly SeasonRow[]>): void => void asked.then((now) => { setRows(now); setTrouble(null); }).catch((error: unknown) => setTrouble(troubleText(error)));
  useEffect(() => show(changeApi.seasons()), []);
  const now = new Date().getMonth() + 1;
  return (
    <div>
      <p className="quiet">When fresh food of the region is at its usual best. From memory and common practice, to be checked where you live: change any row.</p>
      <form className="fields price-form" onSubmit={(e) => { e.preventDefault(); show(changeApi.saveSeason(draft.name.trim(), draft.months.trim())); }}>
        <label className="field wide"><span>Food</span><input value={draft.name} list="season-foods" placeholder="kale" onChange={(e) => setDraft({ ...draft, name: e.target.value })} /></label>
        <label className="field"><span>Months</span><input value={draft.months} placeholder="9-3" onChange={(e) => setDraft({ ...draft, months: e.target.value })} /></label>
        <Button type="submit" isDisabled={draft.name.trim() === '' || draft.months.trim() === ''}>Keep the months</Button>
      </form>
      <datalist id="season-foods">{rows.map((r) => <option key={r.name} value={r.name} />)}</datalist>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      <div className="side-scroll">
        <table className="change-table months-table">
          <thead><tr><th scope="col">Food</th>{letters.map((l, i) => <th scope="col" key={i} data-now={i + 1 === now || undefined}><span aria-hidden="true">{l}</span><span className="sr-only">{i + 1}</span></th>)}<th scope="col">Months</th><th scope="col">Now</th><th scope="col"><span className="sr-only">Change</span></th></tr></thead>
          <tbody>
            {rows.map((row) => {
              const months = monthsOf(row.months);
              return (
                <tr key={row.name}>
                  <th scope="row">{row.name}{row.own && <span className="tag">yours</span>}</th>
                  {letters.map((_, i) => <td key={i} className="month" data-in={months.has(i + 1) || undefined} data-now={i + 1 === now || undefined} />)}
                  <td>{row.months}</td><td>{row.words}</td>
                  <td><Button className="link" onPress={() => { if (row.own) show(changeApi.saveSeason(row.name, null)); else setDraft({ name: row.name, months: row.months }); }} aria-label={row.own ? `Take back your months of ${row.name}` : `Change ${row.name}`}>{row.own ? 'Take back' : 'Change'}</Button></td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </div>
  );
}
