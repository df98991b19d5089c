import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { NutrientId } from '../../../src/core/foods/index.ts';
import { nutritionFindings, type ClaimKind, type LawId, type Plate, type Standing } from '../../../src/core/statements/index.ts';
import { compileSources } from '../../../scripts/tables/sources.ts';
import { compileStatements } from '../../../scripts/tables/statements.ts';
import { plateWith } from './plates.ts';

// Every condition on both sides of its boundary. The limits below were written from the laws themselves
// (and the reference file of facts), not read from data/: a wrong figure in data/ fails here.
const data = join(import.meta.dirname, '../../../data');
const rules = compileStatements(data, new Set(compileSources(data).map((s) => s.id)));
const on = '2026-11-25';

function standing(law: LawId, claim: ClaimKind, nutrient: string, plates: { plate: Plate; other?: Plate }): Standing | 'no such claim' {
  const found = nutritionFindings(law, { plate: plates.plate, rules: rules.nutrition, references: rules.references, other: plates.other ?? null, on });
  return found.find((f) => f.rule.claim === claim && f.nutrient === nutrient)?.judged.standing ?? 'no such claim';
}

const liquid: Partial<Plate> = { form: 'liquid' };
const meal: Partial<Plate> = { usKind: 'main-dish' };
const step = (limit: number): number => Math.max(limit * 0.02, 1e-4);

/** A limit: a claim on one nutrient, an amount in the 100 g plate, and which side passes. */
interface Limit {
  readonly law: LawId | 'eu+gb';
  readonly clause: string;
  readonly claim: ClaimKind;
  readonly nutrient: NutrientId;
  readonly limit: number;
  readonly pass: 'at-least' | 'above' | 'at-most' | 'below';
  readonly with?: Partial<Record<NutrientId, number>>;
  readonly plate?: Partial<Plate>;
  readonly basis: string;
}

const annex = 'Reg. (EC) 1924/2006, Annex';
/** Limits of a solid (per 100 g) and of a drink (per 100 ml); null where there is none. */
type Pair = readonly [number | null, number | null];
const most = (claim: ClaimKind, nutrient: NutrientId, [solid, drink]: Pair, more: Partial<Limit> = {}): Limit[] => [
  ...(solid === null ? [] : [{ law: 'eu+gb' as const, clause: annex, claim, nutrient, limit: solid, pass: 'at-most' as const, basis: '100 g', ...more } satisfies Limit]),
  ...(drink === null ? [] : [{ law: 'eu+gb', clause: annex, claim, nutrient, limit: drink, pass: 'at-most', basis: '100 ml', ...more, plate: { ...more.plate, ...liquid } } as Limit]),
];

const eu: Limit[] = [
  ...most('low', 'energy', [40, 20]),
  ...most('free', 'energy', [null, 4]),
  ...most('low', 'fat', [3, 1.5]),
  ...most('free', 'fat', [0.5, 0.5]),
  ...most('low', 'saturates', [1.5, 0.75], { with: { 'trans-fat': 0, energy: 400 } }),
  ...most('free', 'saturates', [0.1, 0.1], { with: { 'trans-fat': 0 } }),
  ...most('low', 'sugars', [5, 2.5]),
  ...most('free', 'sugars', [0.5, 0.5]),
  ...most('low', 'sodium', [120, 120]),
  ...most('very-low', 'sodium', [40, 40]),
  ...most('free', 'sodium', [5, 5]),
  ...most('none-added', 'sodium', [120, 120], { plate: { addedSalt: 'no' } }),
  { law: 'eu+gb', clause: `${annex}, low saturated fat: 10 % of energy`, claim: 'low', nutrient: 'saturates', limit: 1, pass: 'at-most', with: { 'trans-fat': 0, energy: 90 }, basis: 'energy' },
  { law: 'eu+gb', clause: annex, claim: 'source', nutrient: 'fibre', limit: 3, pass: 'at-least', with: { energy: 400 }, basis: '100 g' },
  { law: 'eu+gb', clause: annex, claim: 'source', nutrient: 'fibre', limit: 1.5, pass: 'at-least', with: { energy: 100 }, basis: '100 kcal' },
  { law: 'eu+gb', clause: annex, claim: 'high', nutrient: 'fibre', limit: 6, pass: 'at-least', with: { energy: 400 }, basis: '100 g' },
  { law: 'eu+gb', clause: annex, claim: 'high', nutrient: 'fibre', limit: 3, pass: 'at-least', with: { energy: 100 }, basis: '100 kcal' },
  { law: 'eu+gb', clause: `${annex}: 12 % of energy`, claim: 'source', nutrient: 'protein', limit: 6, pass: 'at-least', with: { energy: 200 }, basis: 'energy' },
  { law: 'eu+gb', clause: `${annex}: 20 % of energy`, claim: 'high', nutrient: 'protein', limit: 10, pass: 'at-least', with: { energy: 200 }, basis: 'energy' },
];

