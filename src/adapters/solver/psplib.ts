import { AppError } from '../../errors.ts';
import type { PlanActivity, PlanModel, ResourceUse, TimeLag } from '../../core/cooking/index.ts';

/**
 * Reads a single-mode project in the `.sm` format of the PSPLIB (Kolisch & Sprecher 1996).
 * Activities keep the file's order; the last one is the end of the project.
 */
export function readPsplib(text: string, file = 'the project file'): PlanModel {
  const lines = text.split(/\r?\n/);
  const section = (title: RegExp): number => {
    const at = lines.findIndex((line) => title.test(line));
    if (at < 0) throw new AppError('bad-input', { file, what: `no section ${title.source.replaceAll('\\s+', ' ')}` });
    return at;
  };
  const numbers = (at: number): number[] => {
    const words = (lines[at] ?? '').trim().split(/\s+/);
    const read = words.map(Number);
    return words[0] === '' || read.some((n) => !Number.isInteger(n) || n < 0) ? [] : read;
  };
  const block = (from: number): { line: number; row: number[] }[] => {
    const rows: { line: number; row: number[] }[] = [];
    for (let at = from; at < lines.length && !lines[at]!.startsWith('***'); at += 1) {
      const row = numbers(at);
      if (row.length > 0) rows.push({ line: at + 1, row });
    }
    return rows;
  };
  const precedence = block(section(/^PRECEDENCE\s+RELATIONS/i) + 1);
  const requests = block(section(/^REQUESTS\/DURATIONS/i) + 1);
  const capacities = block(section(/^RESOURCEAVAILABILITIES/i) + 1)[0]?.row ?? [];
  const count = precedence.length;
  const fail = (line: number, what: string): never => {
    throw new AppError('bad-input', { file, line, what });
  };
  if (count === 0 || requests.length !== count) fail(1, `${count} jobs in the precedence section, ${requests.length} in the requests section`);
  const activities: PlanActivity[] = [];
  const uses: ResourceUse[] = [];
  const lags: TimeLag[] = [];
  const durations: number[] = [];
  requests.forEach(({ line, row }, i) => {
    const [job, mode, duration, ...demands] = row;
    if (job !== i + 1 || mode !== 1 || duration === undefined || demands.length !== capacities.length) fail(line, 'a job wants number, mode 1, duration and one demand per resource');
    durations.push(duration!);
    demands.forEach((demand, resource) => {
      if (demand > capacities[resource]!) fail(line, `job ${i + 1} asks for ${demand} of resource ${resource + 1}, which has ${capacities[resource]}`);
      if (demand > 0 && duration! > 0) uses.push({ resource, from: i, to: i, demand });
    });
  });
  const horizon = durations.reduce((sum, duration) => sum + duration, 0);
  durations.forEach((duration, i) => activities.push({ id: String(i + 1), duration, earliest: 0, latest: horizon }));
  precedence.forEach(({ line, row }, i) => {
    const [job, modes, successors, ...list] = row;
    if (job !== i + 1 || modes !== 1 || successors !== list.length) fail(line, 'a job wants number, one mode, how many successors, and that many');
    for (const successor of list) {
      if (successor <= 0 || successor > count) fail(line, `there is no job ${successor}`);
      lags.push({ from: i, to: successor - 1, ticks: durations[i]! });
    }
  });
  return { activities, resources: capacities.map((capacity, r) => ({ id: `R${r + 1}`, capacity })), uses, lags, choices: [], limits: [], horizon };
}

/** Best known makespans from a PSPLIB table such as j30opt.sm, keyed "parameter_instance" ("13_1"). */
export function readPsplibOptima(text: string): ReadonlyMap<string, number> {
  const optima = new Map<string, number>();
  for (const line of text.split(/\r?\n/)) {
    const match = /^\s*(\d+)\s+(\d+)\s+(\d+)(\s|$)/.exec(line);
    if (match) optima.set(`${match[1]}_${match[2]}`, Number(match[3]));
  }
  return optima;
}
