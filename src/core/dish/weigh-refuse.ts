import { plainText } from '../foods/index.ts';
import type { WeighContext } from './weigh-context.ts';
import { times, type Estimate } from './weigh-estimate.ts';

// Adjectives of the food as bought: what they name is not in the weight, wherever they stand.
const boughtWithout = /\b(boneless|skinless|seedless|stoneless|ready[- ]to[- ]eat|net weight|prepared weight|trimmed weight|peeled weight|shelled weight|picked weight|leaves|leaves only|baby leaf|baby spinach|baby leaves|salad leaves|no stalks|no stems|without stalks|without the stalks|washed and ready)\b/;
// Work that takes refuse off: before the food's name it is already done, behind it the cook still does it.
const takenOff = /\b(peeled|filleted|stoned|pitted|shelled|podded|hulled|cored|trimmed|deseeded|de-seeded|boned|deboned|skinned|picked|husked|shucked|stemmed)\b/;
// Nothing is taken off.
const leftOn = /\b(unpeeled|skin on|skin-on|skins on|scrubbed|with skin|with the skin|unskinned|whole with peel|leaves and stalks|stalks and all|stems and all|with (the )?stalks)\b/;

// Skin that is scrubbed stays on; a shell that is scrubbed is still thrown away. Peel is less than this percent of a food.
const mostPeel = 40;

const boneIn = /\bbone[- ]in\b|\bon the bone\b/;
// "2 bananas (220 g peeled)": the weight is that of what is left.
const weighedAfterWork = /\d\s*(g|kg|oz|lb|grams?|ounces?)\.?\s+(when\s+|once\s+|after\s+)?(peeled|podded|shelled|stoned|pitted|trimmed|cored|prepared|picked|net|boned|cleaned|filleted|skinned|deseeded)\b/;

const edibleForms = new Set<string>(['cooked', 'canned', 'frozen', 'dried', 'ground', 'powder', 'juice', 'oil', 'paste', 'flour']);

function workDoneBefore(text: string, name: string): boolean {
  const at = text.indexOf(plainText(name).split(/\s+/).at(-1) ?? '');
  const found = takenOff.exec(text);
  return found !== null && at >= 0 && found.index < at;
}

/** Percent of the food as bought that is thrown away, and who says so; null when neither the kitchen names nor the table say. */
function refuseOf(context: WeighContext): { percent: number; source: string; locator: string; what: string } | null {
  const { entry, form } = context.match;
  const { food } = context;
  if (entry?.refusePercent === 0) return null; // the kitchen name says that nothing is thrown away
  if (entry?.refusePercent != null && (form === 'raw' || form === entry.usual) && !['canned', 'dried', 'juice', 'oil', 'peel', 'cooked', 'frozen', 'ground'].includes(form ?? '')) {
    return { percent: entry.refusePercent, source: 'common-practice', locator: `kitchen name ${entry.name}`, what: '' };
  }
  // A cooked bird in pieces, a drained tin: the table's refuse is that of another purchase.
  if (food?.refusePercent == null || (form !== null && edibleForms.has(form))) return null;
  return { percent: food.refusePercent, source: food.table, locator: `${food.code}: refuse`, what: food.refuseText ?? '' };
}

/** Takes peel, core and bone off a weight as bought; a net weight comes back as it is. */
export function withoutRefuse(context: WeighContext, estimate: Estimate, stated: boolean): Estimate {
  if (estimate.basis === 'net') return estimate;
  const refuse = refuseOf(context);
  const net: Estimate = { ...estimate, basis: 'net' };
  if (!refuse || refuse.percent <= 0) return net;
  const text = plainText(context.line.text);
  const reason = refuse.percent <= mostPeel && leftOn.test(text) && !boneIn.test(text) ? 'left-on' : stated && boughtWithout.test(text) ? 'bought-without' : stated && (workDoneBefore(text, context.line.food.name) || weighedAfterWork.test(text)) ? 'already-done' : null;
  if (reason !== null) return times(net, { kind: 'no-refuse', data: { reason, percent: refuse.percent }, factor: 1, unit: '1', spread: 0, source: null, locator: null });
  const spread = context.tables.rules.spreads.refuse;
  return times(net, { kind: 'refuse', data: { percent: refuse.percent, what: refuse.what }, factor: 1 - refuse.percent / 100, unit: '1', spread: spread.value, source: refuse.source, locator: refuse.locator });
}