// Reg. (EU) 1169/2011 Annex XIII Part A: reference value; source 15 %, high 30 %; half of that in 100 ml.
const nrv: [NutrientId, number][] = [
  ['vitamin-a', 800], ['vitamin-d', 5], ['vitamin-e', 12], ['vitamin-k', 75], ['vitamin-c', 80], ['thiamin', 1.1], ['riboflavin', 1.4], ['niacin', 16], ['vitamin-b6', 1.4],
  ['folate', 200], ['vitamin-b12', 2.5], ['biotin', 50], ['pantothenic-acid', 6], ['potassium', 2000], ['chloride', 800], ['calcium', 800], ['phosphorus', 700], ['magnesium', 375],
  ['iron', 14], ['zinc', 10], ['copper', 1], ['manganese', 2], ['fluoride', 3.5], ['selenium', 55], ['chromium', 40], ['molybdenum', 50], ['iodine', 150],
];
const euMicro = nrv.flatMap(([nutrient, value]): Limit[] => [
  { law: 'eu+gb', clause: 'Reg. 1169/2011 Annex XIII A.2', claim: 'source', nutrient, limit: value * 0.15, pass: 'at-least', basis: '100 g' },
  { law: 'eu+gb', clause: 'Reg. 1169/2011 Annex XIII A.2', claim: 'source', nutrient, limit: value * 0.075, pass: 'at-least', basis: '100 ml', plate: liquid },
  { law: 'eu+gb', clause: `${annex}, high: twice a source`, claim: 'high', nutrient, limit: value * 0.3, pass: 'at-least', basis: '100 g' },
  { law: 'eu+gb', clause: `${annex}, high: twice a source`, claim: 'high', nutrient, limit: value * 0.15, pass: 'at-least', basis: '100 ml', plate: liquid },
]);

