import { nutrient as nutrientOf, type NutrientId } from '../foods/index.ts';
import type { Claim } from './claim.ts';
import { byTable, known, lawNutrient, manner, noSuchContentClaim, together, verdict, type ClaimContext } from './law-ground.ts';
import type { NutritionFinding } from './nutrition-claims.ts';
import { nutrientsOf, onBasis } from './on-basis.ts';
import type { Plate } from './plate.ts';
import { kindOfStanding, type LawVerdict, type Reason, type VerdictKind } from './verdict.ts';

const lessWords = /\b(less|lower|fewer|reduced|light|lite|lighter|half|cut)\b/;
const moreWords = /\b(more|higher|increased|extra|richer|twice|double|triple)\b/;
const ownOther = /\b(usual|ordinary|classic|standard|original|regular|normal|old|older|other|first|last|previous|traditional) (\w+ )?(one|version|recipe|dish|stew|soup|curry|bowl|pot|salad|bake|pan|way)\b/;

/** Whether a comparison says more or less; null when it says neither. */
export function directionOf(text: string): 'less' | 'more' | null {
  const words = text.toLowerCase();
  if (lessWords.test(words)) return 'less';
  return moreWords.test(words) ? 'more' : null;
}

/** The share by which a sentence says that two dishes differ: "50 % less", "half", "twice"; null when it says none. */
export function statedDifference(text: string): number | null {
  const words = text.toLowerCase();
  const percent = /(\d+(?:[.,]\d+)?)\s*(?:%|per ?cent)/.exec(words)?.[1];
  if (percent !== undefined) return Number(percent.replace(',', '.')) / 100;
  if (/\bhalf\b/.test(words)) return 0.5;
  if (/\b(twice|double)\b/.test(words)) return 1;
  return /\b(triple|three times)\b/.test(words) ? 2 : null;
}

const wordsOf = (text: string): string[] => text.toLowerCase().split(/[^\p{L}]+/u).filter((w) => w.length > 3 && w !== 'with');

/** Whether a sentence speaks of the dish that was chosen to compare with, and not of some other food. */
function namesOther(sentence: string, claim: Claim, other: Plate): boolean {
  const text = sentence.toLowerCase();
  const after = text.split(/\bthan\b|\bcompared (?:with|to)\b|\bas the\b/)[1];
  if (after === undefined) return claim.class === 'nutrient-content';
  const words = new Set(wordsOf(after));
  return ownOther.test(after) || wordsOf(other.title).some((w) => words.has(w));
}

/** How far the two dishes differ in 100 g, as a reason. */
function differenceOf(id: NutrientId, here: Plate, there: Plate): { readonly reason: Reason; readonly share: number | null } | null {
  const mine = onBasis(here, nutrientsOf(id), '100g');
  const theirs = onBasis(there, nutrientsOf(id), '100g');
  if (mine === null || theirs === null) return null;
  const share = theirs.range.value > 0 ? mine.range.value / theirs.range.value - 1 : null;
  return { share, reason: { code: 'compared', data: { nutrient: id, unit: nutrientOf(id).unit, here: mine.range.value, there: theirs.range.value, share, other: there.title, atLeast: mine.atLeast || theirs.atLeast ? 1 : 0 } } };
}

const worst: readonly VerdictKind[] = ['not-lawful', 'short', 'unknown', 'near', 'say-with'];

function ofNutrient(id: string, direction: 'less' | 'more', claim: Claim, context: ClaimContext): LawVerdict {
  const { ground } = context;
  // Reg. 1924/2006 Annex, light: judged as reduced; 21 CFR 101.56 has conditions of its own for it.
  const kind = direction === 'more' ? 'increased' : ground.law === 'us' && /\b(light|lite)\b/i.test(claim.span) ? 'light' : 'reduced';
  const found: NutritionFinding | undefined = ground.nutrition.find((f) => f.nutrient === lawNutrient(ground, id) && f.rule.claim === kind);
  if (!found) return noSuchContentClaim(ground, id, kind);
  const clauses = [found.rule.clause, { eu: 'eu-art-9', gb: 'gb-art-9', us: 'us-101-13-j', codex: 'codex-cxg23-6' }[ground.law]];
  if (ground.other === null) return verdict(ground, 'unknown', { clauses, reasons: [{ code: 'needs-other', data: { nutrient: id, kind } }], nutrition: [found] });
  const difference = known(id) ? differenceOf(id, ground.plate, ground.other) : null;
  const standing = kindOfStanding[found.judged.standing];
  const reasons: Reason[] = [{ code: `content-${standing}`, data: { nutrient: id, kind } }, ...(difference === null ? [] : [difference.reason])];
  const stated = statedDifference(context.sentence);
  const actual = difference?.share ?? null;
  const tooMuch = stated !== null && actual !== null && (direction === 'less' ? -actual : actual) < stated - 0.005;
  if (tooMuch) reasons.push({ code: 'compared-too-much', data: { stated } });
  reasons.push({ code: 'tell-name-the-other', data: {} }, ...manner(claim));
  return verdict(ground, tooMuch ? 'short' : standing === 'say' ? 'say-with' : standing, { clauses, reasons, measurements: found.judged.by, nutrition: [found] });
}

/** Whether a claim says that something is reduced, increased, less or more than in another dish. */
export function isRelative(claim: Claim): boolean {
  return claim.class === 'comparison' || (claim.class === 'nutrient-content' && /\b(reduced|less|lower|fewer|light|lite|lighter|increased|more|higher)\b/i.test(claim.span) && !/\bmore than\b/i.test(claim.span));
}

/**
 * A comparison held against the dish that she chose, in 100 g of each as eaten. A comparison with any
 * other food stands by the table of the law.
 */
export function judgeComparison(claim: Claim, context: ClaimContext): LawVerdict {
  const { ground } = context;
  const direction = directionOf(claim.span) ?? directionOf(context.sentence);
  const plain = (): LawVerdict => byTable(ground, 'comparison', [{ code: 'comparison', data: { what: claim.span } }, ...(ground.other === null && claim.nutrients.length > 0 ? [{ code: 'choose-other', data: {} }] : []), ...manner(claim)]);
  if (direction === null || claim.nutrients.length === 0) return plain();
  if (claim.class === 'comparison' && (ground.other === null || !namesOther(context.sentence, claim, ground.other))) return plain();
  const each = claim.nutrients.map((id) => ofNutrient(id, direction, claim, context));
  return together(ground, worst.find((k) => each.some((v) => v.kind === k)) ?? 'unknown', each);
}
