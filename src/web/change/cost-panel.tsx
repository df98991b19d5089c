import type { DishState } from '../dish/use-dish.ts';
import { changeApi } from './change-api.ts';
import { useAsked } from './use-asked.ts';

/** What the dish costs by her own price list, with the gaps in sight. */
export function CostPanel({ dish }: { readonly dish: DishState }) {
  const { answer, trouble } = useAsked(JSON.stringify([dish.text, dish.choices]), (signal) => changeApi.cost({ text: dish.text, choices: dish.choices }, signal));
  return (
    <div>
      <h2>Cost</h2>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      {answer !== null && (
        <>
          <p>{answer.words}</p>
          <table className="change-table cost-table">
            <thead><tr><th scope="col">Line</th><th scope="col" className="num">Cost</th><th scope="col">Share</th><th scope="col">From</th></tr></thead>
            <tbody>
              {answer.lines.map((l) => (
                <tr key={l.lineId} data-state={l.state}>
                  <td>{l.text}</td>
                  <td className="num">{l.cost ?? '–'}</td>
                  <td>{l.share > 0 && <div className="meter" aria-hidden="true"><div className="meter-fill" style={{ width: `${Math.round(l.share * 100)}%` }} /></div>}</td>
                  <td>{l.words !== '' && <strong>{l.words}</strong>} {l.from !== null && <span className="quiet">{l.from}</span>}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {answer.packs.length > 0 && (
            <>
              <h3>Whole packs: {answer.paid}, of which {answer.leftCost} is left over</h3>
              <table className="change-table">
                <thead><tr><th scope="col">Pack</th><th scope="col">Shop</th><th scope="col" className="num">Paid</th><th scope="col" className="num">Left</th></tr></thead>
                <tbody>{answer.packs.map((p) => <tr key={`${p.food} ${p.pack} ${p.shop}`}><td>{p.packs} × {p.pack} {p.food}</td><td>{p.shop}</td><td className="num">{p.paid}</td><td className="num">{p.left} ({p.leftCost})</td></tr>)}</tbody>
              </table>
            </>
          )}
          <p><a href="#/larder">Prices, pantry and months</a></p>
        </>
      )}
    </div>
  );
}