// 21 CFR 101.9(c)(8)(iv) and (9) daily values; 101.54(b) high 20 %, (c) good source 10 %.
const dv: [NutrientId, number][] = [
  ['vitamin-a', 900], ['vitamin-c', 90], ['calcium', 1300], ['iron', 18], ['vitamin-d', 20], ['vitamin-e', 15], ['vitamin-k', 120], ['thiamin', 1.2], ['riboflavin', 1.3], ['niacin', 16],
  ['vitamin-b6', 1.7], ['folate-dfe', 400], ['vitamin-b12', 2.4], ['biotin', 30], ['pantothenic-acid', 5], ['phosphorus', 1250], ['iodine', 150], ['magnesium', 420], ['zinc', 11],
  ['selenium', 55], ['copper', 0.9], ['manganese', 2.3], ['chromium', 35], ['molybdenum', 45], ['chloride', 2300], ['potassium', 4700], ['choline', 550], ['fibre', 28], ['protein', 50],
];
const usMicro = dv.flatMap(([nutrient, value]): Limit[] => [
  { law: 'us', clause: '21 CFR 101.54(c)', claim: 'source', nutrient, limit: value * 0.1, pass: 'at-least', basis: 'reference amount' },
  { law: 'us', clause: '21 CFR 101.54(b)', claim: 'high', nutrient, limit: value * 0.2, pass: 'at-least', basis: 'reference amount' },
]);
const us: Limit[] = [
  { law: 'us', clause: '21 CFR 101.60(b)(1)', claim: 'free', nutrient: 'energy', limit: 5, pass: 'below', basis: 'reference amount and portion' },
  { law: 'us', clause: '21 CFR 101.60(b)(2)', claim: 'low', nutrient: 'energy', limit: 40, pass: 'at-most', basis: 'reference amount' },
  { law: 'us', clause: '21 CFR 101.60(b)(2), small reference amount, 50 g', claim: 'low', nutrient: 'energy', limit: 80, pass: 'at-most', basis: '50 g', plate: { raccG: 30 } },
  { law: 'us', clause: '21 CFR 101.60(b)(3)', claim: 'low', nutrient: 'energy', limit: 120, pass: 'at-most', basis: '100 g of a main dish', plate: meal },
  { law: 'us', clause: '21 CFR 101.60(c)(1)', claim: 'free', nutrient: 'sugars', limit: 0.5, pass: 'below', basis: 'reference amount and portion' },
  { law: 'us', clause: '21 CFR 101.61(b)(1)', claim: 'free', nutrient: 'sodium', limit: 5, pass: 'below', basis: 'reference amount and portion' },
  { law: 'us', clause: '21 CFR 101.61(b)(2)', claim: 'very-low', nutrient: 'sodium', limit: 35, pass: 'at-most', basis: 'reference amount' },
  { law: 'us', clause: '21 CFR 101.61(b)(3)', claim: 'very-low', nutrient: 'sodium', limit: 35, pass: 'at-most', basis: '100 g of a main dish', plate: { ...meal, raccG: 140 } },
  { law: 'us', clause: '21 CFR 101.61(b)(4)', claim: 'low', nutrient: 'sodium', limit: 140, pass: 'at-most', basis: 'reference amount' },
  { law: 'us', clause: '21 CFR 101.61(b)(4), small reference amount, 50 g', claim: 'low', nutrient: 'sodium', limit: 280, pass: 'at-most', basis: '50 g', plate: { raccG: 30 } },
  { law: 'us', clause: '21 CFR 101.61(b)(5)', claim: 'low', nutrient: 'sodium', limit: 140, pass: 'at-most', basis: '100 g of a main dish', plate: { ...meal, raccG: 140 } },
  { law: 'us', clause: '21 CFR 101.62(b)(1)', claim: 'free', nutrient: 'fat', limit: 0.5, pass: 'below', basis: 'reference amount and portion' },
  { law: 'us', clause: '21 CFR 101.62(b)(2)', claim: 'low', nutrient: 'fat', limit: 3, pass: 'at-most', basis: 'reference amount' },
  { law: 'us', clause: '21 CFR 101.62(b)(3)', claim: 'low', nutrient: 'fat', limit: 3, pass: 'at-most', basis: '100 g of a main dish', with: { energy: 400 }, plate: { ...meal, raccG: 140 } },
  { law: 'us', clause: '21 CFR 101.62(b)(3): 30 % of energy', claim: 'low', nutrient: 'fat', limit: 2, pass: 'at-most', basis: 'energy', with: { energy: 60 }, plate: meal },
  { law: 'us', clause: '21 CFR 101.62(c)(1)', claim: 'free', nutrient: 'saturates', limit: 0.5, pass: 'below', basis: 'reference amount', with: { 'trans-fat': 0 } },
  { law: 'us', clause: '21 CFR 101.62(c)(1), trans fat', claim: 'free', nutrient: 'saturates', limit: 0.5, pass: 'below', basis: 'reference amount', with: { 'trans-fat': 0 } },
  { law: 'us', clause: '21 CFR 101.62(c)(2)', claim: 'low', nutrient: 'saturates', limit: 1, pass: 'at-most', basis: 'reference amount', with: { energy: 400 } },
  { law: 'us', clause: '21 CFR 101.62(c)(2): 15 % of energy', claim: 'low', nutrient: 'saturates', limit: 0.5, pass: 'at-most', basis: 'energy', with: { energy: 30 } },
  { law: 'us', clause: '21 CFR 101.62(c)(3)', claim: 'low', nutrient: 'saturates', limit: 1, pass: 'at-most', basis: '100 g of a main dish', with: { energy: 400 }, plate: { ...meal, raccG: 140 } },
  { law: 'us', clause: '21 CFR 101.62(c)(3): under 10 % of energy', claim: 'low', nutrient: 'saturates', limit: 0.5, pass: 'below', basis: 'energy', with: { energy: 45 }, plate: meal },
  { law: 'us', clause: '21 CFR 101.62(d)(1)', claim: 'free', nutrient: 'cholesterol', limit: 2, pass: 'below', basis: 'reference amount', with: { saturates: 1 } },
  { law: 'us', clause: '21 CFR 101.62(d)(2)', claim: 'low', nutrient: 'cholesterol', limit: 20, pass: 'at-most', basis: 'reference amount', with: { saturates: 1 } },
  { law: 'us', clause: '21 CFR 101.62(d)(3)', claim: 'low', nutrient: 'cholesterol', limit: 20, pass: 'at-most', basis: '100 g of a main dish', with: { saturates: 1 }, plate: { ...meal, raccG: 140 } },
  { law: 'us', clause: '21 CFR 101.62(e)(1)', claim: 'lean', nutrient: 'fat', limit: 10, pass: 'below', basis: 'reference amount and 100 g', with: { saturates: 2, cholesterol: 50 }, plate: { meatOrFish: true } },
  { law: 'us', clause: '21 CFR 101.62(e)(4)', claim: 'extra-lean', nutrient: 'fat', limit: 5, pass: 'below', basis: 'reference amount and 100 g', with: { saturates: 1, cholesterol: 50 }, plate: { meatOrFish: true } },
];

