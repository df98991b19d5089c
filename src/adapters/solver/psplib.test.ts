import { describe, expect, it } from 'vitest';
import { earliestEnd, minimise, type PlanModel } from '../../core/cooking/index.ts';
import { AppError } from '../../errors.ts';
import { designCells, progen } from '../../../bench/scheduling/progen.ts';
import { readPsplib, readPsplibOptima } from './psplib.ts';

/** A project written out as a `.sm` file. */
function written(model: PlanModel): string {
  const stars = '*'.repeat(72);
  const count = model.activities.length;
  const successors = model.activities.map((_, i) => model.lags.filter((lag) => lag.from === i).map((lag) => lag.to + 1));
  const demands = model.activities.map((_, i) => model.resources.map((_r, r) => model.uses.find((use) => use.from === i && use.resource === r)?.demand ?? 0));
  return [
    stars, 'file with basedata            : drawn.bas', 'initial value random generator: 1', stars,
    'projects                      :  1', `jobs (incl. supersource/sink ):  ${count}`, `horizon                       :  ${model.horizon}`,
    'RESOURCES', `  - renewable                 :  ${model.resources.length}   R`, '  - nonrenewable              :  0   N', '  - doubly constrained        :  0   D', stars,
    'PROJECT INFORMATION:', 'pronr.  #jobs rel.date duedate tardcost  MPM-Time', `    1     ${count - 2}      0       38       26       38`, stars,
    'PRECEDENCE RELATIONS:', 'jobnr.    #modes  #successors   successors',
    ...successors.map((list, i) => `   ${i + 1}        1          ${list.length}          ${list.join('   ')}`), stars,
    'REQUESTS/DURATIONS:', 'jobnr. mode duration  R 1  R 2  R 3  R 4', '-'.repeat(72),
    ...demands.map((row, i) => `  ${i + 1}      1     ${model.activities[i]!.duration}       ${row.join('    ')}`), stars,
    'RESOURCEAVAILABILITIES:', '  R 1  R 2  R 3  R 4', `   ${model.resources.map((resource) => resource.capacity).join('   ')}`, stars, '',
  ].join('\r\n');
}

describe('project files in the .sm format', () => {
  const model = progen(designCells[5]!, 7);

  it('reads back what was written: activities, arcs, demands, capacities, horizon', () => {
    const read = readPsplib(written(model));
    expect(read.activities).toEqual(model.activities);
    expect(read.resources.map((resource) => resource.capacity)).toEqual(model.resources.map((resource) => resource.capacity));
    expect(read.uses).toEqual(model.uses);
    expect(read.horizon).toBe(model.horizon);
    const solve = (project: PlanModel) => minimise(project, earliestEnd(project, project.activities.length - 1), { conflicts: 50_000 });
    expect(solve(read)).toMatchObject({ kind: 'solved', proven: true, value: (solve(model) as { value: number }).value });
  });

  it.each([
    ['no precedence section', (text: string) => text.replace('PRECEDENCE', 'SOMETHING')],
    ['a job without duration', (text: string) => text.replace(/^ {2}5 {6}1 .*$/m, '  5      1')],
    ['a successor that is not there', (text: string) => text.replace(/^ {3}3 {8}1 {10}\d+ .*$/m, '   3        1          1          99')],
    ['a demand above the capacity', (text: string) => text.replace(/^ {2}4 {6}1 .*$/m, '  4      1     5       99    0    0    0')],
    ['fewer requests than jobs', (text: string) => text.replace(/^ {2}32 {6}1 .*$/m, '')],
    ['an empty file', () => ''],
  ])('refuses %s with the place', (_, spoil) => {
    let error: unknown;
    try {
      readPsplib(spoil(written(model)), 'x.sm');
    } catch (thrown) {
      error = thrown;
    }
    expect(error).toBeInstanceOf(AppError);
    expect(error).toMatchObject({ code: 'bad-input', data: { file: 'x.sm' } });
  });

  it('reads a table of best known makespans', () => {
    const table = 'Authors : some\n---\nParameter Instance Makespan CPU-Time\n 1  1  43  0.1\n 1  2  47  0.2\n48 10  54  0\n';
    expect([...readPsplibOptima(table)]).toEqual([['1_1', 43], ['1_2', 47], ['48_10', 54]]);
  });
});
