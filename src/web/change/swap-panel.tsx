import { Button } from 'react-aria-components';
import type { SwapOptionReport } from '../../app/change-report.ts';
import type { DishState } from '../dish/use-dish.ts';
import { changeApi } from './change-api.ts';
import { useAsked } from './use-asked.ts';

const shown = ['energy', 'protein', 'fibre', 'iron', 'magnesium', 'calcium', 'zinc', 'folate-dfe', 'vitamin-b12', 'alpha-linolenic', 'sodium'];

function Option({ option, onTake }: { readonly option: SwapOptionReport; readonly onTake: (() => void) | null }) {
  const first = option.nutrients.filter((n) => shown.includes(n.id));
  const rest = option.nutrients.filter((n) => !shown.includes(n.id));
  return (
    <li className="swap-option">
      <div className="swap-head">
        <h3>{option.text ?? option.name}</h3>
        {onTake ? <Button onPress={onTake}>Put it in</Button> : <span className="quiet">cannot be written as a line; type it yourself</span>}
      </div>
      <p className="swap-why">{option.why.join(' ')}</p>
      <p className="swap-facts">
        <span><strong>Cost</strong> {option.cost.words}</span>
        {option.season.words !== '' && <span><strong>Season</strong> {option.season.words}</span>}
        {option.minutes !== null && <span><strong>Cooking</strong> {option.minutes}</span>}
        {option.fodmap !== null && <span><strong>FODMAP</strong> {option.fodmap}</span>}
      </p>
      {(option.allergens.length > 0 || option.diets.length > 0) && (
        <ul className="swap-turns">
          {option.allergens.map((a) => <li key={a.name} data-graver={a.graver || undefined}>{a.words}</li>)}
          {option.diets.map((d) => <li key={d.name}>{d.words}</li>)}
        </ul>
      )}
      <dl className="swap-nutrients">
        {first.map((n) => <div key={n.id} data-change={n.change === null ? 'unknown' : n.change > 0.005 ? 'up' : n.change < -0.005 ? 'down' : 'same'}><dt>{n.name.replace(/,.*|\(.*\)/, '')}</dt><dd>{n.words}</dd></div>)}
      </dl>
      <details>
        <summary>Every nutrient of a portion</summary>
        <dl className="swap-nutrients">{rest.map((n) => <div key={n.id} data-change={n.change === null ? 'unknown' : 'same'}><dt>{n.name}</dt><dd>{n.words}</dd></div>)}</dl>
      </details>
    </li>
  );
}

/** Alternatives for the line that is chosen, ranked by the part it plays. */
export function SwapPanel({ dish, lineId, onText }: { readonly dish: DishState; readonly lineId: string | null; readonly onText: (text: string, label: string) => void }) {
  const { answer, trouble, busy } = useAsked(lineId === null ? null : JSON.stringify([dish.text, dish.choices, lineId]), (signal) => changeApi.swap({ text: dish.text, choices: dish.choices }, lineId ?? '', signal));
  if (lineId === null) return <p className="quiet">Choose a line of the dish to see what could take its place.</p>;
  return (
    <div aria-busy={busy}>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      {answer !== null && (
        <>
          <h2>In place of “{answer.line}”</h2>
          <p className="quiet">{answer.roles.length > 0 ? `Its part in a dish: ${answer.roles.join(', ')}. ` : 'Its part in a dish is not in the tables. '}Changes are those of one portion, after cooking.</p>
          {answer.options.length === 0 && <p>No alternatives are known for this line.</p>}
          <ol className="swap-list">
            {answer.options.map((option) => (
              <Option key={`${option.name} ${option.text ?? ''}`} option={option} onTake={option.recipe === null ? null : () => onText(option.recipe ?? dish.text, `${option.text ?? option.name} for ${answer.line}`)} />
            ))}
          </ol>
        </>
      )}
    </div>
  );
}