const table = 'CXG 23-1997, table of conditions';
const codexMost = (claim: ClaimKind, nutrient: NutrientId, pair: Pair, more: Partial<Limit> = {}): Limit[] =>
  most(claim, nutrient, pair, more).map((l) => ({ ...l, law: 'codex', clause: table }));
const codexNrv: [NutrientId, number][] = [
  ['vitamin-a', 800], ['vitamin-c', 100], ['vitamin-k', 60], ['vitamin-e', 9], ['thiamin', 1.2], ['riboflavin', 1.2], ['niacin', 15], ['vitamin-b6', 1.3], ['folate-dfe', 400],
  ['vitamin-b12', 2.4], ['calcium', 1000], ['magnesium', 310], ['iron', 14], ['zinc', 11], ['iodine', 150], ['copper', 0.9], ['selenium', 60], ['manganese', 3], ['phosphorus', 700], ['potassium', 3500],
];
const codex: Limit[] = [
  ...codexMost('low', 'energy', [40, 20]), ...codexMost('free', 'energy', [null, 4]), ...codexMost('low', 'fat', [3, 1.5]), ...codexMost('free', 'fat', [0.5, 0.5]),
  ...codexMost('low', 'saturates', [1.5, 0.75], { with: { energy: 400 } }), ...codexMost('free', 'saturates', [0.1, 0.1]),
  ...codexMost('low', 'cholesterol', [20, 10], { with: { saturates: 0.5, energy: 400 } }), ...codexMost('free', 'cholesterol', [5, 5], { with: { saturates: 0.5, energy: 400 } }),
  ...codexMost('free', 'sugars', [0.5, 0.5]), ...codexMost('low', 'sodium', [120, null]), ...codexMost('very-low', 'sodium', [40, null]), ...codexMost('free', 'sodium', [5, null]),
  ...codexMost('none-added', 'sodium', [120, null], { plate: { addedSalt: 'no' } }),
  { law: 'codex', clause: `${table}: 10 % of energy`, claim: 'low', nutrient: 'saturates', limit: 1, pass: 'at-most', with: { energy: 90 }, basis: 'energy' },
  { law: 'codex', clause: table, claim: 'source', nutrient: 'fibre', limit: 3, pass: 'at-least', with: { energy: 400 }, basis: '100 g' },
  { law: 'codex', clause: table, claim: 'source', nutrient: 'fibre', limit: 1.5, pass: 'at-least', with: { energy: 100 }, basis: '100 kcal' },
  { law: 'codex', clause: table, claim: 'high', nutrient: 'fibre', limit: 6, pass: 'at-least', with: { energy: 400 }, basis: '100 g' },
  { law: 'codex', clause: table, claim: 'high', nutrient: 'fibre', limit: 3, pass: 'at-least', with: { energy: 100 }, basis: '100 kcal' },
  { law: 'codex', clause: `${table}: 10 % NRV in 100 g`, claim: 'source', nutrient: 'protein', limit: 5, pass: 'at-least', with: { energy: 400 }, basis: '100 g' },
  { law: 'codex', clause: `${table}: 5 % NRV in 100 kcal`, claim: 'source', nutrient: 'protein', limit: 2.5, pass: 'at-least', with: { energy: 100 }, basis: '100 kcal' },
  { law: 'codex', clause: `${table}: 20 % NRV in 100 g`, claim: 'high', nutrient: 'protein', limit: 10, pass: 'at-least', with: { energy: 400 }, basis: '100 g' },
  { law: 'codex', clause: `${table}: 10 % NRV in 100 kcal`, claim: 'high', nutrient: 'protein', limit: 5, pass: 'at-least', with: { energy: 100 }, basis: '100 kcal' },
  ...codexNrv.flatMap(([nutrient, value]): Limit[] => [
    { law: 'codex', clause: `${table}: 15 % NRV in 100 g or a serving`, claim: 'source', nutrient, limit: value * 0.15, pass: 'at-least', with: { energy: 400 }, basis: '100 g' },
    { law: 'codex', clause: `${table}: 5 % NRV in 100 kcal`, claim: 'source', nutrient, limit: value * 0.05, pass: 'at-least', with: { energy: 100 }, basis: '100 kcal' },
    { law: 'codex', clause: `${table}: 30 % NRV in 100 g or a serving`, claim: 'high', nutrient, limit: value * 0.3, pass: 'at-least', with: { energy: 400 }, basis: '100 g' },
    { law: 'codex', clause: `${table}: 7.5 % NRV in 100 ml`, claim: 'source', nutrient, limit: value * 0.075, pass: 'at-least', with: { energy: 400 }, plate: { ...liquid, portionG: { low: 100, value: 100, high: 100 } }, basis: '100 ml' },
  ]),
];

