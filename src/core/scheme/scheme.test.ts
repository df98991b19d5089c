import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { compileCycle } from '../../../scripts/tables/cycle.ts';
import { knownSources } from '../../../scripts/tables/known-sources.ts';
import { addDays, day } from '../calendar/index.ts';
import { buildCycleModel, drawFutures, nextCycle, type CycleShape, type Future } from '../cycle/index.ts';
import { boundsFor, type LifeStateId } from '../people/index.ts';
import { boundScheme, compareFixed, editScheme, fixedRuleHolds, layScheme, noAdvice, readScheme, ruleHolds, type Scheme, type SchemeRule } from './index.ts';

const tables = compileCycle('data', knownSources('data'));
const demo = tables.schemes.find((s) => s.id === 'demo-four-pots')!;
const cycle = (length: number, ovulationDay: number): CycleShape => ({ length, ovulationDay, bleedDays: 5 });
const held = (scheme: Scheme, shape: CycleShape, d: number): string => scheme.rules.filter((r) => ruleHolds(scheme, r, shape, d)).map((r) => r.id).join(' ');
const start = day('2026-03-01');
const one = (shape: CycleShape): Future[] => [[{ ...shape, start }]];

describe('windows of a scheme', () => {
  it('agree with its fixed days on the textbook cycle', () => {
    for (let d = 1; d <= 28; d += 1) for (const rule of demo.rules) expect([d, rule.id, ruleHolds(demo, rule, cycle(28, 15), d)]).toEqual([d, rule.id, fixedRuleHolds(demo, rule, d)]);
  });
  it('hold day 18 of a 36-day cycle for before ovulation, where fixed days speak of the days before a period', () => {
    expect(held(demo, cycle(36, 23), 18)).toBe('salad-bowl');
    expect(demo.rules.filter((r) => fixedRuleHolds(demo, r, 18)).map((r) => r.id)).toEqual(['oven-dish']);
  });
  it('count back from the next period', () => {
    const rule: SchemeRule = { ...demo.rules[0]!, window: { from: { anchor: 'next-period', day: -7 }, to: { anchor: 'next-period', day: -1 }, stretch: 'fixed' } };
    expect([21, 22, 28].map((d) => ruleHolds(demo, rule, cycle(28, 14), d))).toEqual([false, true, true]);
    expect([28, 29, 35].map((d) => ruleHolds(demo, rule, cycle(35, 21), d))).toEqual([false, true, true]);
  });
  it('stretch in proportion when scaled, and neighbours still meet', () => {
    const part = (from: number, to: number): SchemeRule => ({ ...demo.rules[0]!, id: `${from}`, window: { from: { anchor: 'period-start', day: from }, to: { anchor: 'period-start', day: to }, stretch: 'scaled' } });
    const parts = [part(1, 7), part(8, 14), part(15, 28)];
    fc.assert(fc.property(fc.integer({ min: 21, max: 42 }), (length) => {
      for (let d = 1; d <= length; d += 1) expect(parts.filter((r) => ruleHolds(demo, r, cycle(length, 14), d))).toHaveLength(1);
    }));
    expect(ruleHolds(demo, parts[0]!, cycle(42, 28), 10)).toBe(true);
  });
});

describe('a scheme laid over a forecast', () => {
  const model = buildCycleModel(tables.model);
  const futuresFor = (lengths: readonly number[], elapsed: number) =>
    drawFutures(nextCycle(model, { cycles: lengths.map((length) => ({ length, ovulationDay: null, slack: 0 })), age: null }).posterior, { lastStart: start, running: { elapsed, confirmed: true, signs: null }, until: addDays(start, elapsed + 40), count: 800, seed: 2, bleed: null });

  it('gives a steady woman advice on most days and an irregular one more doubt', () => {
    const doubt = (lengths: readonly number[]): number => layScheme(demo, futuresFor(lengths, 3), { from: addDays(start, 3), to: addDays(start, 40), starts: [start] }).filter((d) => d.verdict === 'uncertain').length;
    expect(doubt([28, 28, 28, 29, 28, 28])).toBeLessThan(doubt([22, 41, 27, 35, 24, 38]));
    expect(doubt([22, 41, 27, 35, 24, 38])).toBeGreaterThan(5);
  });
  it('says a rule only from the chance its author set', () => {
    for (const d of layScheme(demo, futuresFor([30, 27, 33], 3), { from: addDays(start, 3), to: addDays(start, 40), starts: [start] })) {
      for (const said of d.said) expect(said.chance).toBeGreaterThanOrEqual(demo.sayFrom);
      for (const r of d.all) expect(r.chance).toBeLessThanOrEqual(1);
    }
  });
  it('counts the days on which fixed days would say something else', () => {
    expect(compareFixed(demo, one(cycle(28, 15)))!.days.mean).toBe(0);
    const long = compareFixed(demo, one(cycle(36, 23)))!;
    // Days 14 to 21 (salad, not grill or oven) and 22 to 25 (grill, not oven): twelve days, counted by hand.
    expect(long.days.mean).toBe(12);
    expect(long.rules.find((r) => r.ruleId === 'oven-dish')!.fixedOnly).toBe(8);
  });
  it('says nothing when there are no rules', () => {
    const plain = tables.schemes.find((s) => s.id === 'no-phase-rules')!;
    expect(compareFixed(plain, one(cycle(36, 23)))).toBeNull();
    expect(layScheme(plain, one(cycle(36, 23)), { from: start, to: addDays(start, 5), starts: [start] }).every((d) => d.verdict === 'nothing')).toBe(true);
  });
});

