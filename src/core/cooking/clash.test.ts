import { describe, expect, it } from 'vitest';
import { explainClash } from './clash.ts';
import { solvePlan } from './cook-plan.ts';
import type { CookRequest } from './kitchen.ts';
import { dish, half7, order, rules } from './kitchen.fixture.ts';

const budget = { conflicts: 20_000 };
const clashOf = (request: CookRequest) => {
  expect(solvePlan({ request, rules, budget }).kind).toBe('infeasible');
  return explainClash({ request, rules, budget }, budget);
};
const two = (hold: number) => [dish(`A\nhold ${hold} min\nfry a: 10 min, stir, ring`, 'a'), dish(`B\nhold ${hold} min\nfry b: 10 min, stir, ring`, 'b')];

describe('wishes that clash', () => {
  it('names hands and holding as the pair that clash, and what would help', () => {
    const clash = clashOf(order(two(5)));
    expect(clash.sure).toBe(true);
    expect(clash.limits).toContainEqual({ kind: 'capacity', of: 'cooks', have: 1 });
    expect(clash.limits.filter((limit) => limit.kind === 'hold')).toHaveLength(2);
    expect(clash.remedies).toContainEqual({ kind: 'more', of: 'cooks', need: 2 });
    expect(clash.remedies.filter((remedy) => remedy.kind === 'wait-longer').map((remedy) => remedy.kind === 'wait-longer' && remedy.minutes)).toEqual([10, 10]);
  });

  it('proposes only changes that really make a plan possible', () => {
    const request = order(two(5));
    for (const remedy of clashOf(request).remedies) {
      if (remedy.kind === 'more') expect(solvePlan({ request: { ...request, kitchen: { ...request.kitchen, [remedy.of]: remedy.need } }, rules, budget }).kind).toBe('solved');
    }
  });

  it('says so when there is no ring at all', () => {
    expect(clashOf(order([dish('A\nboil: 5 min, ring', 'a')], { kitchen: { rings: 0 } })).limits).toEqual([{ kind: 'capacity', of: 'rings', have: 0 }]);
  });

  it('gives the earliest serving when there is too little time', () => {
    const clash = clashOf(order([dish('A\nboil: 50 min, ring', 'a')], { when: { kind: 'serve-at', minute: half7, notBefore: half7 - 30 } }));
    expect(clash.limits).toEqual([{ kind: 'not-before', minute: half7 - 30 }]);
    expect(clash.remedies).toEqual([{ kind: 'serve-later', minute: half7 + 20 }]);
  });

  it('never proposes to stretch a limit of food safety', () => {
    const [a, b] = two(5);
    const clash = clashOf(order([{ ...a!, holdReason: 'safety' }, { ...b!, holdReason: 'safety' }]));
    expect(clash.remedies.some((remedy) => remedy.kind === 'wait-longer')).toBe(false);
  });
});
