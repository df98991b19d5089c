import type { DeskOptions } from '../../app/desk.ts';
import type { NutrientId } from '../../core/foods/index.ts';
import { gramsText } from '../../messages/numbers.ts';
import { GiversPicture } from './givers-picture.tsx';
import { NutrientLadder } from './nutrient-ladder.tsx';
import type { DishState } from './use-dish.ts';

/** What one portion gives: in words, as energy and weight, as a ladder against a day, and by giver. */
export function PortionPanel({ dish, options, onAsk }: { readonly dish: DishState; readonly options: DeskOptions; readonly onAsk: (nutrient: NutrientId) => void }) {
  const { report } = dish;
  if (report === null) return <p className="quiet">The portion appears here.</p>;
  if (report.lines.length === 0) return <p className="quiet">There is nothing to add up yet.</p>;
  const stage = options.lifeStages.find((s) => s.id === report.choices.lifeStage)?.label ?? '';
  const { portionWeightG, weightPath } = report.pot;
  const { rangeKcal } = report.energy;
  return (
    <>
      <div className="headline">
        <button type="button" className="number big" onClick={() => onAsk('energy')}>
          {report.energy.state === 'unknown' ? 'not known' : <>{report.energy.state === 'partial' && '≥ '}{Math.round(report.energy.declaredKcal)}<span> kcal</span></>}
        </button>
        <span className="quiet">{Math.round(report.energy.declaredKj).toLocaleString('en-GB')} kJ{rangeKcal.high > rangeKcal.low && ` · ${Math.round(rangeKcal.low)} to ${Math.round(rangeKcal.high)} kcal`}</span>
        <details className="weight">
          <summary><span className="number-like">{gramsText(portionWeightG.value)}</span> on the plate{portionWeightG.high > portionWeightG.low && <span className="quiet"> ({gramsText(portionWeightG.low)} to {gramsText(portionWeightG.high)})</span>}</summary>
          <ol>{weightPath.map((step) => <li key={step}>{step}</li>)}</ol>
        </details>
      </div>
      {report.energy.differ && <p className="asks-line">{report.energy.words}</p>}
      <ul className="reading" aria-label="In short">{report.reading.map((sentence) => <li key={sentence}>{sentence}</li>)}</ul>
      {report.cautions.length > 0 && (
        <section className="cautions" aria-labelledby="cautions-title">
          <h3 id="cautions-title">Cautions</h3>
          <ul>{report.cautions.map((c) => <li key={c.id}>{c.text} <span className="quiet">{c.why} Source: {c.source}.</span></li>)}</ul>
        </section>
      )}
      <NutrientLadder report={report} stage={stage} onAsk={onAsk} />
      <GiversPicture report={report} onAsk={onAsk} />
      <details className="attributions"><summary>The tables behind the numbers</summary>{report.attributions.map((a) => <p key={a}>{a}</p>)}</details>
    </>
  );
}
