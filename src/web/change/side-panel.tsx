import { useEffect, useState } from 'react';
import { Button, Checkbox } from 'react-aria-components';
import type { CompareReport } from '../../app/change-report.ts';
import type { DishVersion, SavedDish } from '../../app/ports.ts';
import { api } from '../api.ts';
import type { DishState } from '../dish/use-dish.ts';
import { changeApi } from './change-api.ts';
import { troubleText } from './use-asked.ts';

interface Candidate { readonly key: string; readonly name: string; readonly text: string; readonly choices: SavedDish['choices'] }

/** Dishes, or kept states of this one, side by side with the dish as it is. */
export function SidePanel({ dish, id }: { readonly dish: DishState; readonly id: string | null }) {
  const [candidates, setCandidates] = useState<readonly Candidate[]>([]);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [report, setReport] = useState<CompareReport | null>(null);
  const [all, setAll] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    const versions = id === null ? Promise.resolve<DishVersion[]>([]) : api.versions(id);
    Promise.all([versions, api.dishes('', false)]).then(([kept, saved]) => setCandidates([
      ...kept.slice(1).map((v) => ({ key: `v${v.version}`, name: v.label ?? `State ${v.version}`, text: v.text, choices: v.choices })),
      ...saved.filter((d) => d.id !== id).map((d) => ({ key: d.id, name: d.name, text: d.text, choices: d.choices })),
    ])).catch((error: unknown) => setTrouble(troubleText(error)));
  }, [id]);
  const ask = (): void => {
    setTrouble(null);
    changeApi.compare([{ name: dish.report?.title ?? 'As it is', text: dish.text, choices: dish.choices }, ...candidates.filter((c) => chosen.has(c.key)).slice(0, 5).map(({ name, text, choices }) => ({ name, text, choices }))])
      .then(setReport).catch((error: unknown) => setTrouble(troubleText(error)));
  };
  const rows = report?.nutrients.filter((n) => all || n.most !== null) ?? [];
  return (
    <div>
      <h2>Side by side</h2>
      {candidates.length === 0 && <p className="quiet">Save a dish, or change a saved one, and it can be put beside this one.</p>}
      <ul className="pick-list">
        {candidates.map((c) => <li key={c.key}><Checkbox isSelected={chosen.has(c.key)} onChange={(on) => setChosen(new Set(on ? [...chosen, c.key] : [...chosen].filter((k) => k !== c.key)))}><span className="box" aria-hidden="true" /> {c.name}</Checkbox></li>)}
      </ul>
      {candidates.length > 0 && <Button onPress={ask} isDisabled={chosen.size === 0}>Put them side by side</Button>}
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      {report !== null && (
        <div className="side-scroll">
          <table className="change-table side-table">
            <thead><tr><th scope="col">A portion of</th>{report.columns.map((c) => <th scope="col" key={c.name}>{c.name}</th>)}</tr></thead>
            <tbody>
              <tr><th scope="row">Serves</th>{report.columns.map((c) => <td key={c.name}>{c.servings}</td>)}</tr>
              <tr><th scope="row">Weight</th>{report.columns.map((c) => <td key={c.name}>{Math.round(c.weightG)} g</td>)}</tr>
              <tr><th scope="row">Minutes in the method</th>{report.columns.map((c) => <td key={c.name}>{c.minutes === null ? 'not said' : Math.round(c.minutes)}</td>)}</tr>
              <tr><th scope="row">Cost</th>{report.columns.map((c) => <td key={c.name}>{c.cost}</td>)}</tr>
            </tbody>
            <tbody>
              <tr><th scope="rowgroup" colSpan={report.columns.length + 1}>Allergens and diets</th></tr>
              {report.allergens.filter((a) => all || a.differ || a.cells.some((c) => c.state !== 'not')).map((a) => <tr key={a.name} data-differ={a.differ || undefined}><th scope="row">{a.name}</th>{a.cells.map((c, i) => <td key={i} data-state={c.state}>{c.words}</td>)}</tr>)}
              {report.diets.map((d) => <tr key={d.name} data-differ={d.differ || undefined}><th scope="row">{d.name}</th>{d.cells.map((c, i) => <td key={i}>{c.words}</td>)}</tr>)}
            </tbody>
            <tbody>
              <tr><th scope="rowgroup" colSpan={report.columns.length + 1}>Nutrients</th></tr>
              {rows.map((n) => <tr key={n.id}><th scope="row">{n.name}</th>{n.cells.map((c, i) => <td key={i}>{n.most === i ? <strong>{c.words}</strong> : c.words}{c.change !== null && c.change !== 'no change' && <span className="swap-why">{c.change}</span>}</td>)}</tr>)}
            </tbody>
          </table>
          <Checkbox isSelected={all} onChange={setAll}><span className="box" aria-hidden="true" /> Show rows that are the same too</Checkbox>
          <p className="quiet">Bold marks the most, a bar at the edge marks a difference. {report.caution}</p>
        </div>
      )}
    </div>
  );
}