const limits: (Limit & { readonly law: LawId })[] = [...eu, ...euMicro, ...us, ...usMicro, ...codex].flatMap((l) => (l.law === 'eu+gb' ? [{ ...l, law: 'eu' as const }, { ...l, law: 'gb' as const }] : [{ ...l, law: l.law }]));

describe.each(['eu', 'gb', 'us', 'codex'] as const)('the conditions of %s on both sides of the boundary', (law) => {
  it.each(limits.filter((l) => l.law === law).map((l) => [`${l.claim} ${l.nutrient}: ${l.pass} ${Number(l.limit.toPrecision(4))} (${l.basis}; ${l.clause})`, l] as const))('%s', (_name, l) => {
    const at = (amount: number): Standing | 'no such claim' => standing(l.law, l.claim, l.nutrient, { plate: plateWith({ ...l.with, [l.nutrient]: amount }, l.plate) });
    const up = l.limit + step(l.limit);
    const down = l.limit - step(l.limit);
    const lower = l.pass === 'at-least' || l.pass === 'above';
    expect(at(lower ? up : down)).toBe('holds');
    expect(at(l.limit)).toBe(l.pass === 'at-least' || l.pass === 'at-most' ? 'holds' : 'fails');
    expect(at(lower ? down : up)).toBe('fails');
  });
});

