import { join } from 'node:path';
import { checkPlan, solvePlan } from '../src/core/cooking/index.ts';
import { compileCooking } from '../scripts/tables/cooking.ts';
import { inventedDinner } from './scheduling/kitchens.ts';

/** npx tsx bench/kitchens.ts [COUNT] [STEPS]: invented dinners of three dishes, one second each; how many are proven, and the gaps of the rest. */
const count = Number(process.argv[2] ?? 40);
const steps = Number(process.argv[3] ?? 40);
const { rules, usualKitchen } = compileCooking(join(import.meta.dirname, '..', 'data'));
let proven = 0;
let impossible = 0;
let within = 0;
let undecided = 0;
const times: number[] = [];
for (let seed = 1; seed <= count; seed += 1) {
  const request = inventedDinner(seed, steps, { rules, kitchen: usualKitchen });
  const begin = performance.now();
  const outcome = solvePlan({ request, rules, budget: { conflicts: Infinity, stop: () => performance.now() - begin > 1000 } });
  const spent = performance.now() - begin;
  times.push(spent);
  if (outcome.kind === 'infeasible') impossible += 1;
  if (outcome.kind === 'unknown') undecided += 1;
  if (outcome.kind !== 'solved') {
    console.log(seed, outcome.kind, `${spent.toFixed(0)} ms`);
    continue;
  }
  const { stages, kitchen, starts } = outcome.plan;
  const breaches = checkPlan(kitchen.model, starts);
  const all = stages.every((stage) => stage.proven);
  const gap = Math.max(...stages.map((stage) => (stage.proven ? 0 : (stage.value - stage.bound) / Math.max(1, stage.value))));
  if (all) proven += 1;
  else if (gap <= 0.03) within += 1;
  console.log(seed, stages.map((stage) => `${stage.goal} ${stage.value}${stage.proven ? '' : ` (bound ${stage.bound})`}`).join(', '), `${spent.toFixed(0)} ms`, breaches.length > 0 ? 'BROKEN' : '');
}
times.sort((a, b) => a - b);
console.log(`${count} dinners of ${steps} steps: ${proven} proven best, ${within} more with a gap of at most 3 %, ${impossible} proven impossible, ${undecided} undecided; median ${times[Math.floor(count / 2)]!.toFixed(0)} ms, slowest ${times.at(-1)!.toFixed(0)} ms`);
