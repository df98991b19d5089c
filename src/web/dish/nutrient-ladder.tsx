import type { DishReport, NutrientReport } from '../../app/dish-report.ts';
import type { NutrientId } from '../../core/foods/index.ts';
import { amount, figure, percent } from '../../messages/numbers.ts';
import { barelyUnknown } from '../../messages/portion.ts';

const groups = [
  ['macronutrient', 'What it is made of'], ['fatty-acid', 'Fats'], ['vitamin', 'Vitamins'], ['mineral', 'Minerals'], ['other', 'Others'],
] as const;
// The bar's whole length is this many days' worth; what goes past it ends in an arrow.
const daysShown = 1.25;
const place = (share: number): string => `${Math.min(100, (share / daysShown) * 100)}%`;

function Row({ n, onAsk }: { readonly n: NutrientReport; readonly onAsk: (nutrient: NutrientId) => void }) {
  const { portion, reference } = n;
  const share = reference?.share ?? null;
  const scale = share !== null && portion !== null && portion.value > 0 ? share / portion.value : null;
  return (
    <tr data-state={n.state}>
      <th scope="row">{n.name}</th>
      <td className="amount">
        {portion === null ? <span className="quiet">{n.words}</span> : (
          <>
            <button type="button" className="number" onClick={() => onAsk(n.id)} aria-label={`${n.name}: ${n.words}. Show the path`}>{n.words.startsWith('at least') && '≥ '}{amount(portion.value, n.unit)}</button>
            {portion.high > portion.low && <span className="range">{figure(portion.low)}–{figure(portion.high)}</span>}
          </>
        )}
      </td>
      <td className="meter-cell">
        {share !== null && portion !== null && scale !== null && (
          <div className="meter" aria-hidden="true" data-past={share > daysShown || undefined}>
            <span className="meter-range" style={{ left: place(portion.low * scale), width: `calc(${place(portion.high * scale)} - ${place(portion.low * scale)})` }} />
            <span className="meter-fill" style={{ width: place(share) }} />
            <span className="meter-day" style={{ left: place(1) }} />
          </div>
        )}
      </td>
      <td className="share">{share === null ? '' : percent(share)}</td>
      <td className="missing">{n.state === 'partial' && n.unknownShare >= barelyUnknown && <span title={`${percent(n.unknownShare)} of the weight has no value`}>{percent(n.unknownShare)} of weight not known</span>}</td>
    </tr>
  );
}

/** Every nutrient of the tables: amount (a button to its path), bar against a day, share. The table is the picture's text. */
export function NutrientLadder({ report, stage, onAsk }: { readonly report: DishReport; readonly stage: string; readonly onAsk: (nutrient: NutrientId) => void }) {
  const absent = report.nutrients.filter((n) => n.state === 'not-in-tables');
  return (
    <section className="ladder" aria-label="Nutrients of one portion">
      <p className="quiet">Bars run to a day’s reference intake at the tick ({stage.toLowerCase()}). The pale part is the range in which 8 of 10 such pots would lie. Press a number for its path.</p>
      {groups.map(([group, title]) => (
        <table key={group}>
          <caption>{title}</caption>
          <colgroup>{['32%', '18%', '26%', '9%', '15%'].map((width) => <col key={width} style={{ width }} />)}</colgroup>
          <thead className="sr-only"><tr><th>Nutrient</th><th>One portion</th><th>Bar</th><th>Share of a day</th><th>Not known</th></tr></thead>
          <tbody>{report.nutrients.filter((n) => n.group === group && n.state !== 'not-in-tables').map((n) => <Row key={n.id} n={n} onAsk={onAsk} />)}</tbody>
        </table>
      ))}
      {absent.length > 0 && <p className="quiet">Not in the tables, so not known and not nothing: {absent.map((n) => n.name.toLowerCase()).join(', ')}.</p>}
    </section>
  );
}
