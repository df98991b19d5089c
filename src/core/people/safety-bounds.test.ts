import { describe, expect, it } from 'vitest';
import { compileCycle } from '../../../scripts/tables/cycle.ts';
import { knownSources } from '../../../scripts/tables/known-sources.ts';
import { day } from '../calendar/index.ts';
import { boundsFor, phaseAnswer, unknownPerson, type LifeStateId, type Person } from './index.ts';

const { safety, lifeStates } = compileCycle('data', knownSources('data'));
const on = day('2026-06-01');
const her = (states: readonly LifeStateId[], age: number | null = 30): Person => ({ ...unknownPerson, age, states: states.map((id) => ({ id, from: null, to: null })) });

describe('safety bounds', () => {
  it.each<LifeStateId>(['pregnant', 'breastfeeding', 'eating-disorder-history', 'diabetes-medicine', 'low-energy-signs'])('forbid fasting, low energy and low carbohydrate with %s', (state) => {
    const bounds = boundsFor(safety, her([state]), on);
    expect([...bounds.forbids].sort()).toEqual(['fasting', 'low-carbohydrate', 'low-energy']);
    expect(bounds.plain).toBe(true);
    expect(bounds.rules[0]!.refer).toBeTruthy();
  });
  it('forbid them under 18, and not at 18', () => {
    expect(boundsFor(safety, her([], 17), on).plain).toBe(true);
    expect(boundsFor(safety, her([], 18), on).forbids.size).toBe(0);
  });
  it('hold only while the state holds', () => {
    const person: Person = { ...unknownPerson, states: [{ id: 'pregnant', from: day('2026-01-01'), to: day('2026-05-31') }] };
    expect(boundsFor(safety, person, day('2026-05-31')).plain).toBe(true);
    expect(boundsFor(safety, person, on).plain).toBe(false);
  });
  it('set a protein floor by body weight, and none when it is not known', () => {
    expect(boundsFor(safety, { ...unknownPerson, bodyWeightKg: 60 }, on).proteinFloorG).toBeCloseTo(49.8, 1);
    expect(boundsFor(safety, unknownPerson, on).proteinFloorG).toBeNull();
  });
});

describe('who has no phases', () => {
  it.each<LifeStateId>(['combined-pill', 'continuous-hormones', 'hormonal-iud', 'pregnant', 'no-periods', 'after-menopause'])('%s: none', (state) => {
    expect(phaseAnswer(lifeStates, her([state]), on)).toMatchObject({ use: 'none', because: [{ id: state }] });
  });
  it('a copper coil changes nothing; breastfeeding and perimenopause want care', () => {
    expect(phaseAnswer(lifeStates, her(['copper-iud']), on).use).toBe('yes');
    expect(phaseAnswer(lifeStates, her(['breastfeeding']), on).use).toBe('with-care');
    expect(phaseAnswer(lifeStates, her(['perimenopause']), on).use).toBe('with-care');
  });
});
