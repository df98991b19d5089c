import type { Claim } from './claim.ts';
import { judgeContent } from './judge-content.ts';
import { judgeEffect } from './judge-effect.ts';
import { judgeQuantity } from './judge-quantity.ts';
import { byTable, manner, verdict, type ClaimContext } from './law-ground.ts';
import type { LawVerdict } from './verdict.ts';

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
      return judgeContent(claim, context);
    case 'quantified':
      return judgeQuantity(claim, context);
    case 'function':
    case 'cycle-hormone':
      return judgeEffect(claim, context);
    case 'disease':
    case 'weight':
    case 'endorsement':
    case 'fear':
    case 'absolute':
    case 'comparison':
    case 'well-being':
      return byTable(ground, claim.class, [{ code: claim.class, data: { what: claim.span } }, ...manner(claim)]);
  }
}
