import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlan } from './solve/check-plan.ts';
import { cookPlan, solvePlan, type SolvedPlan } from './cook-plan.ts';
import type { CookRequest, KitchenDish, KitchenStep } from './kitchen.ts';
import { barley, dish, fish, half7, order, roast, rules } from './kitchen.fixture.ts';
import { simulate, withSlack } from './robustness.ts';
import { impossible } from './walk-through.fixture.ts';

const budget = { conflicts: 20_000 };

function solved(request: CookRequest, direction: 'backward' | 'forward' = 'backward'): SolvedPlan {
  const outcome = solvePlan({ request, rules, budget }, direction);
  if (outcome.kind !== 'solved') throw new Error(outcome.kind);
  return outcome.plan;
}

const stepText = fc
  .record({
    minutes: fc.integer({ min: 1, max: 25 }),
    how: fc.constantFrom('hands', 'hands, may pause', 'stir, ring', 'ring, look every 4 min', 'oven 180, look every 10 min', 'oven 200, alone', 'alone', 'hands, board', 'ring, medium pan, look every 5 min'),
    within: fc.constantFrom('', ', within 10 min', ', within 3 min'),
    free: fc.boolean(),
  })
  .map(({ minutes, how, within, free }, ) => `step: ${minutes} min, ${how}${free ? ', any time' : within}`);
const dishText = fc.array(stepText, { minLength: 1, maxLength: 5 }).map((lines) => `Dish\nhold 20 min\n${lines.map((line, i) => `do ${i} ${line}`).join('\n')}`);
const requests = fc.record({ dishes: fc.array(dishText, { minLength: 1, maxLength: 3 }), rings: fc.integer({ min: 1, max: 3 }), cooks: fc.integer({ min: 1, max: 2 }) }).map(({ dishes, rings, cooks }) => order(dishes.map((text, i) => dish(text, `d${i + 1}`)), { kitchen: { rings, cooks } }));

