import type { DishReport, NutrientReport } from '../../app/dish-report.ts';
import { authorityText } from '../../messages/authorities.ts';
import { gramsText, percent } from '../../messages/numbers.ts';

const shortWords = (n: NutrientReport): string => (n.words.split(';')[0] ?? '').replace('at least', '≥');

/** The dish on paper: seen only in print. */
export function RecipeCard({ report, stage }: { readonly report: DishReport; readonly stage: string }) {
  const told = report.nutrients.filter((n) => n.portion !== null && n.reference?.share !== null && n.reference !== null && n.reference.share >= 0.1 && !['food-folate', 'retinol'].includes(n.id));
  const plain = report.nutrients.filter((n) => n.portion !== null && ['protein', 'fat', 'saturates', 'carbohydrate', 'sugars', 'fibre'].includes(n.id));
  return (
    <article className="card-print">
      <h1>{report.title ?? 'A dish'}</h1>
      <p>{report.servings.words} One portion is about {gramsText(report.pot.portionWeightG.value)}: {report.energy.words.replace(' a portion', '').replace(/\.$/, '')}.</p>
      <div className="card-columns">
        <section>
          <h2>Ingredients</h2>
          {[...new Set(report.lines.map((l) => l.section))].map((section) => (
            <div key={section ?? ''}>
              {section !== null && <h3>{section}</h3>}
              <ul>{[...new Map(report.lines.filter((l) => l.section === section).map((l) => [l.span.start, l])).values()].map((l) => <li key={l.id}>{l.text}</li>)}</ul>
            </div>
          ))}
          {report.steps.length > 0 && <><h2>Method</h2><ol>{report.steps.map((s) => <li key={s.number}>{s.text}</li>)}</ol></>}
        </section>
        <section>
          <h2>One portion gives</h2>
          <table><tbody>
            {plain.map((n) => <tr key={n.id}><th scope="row">{n.name}</th><td>{shortWords(n)}</td><td>{n.reference?.share === null || n.reference === null ? '' : percent(n.reference.share)}</td></tr>)}
            {told.filter((n) => !plain.includes(n)).map((n) => <tr key={n.id}><th scope="row">{n.name}</th><td>{shortWords(n)}</td><td>{n.reference?.share === null || n.reference === null ? '' : percent(n.reference.share)}</td></tr>)}
          </tbody></table>
          <p className="small">Percent of a day’s reference intake ({stage.toLowerCase()}, {authorityText(report.choices.authority)}). Estimates from composition tables; real food varies. ≥ means at least: some of the weight has no value.</p>
        </section>
      </div>
      {report.cautions.length > 0 && <section><h2>Cautions</h2><ul>{report.cautions.map((c) => <li key={c.id}>{c.text}</li>)}</ul></section>}
      <p className="small">Education, not medical advice. {report.attributions.join(' ')}</p>
    </article>
  );
}
