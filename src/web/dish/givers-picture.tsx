import type { DishReport, NutrientReport } from '../../app/dish-report.ts';
import type { NutrientId } from '../../core/foods/index.ts';
import { percent } from '../../messages/numbers.ts';

const shown = 8;

function notable(report: DishReport): readonly NutrientReport[] {
  return report.nutrients
    .filter((n) => n.reference?.share !== null && n.reference !== null && n.portion !== null && n.portion.value > 0 && (n.group === 'vitamin' || n.group === 'mineral' || n.id === 'protein' || n.id === 'fibre'))
    .filter((n) => !['retinol', 'food-folate', 'folic-acid', 'folate'].includes(n.id))
    .sort((a, b) => (b.reference?.share ?? 0) - (a.reference?.share ?? 0))
    .slice(0, shown);
}

/** Which lines give the nutrients that the portion is rich in: one bar a nutrient, cut into its givers, each named. */
export function GiversPicture({ report, onAsk }: { readonly report: DishReport; readonly onAsk: (nutrient: NutrientId) => void }) {
  const rows = notable(report);
  if (rows.length === 0) return null;
  return (
    <section className="givers" aria-labelledby="givers-title">
      <h3 id="givers-title">Who gives what</h3>
      <ul>
        {rows.map((n) => {
          const rest = 1 - n.top.slice(0, 3).reduce((sum, t) => sum + t.share, 0);
          return (
            <li key={n.id}>
              <button type="button" className="number" onClick={() => onAsk(n.id)}>{n.name}</button>
              <div className="cuts">
                {n.top.slice(0, 3).map((t, i) => <span key={t.lineId} className={`cut cut-${i}`} style={{ flexGrow: t.share }} title={`${t.name}: ${percent(t.share)}`}><span>{t.name}</span></span>)}
                {rest > 0.005 && <span className="cut cut-rest" style={{ flexGrow: rest }} title={`the rest: ${percent(rest)}`} />}
              </div>
              <p className="cut-words">{n.top.slice(0, 3).map((t) => `${t.name} ${percent(t.share)}`).join(' · ')}</p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
