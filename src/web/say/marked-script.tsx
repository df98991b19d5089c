import type { SayClaim, SaySentence } from '../../app/say-report.ts';

/** The script with each claim marked by the sign and line of its verdict; pressing one opens it. The signs are told in words below. */
export function MarkedScript({ script, sentences, open, onOpen }: { readonly script: string; readonly sentences: readonly SaySentence[]; readonly open: number | null; readonly onOpen: (start: number) => void }) {
  const parts: React.ReactNode[] = [];
  const claims = sentences.flatMap((s) => s.claims);
  let at = 0;
  for (const claim of claims) {
    if (claim.start < at) continue;
    parts.push(script.slice(at, claim.start), <Mark key={claim.start} claim={claim} isOpen={open === claim.start} onOpen={onOpen} />);
    at = claim.end;
  }
  parts.push(script.slice(at));
  const signs = new Map(claims.map((claim) => [claim.sign, claim]));
  return (
    <>
      <div className="marked" role="group" aria-label="The script with its claims marked">{parts}</div>
      {signs.size > 0 && <ul className="sign-list" aria-label="What the signs mean">{[...signs.values()].map((claim) => <li key={claim.sign} data-kind={claim.kind}><span className="claim-sign" aria-hidden="true">{claim.sign}</span> {claim.words}</li>)}</ul>}
    </>
  );
}

function Mark({ claim, isOpen, onOpen }: { readonly claim: SayClaim; readonly isOpen: boolean; readonly onOpen: (start: number) => void }) {
  return (
    <button type="button" className="claim-mark" data-kind={claim.kind} aria-pressed={isOpen} aria-label={`${claim.span}: ${claim.words}`} onClick={() => onOpen(claim.start)}>
      {claim.span}<sup aria-hidden="true">{claim.sign}</sup>
    </button>
  );
}
