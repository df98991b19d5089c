import type { Claim } from './claim.ts';
import { isRelative, judgeComparison } from './judge-comparison.ts';
import { judgeContent } from './judge-content.ts';
import { withDisclosure, withDisqualified } from './judge-disclosure.ts';
import { judgeEffect } from './judge-effect.ts';
import { judgeQuantity } from './judge-quantity.ts';
import { byTable, manner, verdict, type ClaimContext } from './law-ground.ts';
import type { LawVerdict } from './verdict.ts';

// 21 CFR 101.65(d): healthy and its forms are implied nutrient content claims; nutritious and the like are read as the same (58 FR 2375, from memory).
const healthyWords = /\bhealth(y|ier|iest|ily|iness|ful|fully|fulness)\b|\bnutritious\b|\bwholesome\b|\bnourishing\b|\bgood for you\b/i;

/** General health of the dish. Under the law of the United States the word has conditions of its own, which are not worked out. */
function judgeWellBeing(claim: Claim, ground: ClaimContext['ground']): LawVerdict {
  const base = byTable(ground, 'well-being', [{ code: 'well-being', data: { what: claim.span } }, ...manner(claim)]);
  if (ground.law !== 'us' || !healthyWords.test(claim.span)) return base;
  return { ...base, kind: 'unknown', clauses: ['us-101-65'], reasons: [{ code: 'implied-healthy', data: { what: claim.span } }, ...manner(claim)] };
}

/** What one law says of one claim about this dish. */
export function judgeClaim(claim: Claim, context: ClaimContext): LawVerdict {
  const { ground } = context;
  if (claim.polarity === 'negated' && claim.class !== 'caution') return verdict(ground, 'free', { reasons: [{ code: claim.class === 'disease' ? 'disclaimer' : 'denied', data: {} }] });
  switch (claim.class) {
    case 'caution':
      return verdict(ground, 'free', { reasons: [{ code: 'keep-caution', data: {} }] });
    case 'kitchen-science':
      return verdict(ground, 'free', { reasons: [{ code: 'kitchen', data: {} }] });
    case 'nutrient-content':
    case 'comparison':
      return withDisclosure(isRelative(claim) ? judgeComparison(claim, context) : judgeContent(claim, context), ground);
    case 'quantified':
      return judgeQuantity(claim, context);
    case 'function':
    case 'cycle-hormone':
      return judgeEffect(claim, context);
    case 'well-being':
      return judgeWellBeing(claim, ground);
    case 'disease':
      return withDisqualified(byTable(ground, claim.class, [{ code: claim.class, data: { what: claim.span } }, ...manner(claim)]), ground);
    case 'weight':
    case 'endorsement':
    case 'fear':
    case 'absolute':
      return byTable(ground, claim.class, [{ code: claim.class, data: { what: claim.span } }, ...manner(claim)]);
  }
}
