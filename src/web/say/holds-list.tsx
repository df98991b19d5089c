import type { LawHolds } from '../../app/say-report.ts';

/** What may be said of this dish without asking: claims that hold and the wordings that they open. */
export function HoldsList({ holds }: { readonly holds: readonly LawHolds[] }) {
  return (
    <section aria-labelledby="holds-title">
      <h2 id="holds-title">What holds of this dish</h2>
      {holds.map((law) => (
        <details key={law.law} open={holds.length === 1}>
          <summary>{law.name}: {law.claims.filter((c) => c.sure).length} claims hold</summary>
          {law.claims.length === 0 && <p className="quiet">No nutrition claim holds.</p>}
          {law.claims.length > 0 && law.beside.map((words) => <p key={words} className="beside">Beside any of these must stand: <strong>“{words}”</strong></p>)}
          <ul className="holds">{law.claims.map((c) => <li key={c.words}><span aria-hidden="true">{c.sure ? '●' : '◐'}</span> {c.words}{c.sure ? '' : ' (on the estimate, not for sure)'}<span className="quiet"> {c.figures[0] ?? ''}</span></li>)}</ul>
          {law.health.length > 0 && <h4>Permitted wordings that these open</h4>}
          <ul className="holds">{law.health.slice(0, 24).map((h) => <li key={h.sentence}><span aria-hidden="true">{h.sure ? '●' : '◐'}</span> {h.sentence}<span className="quiet"> {h.checked}</span></li>)}</ul>
        </details>
      ))}
    </section>
  );
}
