import { Button } from 'react-aria-components';
import type { SayClaim, SaySentence } from '../../app/say-report.ts';

/** Why a claim stands as it does, and what she can say instead at one press. */
export function ClaimCard({ claim, sentence, onReplace }: { readonly claim: SayClaim; readonly sentence: SaySentence; readonly onReplace: (text: string) => void }) {
  return (
    <article className="claim-card" data-kind={claim.kind} aria-label={`About “${claim.span}”`}>
      <h3><span className="claim-sign" aria-hidden="true">{claim.sign}</span> {claim.words}</h3>
      <p className="quiet">“{claim.span}” · {claim.className} · {claim.polarityName}</p>
      <p className="quiet">{claim.readAs}</p>
      {claim.unsure !== null && <p className="asks-line">{claim.unsure}</p>}
      {claim.laws.length > 1 && (
        <table className="law-table">
          <thead><tr><th scope="col">Law</th><th scope="col">Verdict</th></tr></thead>
          <tbody>{claim.laws.map((law) => <tr key={law.law}><th scope="row">{law.lawName}</th><td><span aria-hidden="true">{law.sign}</span> {law.words}</td></tr>)}</tbody>
        </table>
      )}
      {claim.laws.map((law) => (
        <section key={law.law} className="law-reasons">
          {claim.laws.length > 1 && <h4>{law.lawName}</h4>}
          {law.beside.map((words) => <p key={words} className="beside">Beside it must stand: <strong>“{words}”</strong></p>)}
          <ul>{law.reasons.map((reason) => <li key={reason}>{reason}</li>)}</ul>
          {law.figures.length > 0 && <ul className="quiet">{law.figures.map((figure) => <li key={figure}>{figure}</li>)}</ul>}
          {law.clauses.length > 0 && <p className="quiet">By {law.clauses.join('; ')}</p>}
        </section>
      ))}
      {claim.rewrites.length > 0 && (
        <section>
          <h4>Say instead of the whole sentence</h4>
          <ul className="offers">{claim.rewrites.map((text) => <li key={text}><span>{text}</span><Button className="plain" onPress={() => onReplace(text)}>Use it</Button></li>)}</ul>
        </section>
      )}
      {sentence.cautions.map((text) => <p key={text} className="asks-line">{text}</p>)}
      {sentence.evidence.map((note) => (
        <section key={note.id} className="evidence">
          <h4>What is known: {note.gradeName}</h4>
          <p>{note.finding}{note.dose === null ? '' : ` ${note.dose}`}</p>
          <p className="quiet">{note.population === '' ? '' : `${note.population}. `}{note.citation}{note.doi === null ? '' : `, doi ${note.doi}`}; {note.checked}</p>
        </section>
      ))}
    </article>
  );
}