describe('bounds on a scheme', () => {
  const hard: Scheme = { ...demo, rules: [{ ...demo.rules[0]!, advice: { ...noAdvice, emphasis: [{ what: 'carbohydrate', direction: 'less' }, { what: 'energy', direction: 'less' }, { what: 'iron', direction: 'more' }], fastingHours: 18, energyKcal: 900, carbohydrateG: 20, proteinG: 20 } }] };
  const bounded = (states: readonly LifeStateId[], age: number | null = 30) => boundScheme(hard, boundsFor(tables.safety, { age, bodyWeightKg: 60, states: states.map((id) => ({ id, from: null, to: null })) }, start));

  it.each<[LifeStateId[], number]>([[['pregnant'], 30], [['breastfeeding'], 30], [['eating-disorder-history'], 30], [['diabetes-medicine'], 30], [['low-energy-signs'], 30], [[], 16]])('leave nothing of it with %j at %d', (states, age) => {
    const { scheme, plain, changes } = bounded(states, age);
    expect(plain).toBe(true);
    expect(scheme.rules).toEqual([]);
    expect(new Set(changes.map((c) => c.what))).toEqual(new Set(['fasting', 'low-energy', 'low-carbohydrate', 'low-protein']));
  });
  it('raise what is under the floors for everybody', () => {
    const { scheme, changes } = bounded([]);
    expect(scheme.rules[0]!.advice).toMatchObject({ energyKcal: 1600, proteinG: 0.83 * 60, fastingHours: 18 });
    expect(changes.map((c) => c.done)).toEqual(['raised-to-floor', 'raised-to-floor']);
  });
  it('hold for any scheme at all', () => {
    const advice = fc.record({ fastingHours: fc.option(fc.integer({ min: 0, max: 72 })), energyKcal: fc.option(fc.integer({ min: 0, max: 3000 })), carbohydrateG: fc.option(fc.integer({ min: 0, max: 300 })), proteinG: fc.option(fc.integer({ min: 0, max: 200 })), emphasis: fc.array(fc.record({ what: fc.constantFrom('energy', 'carbohydrate', 'iron'), direction: fc.constantFrom('more' as const, 'less' as const) })) });
    fc.assert(fc.property(fc.array(advice), fc.constantFrom<LifeStateId>('pregnant', 'breastfeeding', 'eating-disorder-history', 'diabetes-medicine', 'low-energy-signs', 'copper-iud'), (advices, state) => {
      const any: Scheme = { ...demo, rules: advices.map((a, i) => ({ ...demo.rules[0]!, id: `r${i}`, advice: { ...noAdvice, ...a } })) };
      const bounds = boundsFor(tables.safety, { age: 30, bodyWeightKg: 60, states: [{ id: state, from: null, to: null }] }, start);
      const { scheme } = boundScheme(any, bounds);
      for (const { advice: a } of scheme.rules) {
        expect(a.energyKcal ?? 9999).toBeGreaterThanOrEqual(1600);
        expect(a.proteinG ?? 9999).toBeGreaterThanOrEqual(49);
      }
      if (state !== 'copper-iud') expect(scheme.rules).toEqual([]);
    }));
  });
});

describe('writing a scheme', () => {
  it('reads the two that are shipped', () => {
    expect(tables.schemes.map((s) => s.id)).toEqual(['no-phase-rules', 'demo-four-pots']);
    expect(demo.invented).toBe(true);
    for (const rule of demo.rules) expect(rule.source).toBeTruthy();
  });
  it('tells every problem at once, with its place', () => {
    const { scheme, problems } = readScheme({ id: 'x', name: '', rules: [{ id: 'a', title: 'A', window: { from: { anchor: 'moon', day: 1 }, to: { anchor: 'period-start', day: 99 } }, evidence: 'strong', source: 'me', advice: { emphasis: [{ what: 'magic', direction: 'more' }], fast: 3 } }, { id: 'a' }] });
    expect(scheme).toBeNull();
    expect(problems.map((p) => p.at)).toEqual(expect.arrayContaining(['scheme.name', 'rule 1.window.from.anchor', 'rule 1.window.to.day', 'rule 1.evidence', 'rule 1.advice.emphasis[0].what', 'rule 1.advice.fast', 'rule 2.title', 'rule a']));
  });
  it('never throws on any value', () => {
    fc.assert(fc.property(fc.anything(), (value) => {
      expect(readScheme(value).scheme === null || readScheme(value).problems.length === 0).toBe(true);
    }));
  });
  it('edits by putting, moving and removing rules, and refuses an edit that breaks it', () => {
    const moved = editScheme(demo, { kind: 'move-rule', id: 'grill', to: 0 }).scheme!;
    expect(moved.rules.map((r) => r.id)).toEqual(['grill', 'soup-pot', 'salad-bowl', 'oven-dish']);
    expect(editScheme(moved, { kind: 'remove-rule', id: 'grill' }).scheme!.rules).toHaveLength(3);
    expect(editScheme(demo, { kind: 'put-rule', rule: { ...demo.rules[0]!, title: 'Broth' } }).scheme!.rules[0]!.title).toBe('Broth');
    expect(editScheme(demo, { kind: 'set-say-from', sayFrom: 0.2 })).toMatchObject({ scheme: null, problems: [{ code: 'out-of-range' }] });
  });
  it('is the same after being written out and read again', () => {
    expect(readScheme(JSON.parse(JSON.stringify(demo))).scheme).toEqual(demo);
    expect(readScheme(parse(readFileSync('data/parameters/scheme/demo.yaml', 'utf8'))).scheme).toEqual(demo);
  });
});