describe('the cook plan', () => {
  it('never has anything impossible in any minute, whatever the dishes', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(requests, (request) => {
        const outcome = solvePlan({ request, rules, budget: { conflicts: 3000 } });
        if (outcome.kind !== 'solved') return;
        expect(checkPlan(outcome.plan.kitchen.model, outcome.plan.starts)).toEqual([]);
        expect(impossible(cookPlan(outcome.plan, rules), request)).toEqual([]);
      }),
      { numRuns: 120 },
    );
  });

  it('is still possible in every minute after slack has been placed', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(requests, (request) => {
        const spread = { ...request, dishes: request.dishes.map((one): KitchenDish => ({ ...one, steps: one.steps.map((step): KitchenStep => ({ ...step, minutes: { ...step.minutes, low: step.minutes.value * 0.8, high: step.minutes.value * 1.4 } })) })) };
        const outcome = solvePlan({ request: spread, rules, budget: { conflicts: 2000 } });
        if (outcome.kind !== 'solved') return;
        const slack = withSlack(outcome.plan, rules, { seed: 3, runs: 40 });
        expect(impossible(cookPlan(slack, rules), spread)).toEqual([]);
        expect(simulate(slack, rules, { seed: 3, runs: 40 }).onTime).toBeGreaterThanOrEqual(simulate(outcome.plan, rules, { seed: 3, runs: 40 }).onTime);
      }),
      { numRuns: 25 },
    );
  });

  it('takes as long forwards from now as backwards from the table', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(requests, (request) => {
        const backward = solvePlan({ request, rules, budget });
        if (backward.kind !== 'solved' || !backward.plan.stages.every((stage) => stage.proven)) return;
        const plan = cookPlan(backward.plan, rules);
        const fromNow = cookPlan(solved({ ...request, when: { kind: 'start-now', minute: plan.begin } }), rules);
        expect(fromNow.end).toBe(half7);
        expect(fromNow.begin).toBe(plan.begin);
        // Forwards with the serving time free: the table cannot be reached earlier than the backward plan's own start allows.
        const forward = solved({ ...request, when: { kind: 'serve-at', minute: half7, notBefore: plan.begin } }, 'forward');
        expect(forward.stages[0]).toMatchObject({ goal: 'lateness', value: 0 });
        expect(forward.stages.slice(1).map((stage) => stage.value)).toEqual(backward.plan.stages.map((stage) => stage.value));
      }),
      { numRuns: 40 },
    );
  });

  it('puts the fish last and has everything ready together', () => {
    const request = order([dish(roast, 'a'), dish(barley, 'b'), dish(fish, 'c')], { kitchen: { rings: 3 } });
    const plan = cookPlan(solved(request), rules);
    expect(plan.proven).toBe(true);
    expect(impossible(plan, request)).toEqual([]);
    const poach = plan.steps.find((step) => step.step.id === 'c/2')!;
    expect(half7 - poach.end).toBeLessThanOrEqual(10);
    expect(plan.oven).toEqual([{ minute: expect.any(Number) as number, celsius: 200, hotAt: expect.any(Number) as number }]);
    expect(plan.oven[0]!.hotAt).toBeLessThanOrEqual(plan.steps.find((step) => step.step.id === 'a/2')!.start);
  });

  it('shares the oven at a temperature between, with the times adjusted', () => {
    const request = order([dish('A\nbake it: 50 min, oven 180, alone', 'a'), dish('B\nroast it: 40 min, oven 200, alone', 'b')]);
    const plan = cookPlan(solved(request), rules);
    expect(plan.steps.map((step) => [step.step.id, step.ovenCelsius, step.end - step.start])).toEqual([['a/1', 190, 46], ['b/1', 190, 43]]);
    expect(plan.end - plan.begin).toBe(46 + 15);
  });

  it('does not share when one dish wants its own temperature and the other is too far off', () => {
    const request = order([dish('A\nhold 60 min\nbake it: 30 min, oven 160 exactly, alone', 'a'), dish('B\nhold 60 min\nroast it: 20 min, oven 200, alone', 'b')]);
    const plan = cookPlan(solved(request), rules);
    const [one, two] = plan.steps;
    expect(two!.start).toBeGreaterThanOrEqual(one!.end);
    expect(plan.oven).toHaveLength(2);
    expect(impossible(plan, request)).toEqual([]);
  });

  it('finds the least total time for one cook with two rings', () => {
    const request = order([dish('A\nhold 60 min\nstir a: 10 min, stir, ring', 'a'), dish('B\nhold 60 min\nsimmer b: 20 min, ring, alone', 'b'), dish('C\nhold 60 min\nsimmer c: 20 min, ring, alone', 'c')], { kitchen: { rings: 2 }, when: { kind: 'shortest', minute: 1000 } });
    const plan = cookPlan(solved(request), rules);
    expect([plan.begin, plan.end]).toEqual([1000, 1030]);
  });

  it('serves later dishes later', () => {
    const request = order([dish('Main\ncook: 10 min, hands', 'a'), dish('Pudding\nserve 40 min later\nwhip: 5 min, hands', 'b')]);
    const plan = cookPlan(solved(request), rules);
    expect(plan.servings.map((serving) => serving.minute)).toEqual([half7, half7 + 40]);
    expect(plan.steps.map((step) => step.end)).toEqual([half7, half7 + 40]);
  });

  it('puts soaking on the day before, outside the plan of the day', () => {
    const plan = cookPlan(solved(order([dish('Beans\nsoak the beans: 5 min, hands, ahead 8-12 h\nboil the beans: 60 min, ring, alone')])), rules);
    expect(plan.steps.map((step) => step.step.id)).toEqual(['d1/2']);
    const boil = half7 - 60;
    expect(plan.ahead).toMatchObject([{ earliest: boil - 12 * 60 - 5, latest: boil - 8 * 60 - 5 }]);
  });

  it('gives the same plan and the same chances for the same seed', () => {
    const request = order([dish(roast, 'a'), dish(barley, 'b')]);
    const [one, two] = [solved(request), solved(request)];
    expect(one.starts).toEqual(two.starts);
    expect(simulate(one, rules, { seed: 5, runs: 50 })).toEqual(simulate(two, rules, { seed: 5, runs: 50 }));
    expect(simulate(one, rules, { seed: 6, runs: 50 }).steps).not.toEqual(simulate(one, rules, { seed: 5, runs: 50 }).steps);
  });

  it('raises the chance of being on time to the target where the limits leave room', () => {
    const bare = solved(order([dish(roast, 'a'), dish(barley, 'b')]));
    const slack = withSlack(bare, rules, { seed: 1, runs: 300 });
    const [before, after] = [bare, slack].map((plan) => simulate(plan, rules, { seed: 99, runs: 2000 }).onTime);
    expect(before).toBeLessThan(0.6);
    expect(after).toBeGreaterThan(0.85);
  });
});
