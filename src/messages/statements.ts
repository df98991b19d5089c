import type { EvidenceGrade, LawClause, LawId, Measurement, Reason, VerdictKind } from '../core/statements/index.ts';
import type { ClaimClass, ClaimKind, Polarity } from '../core/statements/index.ts';
import { isNutrientId, nutrient } from '../core/foods/index.ts';
import { figure, listed, percent } from './numbers.ts';

export const lawNames: Readonly<Record<LawId, string>> = { eu: 'European Union', gb: 'Great Britain', us: 'United States', codex: 'Codex' };

/** Verdicts in words, each with a sign of its own: the colour is never the only mark. */
export const verdictWords: Readonly<Record<VerdictKind, { readonly words: string; readonly sign: string }>> = {
  say: { words: 'You can say it', sign: '●' },
  'say-with': { words: 'You can say it with the words beside it', sign: '◉' },
  near: { words: 'Right on the estimate, not for sure', sign: '◐' },
  short: { words: 'The plate does not bear it', sign: '○' },
  'not-lawful': { words: 'Leave it out', sign: '✕' },
  unknown: { words: 'Not known', sign: '?' },
  proof: { words: 'Only with evidence that you hold', sign: '△' },
  free: { words: 'Nothing in the way', sign: '–' },
};

export const classNames: Readonly<Record<ClaimClass, string>> = {
  'nutrient-content': 'what it contains', quantified: 'a figure', comparison: 'a comparison', function: 'an effect on the body', 'well-being': 'general health', disease: 'illness or complaint',
  weight: 'weight and hunger', endorsement: 'somebody vouches', fear: 'fear', absolute: 'an absolute word', 'cycle-hormone': 'cycle and hormones', 'kitchen-science': 'kitchen science', caution: 'a caution',
};

const readAsNames: Readonly<Record<ClaimClass, string>> = {
  'nutrient-content': 'a statement on what it contains', quantified: 'a figure', comparison: 'a comparison', function: 'a statement on the body', 'well-being': 'a statement on health in general', disease: 'a statement on illness',
  weight: 'a statement on weight or hunger', endorsement: 'somebody vouching for it', fear: 'words that frighten', absolute: 'a promise without limits', 'cycle-hormone': 'a statement on hormones or the cycle', 'kitchen-science': 'kitchen science', caution: 'a caution',
};

/** General words for food tell nothing of what a claim is of. */
const general = new Set(['food', 'dish', 'meal', 'bowl', 'plate', 'recipe']);

/** By which words a claim was read as what it is, of what it is said and for whom. */
export function readAsWords(kind: ClaimClass, because: readonly string[], about: { readonly nutrients: readonly string[]; readonly foods: readonly string[]; readonly people: readonly string[] }): string {
  const read = because.length === 0 ? `Read as ${readAsNames[kind]} by its turn of phrase.` : `Read as ${readAsNames[kind]} by: ${because.join(', ')}.`;
  const of = [...about.nutrients.map(nutrientName), ...about.foods.filter((food) => !general.has(food))];
  return `${read}${of.length === 0 ? '' : ` Of: ${of.join(', ')}.`}${about.people.length === 0 ? '' : ` For: ${about.people.join(', ')}.`}`;
}

/** Below this chance a reading is told as not sure (Truepot's own choice; tests/cases/statements/score.test.ts tells how often readings are right). */
const sureEnough = 0.7;

/** Set when a reading is not sure; null for a reading by a turn of phrase, which has no chance, and for a sure one. */
export function unsureWords(chance: number | null): string | null {
  return chance === null || chance >= sureEnough ? null : `This reading is not sure (about ${Math.round(chance * 100)} in 100). Look at the sentence and judge for yourself.`;
}

export const polarityNames: Readonly<Record<Polarity, string>> = { asserted: 'said', negated: 'denied', question: 'asked', reported: 'told of others', hedged: 'softened' };

export const gradeNames: Readonly<Record<EvidenceGrade, string>> = { 'well-established': 'well established', mixed: 'mixed', early: 'early', 'traditional-only': 'traditional use only', contradicted: 'contradicted' };


const kindWords: Readonly<Record<ClaimKind, string>> = { source: 'source of', high: 'high in', low: 'low in', 'very-low': 'very low in', free: 'free from', 'none-added': 'without added', reduced: 'reduced', increased: 'increased', light: 'light in', lean: 'lean', 'extra-lean': 'extra lean' };

const groupNames: Readonly<Record<string, string>> = { 'omega-3': 'omega-3 fatty acids', unsaturated: 'unsaturated fat', micronutrients: 'vitamins or minerals in general', antioxidants: 'antioxidants', cultures: 'live cultures', sodium: 'salt', '': 'it' };

