import type { CycleAnswer } from '../../app/cycle-answer.ts';
import type { CycleWords } from '../../messages/cycle-words.ts';
import { PictureFigure } from './picture-figure.tsx';

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return <section><h2>{title}</h2><ul className="cycle-lines">{lines.map((line) => <li key={line}>{line}</li>)}</ul></section>;
}

function DayTable({ words, schemeName }: { readonly words: CycleWords; readonly schemeName: string }) {
  if (words.days.length === 0 || words.rules.length === 0) return null;
  return (
    <section>
      <h2>Day by day, with “{schemeName}”</h2>
      <div className="cycle-scroll" tabIndex={0} role="region" aria-label="Days and advice">
        <table className="cycle-days">
          <thead><tr><th scope="col">Day</th><th scope="col">Likely phases</th><th scope="col">Advice</th><th scope="col">In fixed days</th></tr></thead>
          <tbody>
            {words.days.map((d) => (
              <tr key={d.day} data-verdict={d.verdict ?? undefined} data-differs={d.verdict === 'say' && !d.advice.startsWith(d.fixed) ? '' : undefined}>
                <th scope="row">{d.long}</th><td>{d.phases}</td><td>{d.advice}</td><td>{d.fixed}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <ul className="cycle-lines">
        {words.rules.map((r) => <li key={r.title}><strong>{r.title}:</strong> {r.text}. <span className="quiet">Evidence: {r.evidence}.</span></li>)}
        {words.schemeNotes.map((note) => <li key={note}>{note}</li>)}
      </ul>
    </section>
  );
}

/** What a record gives: red flags first, then the forecast, pictures, days, and what to take to a doctor. */
export function CycleResult({ answer }: { readonly answer: CycleAnswer }) {
  const { words } = answer;
  return (
    <div className="cycle-result" aria-live="polite">
      {words.urgent.length > 0 && (
        <section className="cycle-first" aria-label="Please read first">
          <h2>Please read first</h2>
          <ul className="cycle-lines">{words.urgent.map((line) => <li key={line}>{line}</li>)}</ul>
          {words.crisisLine !== null && <p><strong>{words.crisisLine}</strong></p>}
        </section>
      )}
      <Lines title="Forecast" lines={words.forecast} />
      <p className="cycle-warning">{words.warning}</p>
      {words.plain !== null && <Lines title="Food" lines={words.plain} />}
      {answer.pictures.map((picture) => <PictureFigure key={picture.caption} picture={picture} />)}
      {words.plain === null && <DayTable words={words} schemeName={answer.schemeName} />}
      <Lines title="Day notes" lines={words.dayNotes} />
      <Lines title="For a doctor, by published criteria" lines={words.milder} />
      <Lines title="About the record" lines={words.notes} />
    </div>
  );
}
