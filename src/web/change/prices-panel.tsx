import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { PriceListReport } from '../../app/change-report.ts';
import type { DeskOptions } from '../../app/desk.ts';
import { changeApi } from './change-api.ts';
import { troubleText } from './use-asked.ts';

type Row = PriceListReport['rows'][number];
const bare = ({ food, pack, price, shop, date }: Row) => ({ food, pack, price, shop, date });

/** Her price list: typed in, brought in and taken out as CSV; what was read from each row stands beside it. */
export function PricesPanel({ options }: { readonly options: DeskOptions }) {
  const [rows, setRows] = useState<readonly Row[]>([]);
  const [draft, setDraft] = useState({ food: '', pack: '', price: '', shop: '', date: new Date().toLocaleDateString('sv-SE') });
  const [said, setSaid] = useState<readonly string[]>([]);
  const [nutrient, setNutrient] = useState('magnesium');
  const [cheap, setCheap] = useState<readonly { food: string; words: string }[] | null>(null);
  const file = useRef<HTMLInputElement>(null);
  const show = (asked: Promise<PriceListReport>, words: string[] = []): void => void asked.then((list) => { setRows(list.rows); setSaid(words); }).catch((error: unknown) => setSaid([troubleText(error)]));
  useEffect(() => show(changeApi.prices()), []);
  const add = (): void => {
    const price = Number(draft.price.replace(',', '.'));
    if (!(price > 0)) return setSaid(['Type the price as a number above 0.']);
    show(changeApi.savePrices([...rows.map(bare), { ...draft, price }]), [`${draft.food} is kept.`]);
    setDraft({ ...draft, food: '', pack: '', price: '' });
  };
  const bring = async (chosen: File | undefined): Promise<void> => {
    if (!chosen) return;
    const brought = await changeApi.bringPrices(await chosen.text());
    setRows(brought.rows);
    setSaid([`${brought.added} prices brought in.`, ...brought.faults]);
  };
  const field = (key: keyof typeof draft, label: string, hint: string, className = 'field') => <label className={className}><span>{label}</span><input value={draft[key]} placeholder={hint} onChange={(e) => setDraft({ ...draft, [key]: e.target.value })} /></label>;
  return (
    <div>
      <form className="fields price-form" onSubmit={(e) => { e.preventDefault(); add(); }}>
        {field('food', 'Food', 'pearl barley', 'field wide')}{field('pack', 'Pack', '500 g')}{field('price', 'Price', '1.10')}{field('shop', 'Shop', 'market')}{field('date', 'Day', '2026-11-25')}
        <Button type="submit" isDisabled={draft.food.trim() === '' || draft.pack.trim() === ''}>Keep the price</Button>
      </form>
      <div className="row-actions">
        <Button className="plain" onPress={() => file.current?.click()}>Bring in a CSV file</Button>
        <a className="plain" href="/api/prices/csv" download="prices.csv">Take out as CSV</a>
        <input ref={file} type="file" hidden accept=".csv,text/csv" onChange={(e) => void bring(e.target.files?.[0]).catch((error: unknown) => setSaid([troubleText(error)]))} />
      </div>
      <div role="status">{said.map((s) => <p key={s} className="quiet">{s}</p>)}</div>
      {rows.length === 0 ? <p className="quiet">No prices yet. Truepot invents none: note what you paid, and dishes show what they cost.</p> : (
        <div className="side-scroll">
          <table className="change-table">
            <thead><tr><th scope="col">Food</th><th scope="col">Pack</th><th scope="col" className="num">Price</th><th scope="col">Shop</th><th scope="col">Day</th><th scope="col">Read as</th><th scope="col"><span className="sr-only">Take out</span></th></tr></thead>
            <tbody>
              {rows.map((r) => (
                <tr key={r.id} data-state={r.problem !== null ? 'no-price' : r.stale ? 'stale' : 'priced'}>
                  <td>{r.food}</td><td className="short">{r.pack}</td><td className="num">{r.price.toFixed(2)}</td><td>{r.shop}</td><td className="short">{r.date}{r.stale && <strong className="swap-why">old: {r.ageDays} days</strong>}</td>
                  <td>{r.problem ?? r.readAs}{r.perKg !== null && <span className="swap-why">{r.perKg}</span>}</td>
                  <td className="short"><Button className="link" aria-label={`Take out the price of ${r.food}`} onPress={() => show(changeApi.savePrices(rows.filter((x) => x.id !== r.id).map(bare)), [`The price of ${r.food} is taken out.`])}>Take out</Button></td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {rows.length > 0 && (
        <section>
          <h2>What a nutrient costs</h2>
          <div className="fields">
            <label className="field wide"><span>100 of</span><select value={nutrient} onChange={(e) => { setNutrient(e.target.value); setCheap(null); }}>{options.nutrients.map((n) => <option key={n.id} value={n.id}>{n.name}, {n.unit}</option>)}</select></label>
            <Button className="plain" onPress={() => void changeApi.cheapest(nutrient, 100).then(setCheap).catch((error: unknown) => setSaid([troubleText(error)]))}>Show the cheapest</Button>
          </div>
          {cheap !== null && (cheap.length === 0 ? <p>No food of the list is known to give it.</p> : <ol>{cheap.slice(0, 12).map((c) => <li key={`${c.food} ${c.words}`}>{c.food}: {c.words}</li>)}</ol>)}
        </section>
      )}
    </div>
  );
}