/** The everyday name of a nutrient or group. */
export function nutrientName(id: string): string {
  if (groupNames[id] !== undefined) return groupNames[id];
  if (!isNutrientId(id)) return id.replace(/-/g, ' ');
  const { name } = nutrient(id);
  return /^(Vitamin|EPA|ALA)/.test(name) ? name.replace(/^Vitamin/, 'vitamin') : name.toLowerCase().replace(/ \(b(\d)\)/, '');
}

/** "High in iron", "without added sugars". */
export function claimWords(kind: ClaimKind, id: string): string {
  const words = kind === 'lean' || kind === 'extra-lean' ? kindWords[kind] : `${kindWords[kind]} ${nutrientName(id)}`;
  return words.charAt(0).toUpperCase() + words.slice(1);
}

// The names of 21 CFR 101.9 for the nutrients of the disclosure statement.
const usNames: Readonly<Record<string, string>> = { fat: 'fat', saturates: 'saturated fat', cholesterol: 'cholesterol', sodium: 'sodium' };

/** The statement of 21 CFR 101.13(h): “See nutrition information for fat and sodium content.” */
export function disclosureStatement(nutrients: readonly string[]): string {
  return `See nutrition information for ${listed(nutrients.map((id) => usNames[id] ?? nutrientName(id)))} content.`;
}

const bases: Readonly<Record<Measurement['per'], string>> = { '100g': 'in 100 g', '100ml': 'in 100 ml', '100kcal': 'in 100 kcal', portion: 'in a portion', racc: 'in the reference amount', '50g': 'in 50 g', energy: 'of the energy', 'fatty-acids': 'of the fatty acids', component: 'in the reference amount of that food' };

function unitOf(m: Measurement): string {
  const [id] = m.nutrients;
  return m.per === 'energy' || m.per === 'fatty-acids' || id === undefined ? '' : ` ${nutrient(id).unit}`;
}

/** "2.4 mg iron in 100 g (1.8 to 3.0); at least 2.1 mg is asked, 15 % of 14 mg". */
export function measurementWords(m: Measurement): string {
  const share = m.per === 'energy' || m.per === 'fatty-acids';
  const number = (x: number): string => (share ? percent(x) : `${figure(x)}${unitOf(m)}`);
  const what = m.nutrients.map(nutrientName).join(' and ');
  const found = m.found === null ? `${what}: not known` : `${what}: ${m.atLeast ? 'at least ' : ''}${number(m.found.value)} ${bases[m.per]}${m.food === null ? '' : ` (${m.food})`}${m.found.high > m.found.low ? `, between ${number(m.found.low)} and ${number(m.found.high)}` : ''}`;
  const asked = { atLeast: 'at least', above: 'more than', atMost: 'at most', below: 'less than' }[m.kind];
  const of = m.limitShare === null || m.reference === null ? '' : ` (${percent(m.limitShare)} of ${figure(m.reference)}${unitOf(m)})`;
  return `${found}; asked: ${asked} ${number(m.limit)}${of}`;
}

type Data = Reason['data'];
const text = (d: Data, key: string): string => String(d[key] ?? '');
const num = (d: Data, key: string): number => Number(d[key] ?? 0);
const named = (d: Data): string => nutrientName(text(d, 'nutrient'));
const withKind = (d: Data): string => claimWords(text(d, 'kind') as ClaimKind, text(d, 'nutrient')).toLowerCase();

function quantity(d: Data, words: string): string {
  const unit = text(d, 'unit');
  const share = d['share'] === null ? '' : ` (${percent(num(d, 'share'))} of ${figure(num(d, 'reference'))} ${unit})`;
  return `${words}: you say ${figure(num(d, 'wanted'))} ${unit}${share}; a portion gives ${num(d, 'atLeast') === 1 ? 'at least ' : ''}${figure(num(d, 'value'))} ${unit}${num(d, 'high') > num(d, 'low') ? `, between ${figure(num(d, 'low'))} and ${figure(num(d, 'high'))}` : ''}.`;
}

const usName = (d: Data): string => usNames[text(d, 'nutrient')] ?? named(d);
const atLevel = (d: Data): string => `${figure(num(d, 'limit'))} ${text(d, 'unit')} ${bases[text(d, 'per') as Measurement['per']]}`;
const withUnit = (d: Data, key: string): string => `${figure(num(d, key))} ${text(d, 'unit')}`;
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** "Fat in 100 g: 4 g here, 8 g in Beef stew, 50 % less." */
function comparedWords(d: Data): string {
  const share = d['share'];
  const difference = typeof share !== 'number' ? '' : Math.abs(share) < 0.005 ? ', the same' : `, ${percent(Math.abs(share))} ${share < 0 ? 'less' : 'more'}`;
  return `${capital(named(d))} in 100 g as eaten: ${num(d, 'atLeast') === 1 ? 'at least ' : ''}${withUnit(d, 'here')} here, ${withUnit(d, 'there')} in “${text(d, 'other')}”${num(d, 'atLeast') === 1 ? ', and values are missing' : difference}.`;
}

