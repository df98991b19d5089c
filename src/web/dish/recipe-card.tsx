import type { DishReport } from '../../app/dish-report.ts';
import { gramsText, percent } from '../../messages/numbers.ts';

/** The dish on paper: seen only in print. */
export function RecipeCard({ report }: { readonly report: DishReport }) {
  const told = report.nutrients.filter((n) => n.portion !== null && n.reference?.share !== null && n.reference !== null && n.reference.share >= 0.1 && !['food-folate', 'retinol'].includes(n.id));
  const plain = report.nutrients.filter((n) => n.portion !== null && ['protein', 'fat', 'saturates', 'carbohydrate', 'sugars', 'fibre'].includes(n.id));
  return (
    <article className="card-print">
      <h1>{report.title ?? 'A dish'}</h1>
      <p>{report.servings.words} One portion is about {gramsText(report.pot.portionWeightG.value)}: {Math.round(report.energy.declaredKcal)} kcal ({Math.round(report.energy.declaredKj)} kJ).</p>
      <div className="card-columns">
        <section>
          <h2>Ingredients</h2>
          {[...new Set(report.lines.map((l) => l.section))].map((section) => (
            <div key={section ?? ''}>
              {section !== null && <h3>{section}</h3>}
              <ul>{[...new Map(report.lines.filter((l) => l.section === section).map((l) => [l.span.start, l])).values()].map((l) => <li key={l.id}>{l.text}</li>)}</ul>
            </div>
          ))}
        </section>
        <section>
          <h2>One portion gives</h2>
          <table><tbody>
            {plain.map((n) => <tr key={n.id}><th scope="row">{n.name}</th><td>{n.words}</td><td>{n.reference?.share === null || n.reference === null ? '' : percent(n.reference.share)}</td></tr>)}
            {told.filter((n) => !plain.includes(n)).map((n) => <tr key={n.id}><th scope="row">{n.name}</th><td>{n.words}</td><td>{n.reference?.share === null || n.reference === null ? '' : percent(n.reference.share)}</td></tr>)}
          </tbody></table>
          <p className="small">Percent of a day’s reference intake ({report.choices.lifeStage}, {report.choices.authority}). Estimates from composition tables; real food varies.</p>
        </section>
      </div>
      {report.steps.length > 0 && <section><h2>Method</h2><ol>{report.steps.map((s) => <li key={s.number}>{s.text}</li>)}</ol></section>}
      {report.cautions.length > 0 && <section><h2>Cautions</h2><ul>{report.cautions.map((c) => <li key={c.id}>{c.text}</li>)}</ul></section>}
      <p className="small">Education, not medical advice. {report.attributions.join(' ')}</p>
    </article>
  );
}