describe('conditions that rest on more than one figure', () => {
  const omega = (ala: number, kcal: number, epaDha = 0): Plate => plateWith({ 'alpha-linolenic': ala, 'epa-dha': epaDha, energy: kcal });
  it.each([
    ['0.3 g ALA in 100 g and 100 kcal', 'source', omega(0.3, 100), 'holds'],
    ['0.29 g ALA in 100 g', 'source', omega(0.29, 90), 'fails'],
    ['0.3 g ALA in 100 g but less in 100 kcal', 'source', omega(0.3, 110), 'fails'],
    ['40 mg EPA and DHA in 100 g and 100 kcal', 'source', omega(0, 100, 0.04), 'holds'],
    ['39 mg EPA and DHA', 'source', omega(0, 90, 0.039), 'fails'],
    ['0.6 g ALA', 'high', omega(0.6, 100), 'holds'],
    ['0.59 g ALA', 'high', omega(0.59, 90), 'fails'],
    ['80 mg EPA and DHA', 'high', omega(0, 100, 0.08), 'holds'],
    ['79 mg EPA and DHA', 'high', omega(0, 90, 0.079), 'fails'],
  ] as const)('Reg. 116/2010: %s makes omega-3 %s', (_name, claim, plate, expected) => {
    expect(standing('eu', claim, 'omega-3', { plate })).toBe(expected);
  });

  const fats = (sat: number, mono: number, poly: number, kcal: number): Plate => plateWith({ saturates: sat, monounsaturates: mono, polyunsaturates: poly, energy: kcal });
  it.each([
    ['45 % of fatty acids and above 20 % of energy', 'monounsaturates', fats(3, 4.5, 2.5, 200), 'holds'],
    ['44 % of fatty acids', 'monounsaturates', fats(3.1, 4.4, 2.5, 190), 'fails'],
    ['exactly 20 % of energy', 'monounsaturates', fats(1, 4, 1, 180), 'fails'],
    ['45 % of fatty acids and above 20 % of energy', 'polyunsaturates', fats(3, 2.5, 4.5, 200), 'holds'],
    ['44 % of fatty acids', 'polyunsaturates', fats(3.1, 2.5, 4.4, 190), 'fails'],
    ['exactly 20 % of energy', 'polyunsaturates', fats(1, 1, 4, 180), 'fails'],
    ['70 % unsaturated', 'unsaturated', fats(3, 4, 3, 200), 'holds'],
    ['69 % unsaturated', 'unsaturated', fats(3.1, 4, 2.9, 200), 'fails'],
  ] as const)('Reg. 116/2010: %s (%s)', (_name, nutrient, plate, expected) => {
    expect(standing('eu', 'high', nutrient, { plate })).toBe(expected);
    expect(standing('gb', 'high', nutrient, { plate })).toBe(expected);
  });

  const compare = (nutrient: NutrientId, mine: number, theirs: number, more: Partial<Record<NutrientId, [number, number]>> = {}): { plate: Plate; other: Plate } => {
    const pick = (i: 0 | 1): Partial<Record<NutrientId, number>> => Object.fromEntries(Object.entries(more).map(([id, pair]) => [id, pair[i]]));
    return { plate: plateWith({ ...pick(0), [nutrient]: mine }), other: plateWith({ ...pick(1), [nutrient]: theirs }) };
  };
  it.each([
    ['eu', 'reduced', 'energy', compare('energy', 140, 200), compare('energy', 141, 200), '30 % less'],
    ['eu', 'reduced', 'fat', compare('fat', 7, 10), compare('fat', 7.1, 10), '30 % less'],
    ['eu', 'reduced', 'sodium', compare('sodium', 300, 400), compare('sodium', 301, 400), '25 % less'],
    ['eu', 'reduced', 'sugars', compare('sugars', 7, 10, { energy: [100, 100] }), compare('sugars', 7, 10, { energy: [101, 100] }), '30 % less and energy no higher'],
    ['eu', 'reduced', 'saturates', compare('saturates', 7, 10, { 'trans-fat': [0, 0] }), compare('saturates', 7, 10, { 'trans-fat': [0.1, 0] }), '30 % less and trans fat no higher'],
    ['eu', 'increased', 'fibre', compare('fibre', 3.9, 3, { energy: [100, 100] }), compare('fibre', 3.8, 3, { energy: [100, 100] }), '30 % more and a source'],
    ['eu', 'increased', 'protein', compare('protein', 13, 10, { energy: [100, 100] }), compare('protein', 12.9, 10, { energy: [100, 100] }), '30 % more and a source'],
    ['eu', 'increased', 'iron', compare('iron', 3.4, 2), compare('iron', 3.3, 2), '10 % NRV more and a source'],
    ['us', 'reduced', 'energy', compare('energy', 150, 200), compare('energy', 151, 200), '101.60(b)(4): 25 % less'],
    ['us', 'reduced', 'sugars', compare('sugars', 7.5, 10), compare('sugars', 7.6, 10), '101.60(c)(5): 25 % less'],
    ['us', 'reduced', 'sodium', compare('sodium', 300, 400), compare('sodium', 301, 400), '101.61(b)(6): 25 % less'],
    ['us', 'light', 'sodium', compare('sodium', 200, 400), compare('sodium', 201, 400), '101.56(c)(2): 50 % less'],
    ['us', 'reduced', 'fat', compare('fat', 7.5, 10), compare('fat', 7.6, 10), '101.62(b)(4): 25 % less'],
    ['us', 'reduced', 'saturates', compare('saturates', 7.5, 10), compare('saturates', 7.6, 10), '101.62(c)(4): 25 % less'],
    ['us', 'increased', 'iron', compare('iron', 3.8, 2), compare('iron', 3.7, 2), '101.54(e): 10 % DV more'],
    ['codex', 'reduced', 'energy', compare('energy', 150, 200), compare('energy', 151, 200), '25 % less'],
    ['codex', 'reduced', 'fat', compare('fat', 7.5, 10), compare('fat', 7.6, 10), '25 % less'],
    ['codex', 'reduced', 'sodium', compare('sodium', 300, 400), compare('sodium', 301, 400), '25 % less'],
    ['codex', 'reduced', 'sugars', compare('sugars', 7.5, 10), compare('sugars', 7.6, 10), '25 % less'],
    ['codex', 'increased', 'iron', compare('iron', 3.4, 2), compare('iron', 3.3, 2), '10 % NRV more'],
  ] as [LawId, ClaimKind, NutrientId, { plate: Plate; other: Plate }, { plate: Plate; other: Plate }, string][])('%s %s %s holds at the boundary and fails beyond it', (...[law, claim, nutrient, inside, outside]) => {
    expect(standing(law, claim, nutrient, inside)).toBe('holds');
    expect(standing(law, claim, nutrient, outside)).toBe('fails');
    expect(standing(law, claim, nutrient, { plate: inside.plate })).toBe('unknown');
  });

  it.each(['eu', 'gb', 'us', 'codex'] as const)('%s: no added sugars holds only when it is known that none was added', (law) => {
    expect(standing(law, 'none-added', 'sugars', { plate: plateWith({}, { addedSugars: 'no' }) })).toBe('holds');
    expect(standing(law, 'none-added', 'sugars', { plate: plateWith({}, { addedSugars: 'yes' }) })).toBe('fails');
    expect(standing(law, 'none-added', 'sugars', { plate: plateWith({}) })).toBe('unknown');
  });

  it('21 CFR 101.61(c): no salt added asks only that none was added', () => {
    expect(standing('us', 'none-added', 'sodium', { plate: plateWith({ sodium: 400 }, { addedSalt: 'no' }) })).toBe('holds');
    expect(standing('us', 'none-added', 'sodium', { plate: plateWith({ sodium: 4 }, { addedSalt: 'yes' }) })).toBe('fails');
  });

  it('Annex XIII A.2: the portion counts only in a single-portion pack', () => {
    const big = { portionG: { low: 400, value: 400, high: 400 } };
    expect(standing('eu', 'source', 'iron', { plate: plateWith({ iron: 4 }, big) })).toBe('fails');
    expect(standing('eu', 'source', 'iron', { plate: plateWith({ iron: 4 }, { ...big, singlePortionPack: true }) })).toBe('holds');
    expect(standing('eu', 'source', 'iron', { plate: plateWith({ iron: 2.09 }, { ...big, singlePortionPack: true }) })).toBe('fails');
    expect(standing('codex', 'source', 'iron', { plate: plateWith({ iron: 4, energy: 900 }, big) })).toBe('holds');
  });

  it('21 CFR 101.54(b)(2) and (c)(2): a main dish is high only through a food of it that is high in its own reference amount', () => {
    const lentils = (iron: number): Plate => plateWith({ iron: 9 }, { usKind: 'main-dish', foods: [{ name: 'lentils', names: ['lentils'], portionG: 50, raccG: 35, gives: { iron } }] });
    expect(standing('us', 'high', 'iron', { plate: lentils((3.6 / 35) * 50) })).toBe('holds');
    expect(standing('us', 'high', 'iron', { plate: lentils((3.59 / 35) * 50) })).toBe('fails');
    expect(standing('us', 'source', 'iron', { plate: lentils((1.8 / 35) * 50) })).toBe('holds');
    expect(standing('us', 'source', 'iron', { plate: lentils((1.79 / 35) * 50) })).toBe('fails');
  });

  it.each([
    [{ saturates: 4.5 }, { saturates: 4.6 }, 'saturates 4.5 g'],
    [{ cholesterol: 94.9 }, { cholesterol: 95 }, 'cholesterol 95 mg'],
  ] as [object, object, string][])('21 CFR 101.62(e)(1) lean: boundary at %s', (inside, outside) => {
    const lean = (change: object): Plate => plateWith({ fat: 5, saturates: 2, cholesterol: 50, ...change }, { meatOrFish: true });
    expect(standing('us', 'lean', 'fat', { plate: lean(inside) })).toBe('holds');
    expect(standing('us', 'lean', 'fat', { plate: lean(outside) })).toBe('fails');
  });

  it.each([
    [{ saturates: 1.99 }, { saturates: 2 }, 'saturates 2 g'],
    [{ cholesterol: 94.9 }, { cholesterol: 95 }, 'cholesterol 95 mg'],
  ] as [object, object, string][])('21 CFR 101.62(e)(4) extra lean: boundary at %s', (inside, outside) => {
    const lean = (change: object): Plate => plateWith({ fat: 3, saturates: 1, cholesterol: 50, ...change }, { meatOrFish: true });
    expect(standing('us', 'extra-lean', 'fat', { plate: lean(inside) })).toBe('holds');
    expect(standing('us', 'extra-lean', 'fat', { plate: lean(outside) })).toBe('fails');
  });

  it('low cholesterol also bounds saturates (21 CFR 101.62(d)(2): 2 g; CXG 23: 1.5 g and 10 % of energy)', () => {
    const plate = (saturates: number, energy = 400): Plate => plateWith({ cholesterol: 5, saturates, energy });
    expect(standing('us', 'low', 'cholesterol', { plate: plate(2) })).toBe('holds');
    expect(standing('us', 'low', 'cholesterol', { plate: plate(2.1) })).toBe('fails');
    expect(standing('codex', 'low', 'cholesterol', { plate: plate(1.5) })).toBe('holds');
    expect(standing('codex', 'low', 'cholesterol', { plate: plate(1.6) })).toBe('fails');
    expect(standing('codex', 'low', 'cholesterol', { plate: plate(1, 89) })).toBe('fails');
  });

  it('saturated fat counts with trans fat in the EU and GB, and unmeasured trans fat leaves it unknown', () => {
    expect(standing('eu', 'low', 'saturates', { plate: plateWith({ saturates: 1, 'trans-fat': 0.5, energy: 400 }) })).toBe('holds');
    expect(standing('eu', 'low', 'saturates', { plate: plateWith({ saturates: 1, 'trans-fat': 0.6, energy: 400 }) })).toBe('fails');
    expect(standing('eu', 'low', 'saturates', { plate: plateWith({ saturates: 1, energy: 400 }) })).toBe('unknown');
  });
});