/** Which two dishes are compared and in what amount. */
export function comparedDishes(dish: string, other: string): string {
  return `“${dish}” is compared with “${other}”, in 100 g of each as eaten.`;
}

const reasons: Readonly<Record<string, (d: Data) => string>> = {
  disclaimer: () => 'It denies that food treats illness: good.',
  denied: () => 'It is denied, so nothing is promised.',
  'keep-caution': () => 'A caution: keep it in.',
  kitchen: () => 'What happens in the pot, not what the dish does to people.',
  physiology: () => 'How the body works, without a word on the dish.',
  'also-as-question': () => 'A question makes the claim too.',
  'also-as-report': () => 'Putting it in somebody else’s mouth makes the claim too.',
  'also-hedged': () => '“May” or “I think” makes the claim too.',
  disease: (d) => `“${text(d, 'what')}” speaks of an illness, a sign of one or a complaint. Of no food may it be said that it prevents, treats, eases or cures.`,
  weight: (d) => `“${text(d, 'what')}” promises something about weight, shape or hunger.`,
  endorsement: (d) => `“${text(d, 'what')}” lets somebody with authority vouch for the food.`,
  fear: (d) => `“${text(d, 'what')}” frightens, or speaks ill of other food.`,
  absolute: (d) => `“${text(d, 'what')}” promises without limits.`,
  comparison: (d) => `“${text(d, 'what')}” compares. Only foods of one kind may be compared, with the difference stated for the same amount.`,
  'well-being': (d) => `“${text(d, 'what')}” speaks of health in general. It needs a permitted health claim right beside it.`,
  function: (d) => `“${text(d, 'what')}” names an effect on the body.`,
  'cycle-hormone': (d) => `“${text(d, 'what')}” names an effect on hormones or the cycle.`,
  botanical: (d) => `“${text(d, 'what')}” names an effect of ${text(d, 'food')}. Health statements on herbs and spices are not usable until they are assessed and listed.`,
  'content-say': (d) => `The plate bears “${withKind(d)}”.`,
  'content-near': (d) => `“${withKind(d)}” is right on the best estimate; the lower end of the range misses it.`,
  'content-short': (d) => `The plate does not reach “${withKind(d)}”.`,
  'content-unknown': (d) => `Whether it is “${withKind(d)}” is not known: values are missing, and missing is not little.`,
  'true-of-raw-food': (d) => `It is true of 100 g of ${text(d, 'kind')} as it goes into the pot, not of the dish.`,
  'lesser-holds': (d) => `“${withKind(d)}” does hold.`,
  'no-such-content-claim': (d) => `There is no lawful claim “${text(d, 'nutrient') === '' ? 'of this kind' : withKind(d)}” here.`,
  cultures: () => 'Naming live cultures counts as a health claim.',
  'free-from': (d) => `“Free from ${text(d, 'nutrient')}” rests on your packets and your board, not on the tables.`,
  'quantity-say': (d) => quantity(d, 'The figure is right'),
  'quantity-near': (d) => quantity(d, 'Near, not sure'),
  'quantity-short': (d) => quantity(d, 'Too much said'),
  'quantity-unknown': (d) => quantity(d, 'Not known'),
  'true-of-weight': (d) => (d['grams'] === null ? 'No amount of this dish would make it true.' : `It would be true of ${figure(num(d, 'grams'))} g of the dish; a portion weighs ${figure(num(d, 'portion'))} g.`),
  'figure-but-no-source': (d) => `The figure is right for the portion. On its own it counts as “contains ${named(d)}”, and for that 100 g of the dish must be a source of it.`,
  'only-means-low': () => '“Only” or “under” reads as a claim that it is low, and that condition does not hold.',
  'no-reference': (d) => `This law has no reference amount for ${named(d)}.`,
  'no-data': (d) => `Nothing is known of ${named(d)} in this dish.`,
  'no-figure': () => 'No figure that can be held against the dish was found.',
  'wording-say': (d) => `“${text(d, 'wording')}” is a permitted wording, and the dish meets its condition of use.`,
  'wording-near': (d) => `“${text(d, 'wording')}” is a permitted wording; the dish meets its condition on the estimate, not for sure.`,
  'wording-short': (d) => `“${text(d, 'wording')}” is a permitted wording, but the dish does not meet its condition of use.`,
  'wording-unknown': (d) => `“${text(d, 'wording')}” is a permitted wording; whether the dish meets its condition is not known.`,
  'permitted-wording': (d) => `Permitted and met by this dish: “${text(d, 'wording')}”.`,
  'permitted-near': (d) => `Permitted, met on the estimate only: “${text(d, 'wording')}”.`,
  'permitted-short': (d) => `There is a permitted wording, “${text(d, 'wording')}”, but this dish does not meet its condition.`,
  'no-permitted-wording': () => 'No permitted wording speaks of this.',
  'needs-other': (d) => `“${withKind(d)}” compares with another dish. Choose the dish that it is compared with, and it is worked out.`,
  'choose-other': () => 'If it compares with a dish of yours, choose that dish and name it in the sentence.',
  compared: comparedWords,
  'compared-too-much': (d) => `You say ${percent(num(d, 'stated'))}; the difference is smaller.`,
  'disclose-over': (d) => `${capital(usName(d))} is ${withUnit(d, 'value')}, above ${atLevel(d)}: the pointer to the nutrition information must stand beside the claim.`,
  'disclose-likely': (d) => `${capital(usName(d))} is about ${withUnit(d, 'value')}, above ${atLevel(d)} on the estimate: put the pointer to the nutrition information beside the claim.`,
  'disclose-perhaps': (d) => `${capital(usName(d))} may be up to ${withUnit(d, 'high')}, and the level is ${atLevel(d)}: put the pointer in, it does no harm.`,
  'disclose-unknown': (d) => `Not all values of ${usName(d)} are known, and missing is not little: unless you know that it is at most ${atLevel(d)}, put the pointer in.`,
  disqualified: (d) => `${capital(usName(d))} is ${withUnit(d, 'value')}, above ${atLevel(d)}: not even a listed health claim could be made of this dish.`,
  'implied-healthy': (d) => `“${text(d, 'what')}” calls the dish healthy. In the United States that is an implied claim with conditions of its own: enough of the food groups, little added sugar, sodium and saturated fat. Truepot does not work them out, so leave the word out unless somebody has.`,
  'varied-diet': () => 'Say beside it that a varied, balanced diet and a healthy lifestyle matter.',
  'own-evidence': () => 'Keep the evidence for it on file.',
  'tell-natural-sugars': () => 'Add: contains naturally occurring sugars.',
  'tell-name-the-other': () => 'Name the dish it is compared with and the difference.',
  'tell-say-what-is-reduced': () => 'Say what makes it less.',
  'tell-not-sodium-free': () => 'Add: not a sodium free food.',
  'tell-name-the-component': () => 'Name the food of the dish that carries it.',
  'tell-ala-2g': () => 'Say that the effect comes with 2 g of ALA a day.',
  'tell-la-10g': () => 'Say that the effect comes with 10 g of linoleic acid a day.',
  'tell-epa-dha-250mg': () => 'Say that the effect comes with 250 mg of EPA and DHA a day.',
  'tell-walnuts-30g': () => 'Say that the effect comes with 30 g of walnuts a day.',
  'tell-prunes-100g': () => 'Say that the effect comes with 100 g of prunes a day.',
};

