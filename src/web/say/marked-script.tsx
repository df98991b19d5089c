import type { SayClaim, SaySentence } from '../../app/say-report.ts';

/** The script with each claim marked by the sign and line of its verdict; pressing one opens it. */
export function MarkedScript({ script, sentences, open, onOpen }: { readonly script: string; readonly sentences: readonly SaySentence[]; readonly open: number | null; readonly onOpen: (start: number) => void }) {
  const parts: React.ReactNode[] = [];
  let at = 0;
  for (const claim of sentences.flatMap((s) => s.claims)) {
    if (claim.start < at) continue;
    parts.push(script.slice(at, claim.start), <Mark key={claim.start} claim={claim} isOpen={open === claim.start} onOpen={onOpen} />);
    at = claim.end;
  }
  parts.push(script.slice(at));
  return <p className="marked" aria-label="The script with its claims marked">{parts}</p>;
}

function Mark({ claim, isOpen, onOpen }: { readonly claim: SayClaim; readonly isOpen: boolean; readonly onOpen: (start: number) => void }) {
  return (
    <button type="button" className="claim-mark" data-kind={claim.kind} aria-pressed={isOpen} aria-label={`${claim.span}: ${claim.words}`} onClick={() => onOpen(claim.start)}>
      {claim.span}<sup aria-hidden="true">{claim.sign}</sup>
    </button>
  );
}
