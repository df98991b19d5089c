import type { CookAnswer } from '../../app/cook-dishes.ts';
import { aheadText, attentionText, chanceText, clashTexts, clock, deadAirText, leftOutText, lineTroubleText, minutesText, placeText, qualityText } from '../../messages/cooking.ts';
import { BarsPicture } from './bars-picture.tsx';
import { SheetTable } from './sheet-table.tsx';

const points = (lines: readonly string[]) => <ul>{lines.map((line, i) => <li key={i}>{line}</li>)}</ul>;

/** What came out: the plan, or why there is none and what would help. */
export function PlanView({ answer }: { readonly answer: CookAnswer }) {
  const troubles = answer.troubles.length > 0 && <section className="cook-asks"><h3>Please look at these lines</h3>{points(answer.troubles.map(lineTroubleText))}</section>;
  if (answer.kind === 'no-plan-found') return <div className="cook-plan">{troubles}<p className="trouble">No plan was found in the time. The dishes may still fit: take one out and try again.</p></div>;
  if (answer.kind === 'clash') {
    const { why, remedies } = clashTexts(answer.clash, answer);
    return (
      <div className="cook-plan" role="alert">
        {troubles}
        <h2>These wishes cannot all be kept together</h2>
        {points(why)}
        <h3>Any one of these changes makes a plan possible</h3>
        {points([...(remedies.length > 0 ? remedies : ['No single change was found; change two of the above.']), ...(answer.earliest === null ? [] : [`as things are, everything can be on the table at ${clock(answer.earliest)}`])])}
      </div>
    );
  }
  const { plan, talk, dishNames, request, chances } = answer;
  return (
    <div className="cook-plan">
      {troubles}
      <h2>Begin at {clock(plan.begin)}, on the table at {plan.servings.map((serving) => clock(serving.minute)).join(' and ')}</h2>
      <p>{qualityText(plan)}</p>
      <p>{chanceText(chances)}</p>
      {plan.ahead.length > 0 && <section><h3>Hours before</h3>{points(plan.ahead.map(aheadText))}</section>}
      <BarsPicture plan={plan} talk={talk} dishNames={dishNames} />
      <h3>Running sheet</h3>
      <SheetTable sheet={answer.sheet} dishNames={dishNames} cooks={request.kitchen.cooks} speaks={talk !== null} />
      {talk && talk.leftOut.length > 0 && <section><h3>Lines that do not fit</h3>{points(talk.leftOut.map(leftOutText))}</section>}
      {talk && talk.deadAir.length > 0 && <section><h3>Silences</h3>{points(talk.deadAir.map(deadAirText))}</section>}
      <h3>How long each thing can wait</h3>
      <div className="cook-bars-scroll">
        <table className="cook-waits">
          <caption className="sr-only">Steps with their times, places and waiting</caption>
          <thead><tr><th scope="col">Step</th><th scope="col">From</th><th scope="col">To</th><th scope="col">Where</th><th scope="col">Attention</th><th scope="col">May begin late by</th><th scope="col">Waits</th><th scope="col">May wait</th></tr></thead>
          <tbody>
            {plan.steps.map((step) => (
              <tr key={step.step.id}>
                <th scope="row">{step.step.title} <span className="cook-quiet">{dishNames[step.dish]}</span></th>
                <td>{clock(step.start)}</td><td>{clock(step.end)}</td><td>{placeText(step)}</td><td>{attentionText(step)}</td>
                <td>{step.slack === 0 ? 'nothing' : minutesText(step.slack)}</td><td>{minutesText(step.waits)}</td><td>{step.mayWait === null ? 'as long as it likes' : minutesText(step.mayWait)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