/** A reason in words; an unknown code is a bug and throws. */
export function reasonWords(reason: Reason): string {
  const say = reasons[reason.code];
  if (!say) throw new Error(`Bug: there are no words for the reason ${reason.code}`);
  return say(reason.data);
}

export const reasonCodes: readonly string[] = Object.keys(reasons);

/** A clause in words, with how far it was compared with the law. */
export function clauseWords(id: string, clauses: readonly LawClause[]): string {
  const clause = clauses.find((c) => c.id === id);
  return clause ? `${clause.clause}${clause.checked === 'memory' ? ' (from memory, to be verified)' : ''}` : id;
}

export const notChecked: Readonly<Record<'other' | 'no-words' | 'too-long', string>> = {
  other: 'There is no rule set for this language; nothing was checked. Truepot reads English scripts only.',
  'no-words': 'There are no words here to check; there is no rule set for this language; nothing was checked.',
  'too-long': 'The script is too long (more than 200,000 characters); nothing was checked. Paste one video or text at a time.',
};

export const ownNoteChecked = 'your own note';

export const botherLines = {
  nutritionOfPortion: 'Nutrition information, one portion:',
  variedDiet: 'A varied and balanced diet and a healthy lifestyle matter.',
  education: 'This is education about food, not medical advice.',
  allergensNone: 'Allergens: no listed one was found in the foods named; look at your packets.',
  allergensUnknown: 'Allergens: not worked out yet; look at your packets.',
} as const;