describe('ranges and missing data', () => {
  it('says "on the estimate" when the lower bound misses the limit', () => {
    expect(standing('eu', 'source', 'iron', { plate: plateWith({ iron: { low: 1.8, value: 2.4, high: 3 } }) })).toBe('estimate');
    expect(standing('eu', 'source', 'iron', { plate: plateWith({ iron: { low: 2.2, value: 2.4, high: 3 } }) })).toBe('holds');
    expect(standing('eu', 'low', 'fat', { plate: plateWith({ fat: { low: 2, value: 2.5, high: 3.5 } }) })).toBe('estimate');
  });
  it('never lets missing data pass for little', () => {
    expect(standing('eu', 'low', 'fat', { plate: plateWith({}) })).toBe('unknown');
    expect(standing('eu', 'low', 'fat', { plate: plateWith({ fat: { state: 'partial', portion: { low: 1, value: 1, high: 1 } } }) })).toBe('unknown');
    expect(standing('eu', 'low', 'fat', { plate: plateWith({ fat: { state: 'partial', portion: { low: 4, value: 4, high: 4 } } }) })).toBe('fails');
    expect(standing('us', 'free', 'sodium', { plate: plateWith({ sodium: { state: 'partial', portion: { low: 0, value: 0, high: 0 } } }) })).toBe('unknown');
  });
  it('takes "at least" as enough where the known part already reaches the limit, and as unknown where it does not', () => {
    expect(standing('eu', 'source', 'iron', { plate: plateWith({ iron: { state: 'partial', portion: { low: 2.2, value: 2.3, high: 2.4 } } }) })).toBe('holds');
    expect(standing('eu', 'source', 'iron', { plate: plateWith({ iron: { state: 'partial', portion: { low: 1, value: 1, high: 1 } } }) })).toBe('unknown');
  });
  it('leaves out rules that do not apply yet on the day asked for', () => {
    const found = nutritionFindings('eu', { plate: plateWith({ 'alpha-linolenic': 1, energy: 50 }), rules: rules.nutrition, references: rules.references, other: null, on: '2009-01-01' });
    expect(found.some((f) => f.nutrient === 'omega-3')).toBe(false);
  });
});

it('holds every rule of the data against at least one boundary above', () => {
  const tested = new Set(limits.map((l) => `${l.law} ${l.claim} ${l.nutrient}`));
  const apart = new Set(['omega-3', 'monounsaturates', 'polyunsaturates', 'unsaturated']);
  const missing = (['eu', 'gb', 'us', 'codex'] as const).flatMap((law) => rules.nutrition
    .filter((r) => r.laws.includes(law) && r.nutrient !== 'subject' && !apart.has(r.nutrient) && !['reduced', 'increased', 'light'].includes(r.claim) && !(r.claim === 'none-added' && (r.nutrient === 'sugars' || law === 'us')))
    .filter((r) => !tested.has(`${law} ${r.claim} ${r.nutrient}`)).map((r) => `${law} ${r.id}`));
  expect(missing).toEqual([]);
});
