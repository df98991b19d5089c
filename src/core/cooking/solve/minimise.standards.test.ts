import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { checkPlan } from './check-plan.ts';
import { minimise } from './minimise.ts';
import { earliestEnd, type PlanModel, type PlanObjective } from './plan-model.ts';

interface JobShop {
  name: string;
  optimum: number;
  jobs: string[];
}
const shops = parse(readFileSync(join(import.meta.dirname, '../../../../tests/cases/scheduling/job-shops.yaml'), 'utf8')) as JobShop[];

function jobShop(rows: readonly (readonly { machine: number; duration: number }[])[]): { model: PlanModel; end: number } {
  const flat = rows.flatMap((row, job) => row.map((operation, place) => ({ ...operation, job, place })));
  const horizon = flat.reduce((sum, operation) => sum + operation.duration, 0);
  const end = flat.length;
  const machines = Math.max(...flat.map((operation) => operation.machine)) + 1;
  const model: PlanModel = {
    activities: [...flat.map(({ duration, job, place }) => ({ id: `${job}.${place}`, duration, earliest: 0, latest: horizon })), { id: 'end', duration: 0, earliest: 0, latest: horizon }],
    resources: Array.from({ length: machines }, (_, m) => ({ id: `machine ${m}`, capacity: 1 })),
    uses: flat.map(({ machine }, i) => ({ resource: machine, from: i, to: i, demand: 1 })),
    lags: flat.map((operation, i) => ({ from: i, to: flat[i + 1]?.job === operation.job ? i + 1 : end, ticks: operation.duration })),
    choices: [],
    limits: [],
    horizon,
  };
  return { model, end };
}

describe('published scheduling instances', () => {
  it.each(shops)('proves the published optimum of $name: $optimum', { timeout: 120_000 }, ({ optimum, jobs }) => {
    const rows = jobs.map((row) => {
      const figures = row.trim().split(/\s+/).map(Number);
      return figures.flatMap((machine, i) => (i % 2 === 0 ? [{ machine, duration: figures[i + 1]! }] : []));
    });
    const { model, end } = jobShop(rows);
    const result = minimise(model, earliestEnd(model, end), { conflicts: 400_000 });
    expect(result).toMatchObject({ kind: 'solved', value: optimum, bound: optimum, proven: true });
    if (result.kind === 'solved') expect(checkPlan(model, result.starts)).toEqual([]);
  });
});

describe('published theorems', () => {
  // Johnson SM (1954), Optimal two- and three-stage production schedules with setup times included, Naval Research Logistics Quarterly 1:61-68.
  it('meets the makespan of Johnson’s rule for two machines in a row', { timeout: 60_000 }, () => {
    const pair = fc.record({ a: fc.integer({ min: 1, max: 9 }), b: fc.integer({ min: 1, max: 9 }) });
    fc.assert(
      fc.property(fc.array(pair, { minLength: 2, maxLength: 7 }), (jobs) => {
        const first = jobs.filter((job) => job.a < job.b).sort((x, y) => x.a - y.a);
        const last = jobs.filter((job) => job.a >= job.b).sort((x, y) => y.b - x.b);
        let one = 0;
        let two = 0;
        for (const job of [...first, ...last]) {
          one += job.a;
          two = Math.max(one, two) + job.b;
        }
        const { model, end } = jobShop(jobs.map((job) => [{ machine: 0, duration: job.a }, { machine: 1, duration: job.b }]));
        expect(minimise(model, earliestEnd(model, end), { conflicts: 50_000 })).toMatchObject({ kind: 'solved', value: two, proven: true });
      }),
      { numRuns: 40 },
    );
  });

  // Smith WE (1956), Various optimizers for single-stage production, Naval Research Logistics Quarterly 3:59-66.
  it('meets the weighted sum of ends of Smith’s ratio rule on one machine', { timeout: 60_000 }, () => {
    const job = fc.record({ duration: fc.integer({ min: 1, max: 6 }), weight: fc.integer({ min: 1, max: 5 }) });
    fc.assert(
      fc.property(fc.array(job, { minLength: 2, maxLength: 6 }), (jobs) => {
        let at = 0;
        let best = 0;
        for (const { duration, weight } of [...jobs].sort((x, y) => x.duration / x.weight - y.duration / y.weight)) {
          at += duration;
          best += weight * at;
        }
        const horizon = at;
        const model: PlanModel = {
          activities: jobs.map(({ duration }, i) => ({ id: `${i}`, duration, earliest: 0, latest: horizon })),
          resources: [{ id: 'machine', capacity: 1 }],
          uses: jobs.map((_, i) => ({ resource: 0, from: i, to: i, demand: 1 })),
          lags: [],
          choices: [],
          limits: [],
          horizon,
        };
        const objective: PlanObjective = { terms: jobs.map(({ weight }, activity) => ({ activity, weight })), constant: jobs.reduce((sum, { weight, duration }) => sum + weight * duration, 0) };
        expect(minimise(model, objective, { conflicts: 100_000 })).toMatchObject({ kind: 'solved', value: best, proven: true });
      }),
      { numRuns: 40 },
    );
  });
});
