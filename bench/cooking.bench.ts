import { join } from 'node:path';
import { bench, describe } from 'vitest';
import { compileCooking } from '../scripts/tables/cooking.ts';
import { earliestEnd, minimise, simulate, solvePlan, withSlack } from '../src/core/cooking/index.ts';
import { inventedDinner } from './scheduling/kitchens.ts';
import { designCells, progen } from './scheduling/progen.ts';

const { rules, usualKitchen } = compileCooking(join(import.meta.dirname, '..', 'data'));
const base = { rules, kitchen: usualKitchen };
const dinner = inventedDinner(3, 40, base);
const solved = solvePlan({ request: dinner, rules, budget: { conflicts: 20_000 } });
const options = { iterations: 5, time: 500, warmupIterations: 1 };

describe('cook plan', () => {
  bench('three dishes of forty steps, to the end of the search or 20 000 conflicts', () => void solvePlan({ request: dinner, rules, budget: { conflicts: 20_000 } }), options);
  bench('slack for such a plan', () => void (solved.kind === 'solved' && withSlack(solved.plan, rules, { seed: 1, runs: 200 })), options);
  bench('a thousand simulated evenings', () => void (solved.kind === 'solved' && simulate(solved.plan, rules, { seed: 1, runs: 1000 })), options);
});

describe('drawn projects of thirty activities', () => {
  for (const cell of designCells.filter(({ complexity }) => complexity === 1.8)) {
    const model = progen(cell, 42);
    bench(`RF ${cell.factor} RS ${cell.strength}`, () => void minimise(model, earliestEnd(model, model.activities.length - 1), { conflicts: 10_000 }), options);
  }
});
