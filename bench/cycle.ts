import { readFileSync } from 'node:fs';
import { compileCycleModel } from '../scripts/tables/cycle.ts';
import { knownSources } from '../scripts/tables/known-sources.ts';
import { buildCycleModel, nextCycle, nextOvulationDay, type CycleModel } from '../src/core/cycle/index.ts';
import { readWomenCsv } from './cycle-csv.ts';
import { coverageOf, mean, ovulationTrialsOf, rivals, rowsOf, trialsOf } from './cycle-scores.ts';
import { simulatedWorlds, type Woman } from './cycle-worlds.ts';

/*
 * Forecasts against simple rivals, always leaving the future out: each forecast sees only the
 * cycles before it. Rules of the count:
 * - history 0 to 12 is how many of her newest recorded cycles before the forecast are seen: every
 *   cycle is forecast from each number that there is, so that all histories have many forecasts;
 *   the range and the ovulation day are scored on forecasts that saw all she had, up to 12;
 * - the truth is the true length of the next cycle; a start left out of the record joins two
 *   cycles in what the model and the rivals see;
 * - rivals take the population mean and the ratio of variances from the very data scored, which
 *   the model does not; a rival that names one day has its MAE as its CRPS; "with spread" gives
 *   it besides a normal spread whose width is fitted to its own errors at that history length;
 * - the 80 % range has ends inside days: a day at the boundary counts in part (its cell of one
 *   day spread evenly), width is high − low;
 * - quarters are of women (3 cycles or more) by the deviation of their own true lengths;
 *   "ordinary women" are the three steadier quarters.
 */
const most = 12;
/** Under this many forecasts a history length shows nothing but luck: printed, not judged. */
const fewest = 30;
const percent = (x: number): string => `${(100 * x).toFixed(1)} %`;
let failures = 0;
const verdict = (good: boolean): string => {
  if (!good) failures += 1;
  return good ? 'holds' : 'FAILS';
};

function report(model: CycleModel, name: string, women: readonly Woman[], plainWomen: boolean): void {
  const trials = trialsOf(model, women, most);
  console.log(`\n${name}\n  ${women.length} women, ${trials.length} forecasts`);
  console.log(`  history     n |  CRPS  best rival (with spread) |   MAE  best rival | MAE of ${rivals.join(', ')}`);
  const rows = rowsOf(trials, most);
  for (const row of rows) {
    const best = Math.min(...rivals.flatMap((r) => row.rivals[r]?.mae ?? []));
    const spread = Math.min(...rivals.flatMap((r) => row.rivals[r]?.spreadCrps ?? []));
    console.log(`  ${String(row.history).padStart(7)} ${String(row.count).padStart(5)} | ${row.crps.toFixed(3)}     ${best.toFixed(3)} (${spread.toFixed(3)})       | ${row.mae.toFixed(3)}  ${best.toFixed(3)} ${((row.mae / best - 1) * 100).toFixed(1).padStart(5)} % | ${rivals.map((r) => (row.rivals[r] ? row.rivals[r].mae.toFixed(2) : '  - ')).join(' ')}`);
  }
  const least = (row: (typeof rows)[number], of: 'mae' | 'spreadCrps'): number => Math.min(...rivals.flatMap((r) => row.rivals[r]?.[of] ?? []));
  const judged = rows.filter((r) => r.count >= fewest);
  if (judged.length === 0) {
    console.log(`  Too few forecasts to judge (under ${fewest} at every history).`);
    return;
  }
  console.log(`  CRPS best at every history: ${verdict(judged.every((r) => r.crps < least(r, 'mae')))}; against rivals with a fitted spread best at ${judged.filter((r) => r.crps <= least(r, 'spreadCrps')).length} of ${judged.length}, worst ${((Math.max(...judged.map((r) => r.crps / least(r, 'spreadCrps'))) - 1) * 100).toFixed(1)} %`);
  console.log(`  MAE within 2 % of the best at every history: ${verdict(judged.every((r) => r.mae <= 1.02 * least(r, 'mae')))} (worst ${((Math.max(...judged.map((r) => r.mae / least(r, 'mae'))) - 1) * 100).toFixed(1)} %)`);
  for (const from of [0, 1, 3]) {
    const c = coverageOf(trials, women, from);
    const good = from > 0 || (c.overall >= 0.77 && c.overall <= 0.83 && c.quarters.every((q) => q >= 0.72 && q <= 0.88));
    console.log(`  80 % range, history ${from} and more: holds ${percent(c.overall)}; by quarter ${c.quarters.map(percent).join(', ')}; mean width ${c.width.toFixed(2)} d, ordinary women ${c.ordinaryWidth.toFixed(2)} d${from === 0 ? `  coverage: ${verdict(good)}` : ''}`);
    if (from === 0 && plainWomen) console.log(`  mean width at most 6.5 d on ordinary women: ${verdict(c.ordinaryWidth <= 6.5)}`);
  }
  const ovulations = ovulationTrialsOf(model, women, most);
  if (ovulations.length > 0) {
    const ours = mean(ovulations.map((t) => Math.abs(t.truth - t.model)));
    const shrunk = mean(ovulations.map((t) => Math.abs(t.truth - t.shrunk)));
    console.log(`  ovulation day, ${ovulations.length} forecasts: MAE ${ours.toFixed(3)} against ${shrunk.toFixed(3)} for her shrunk past mean: ${verdict(ours <= shrunk)}`);
  }
}

function speed(model: CycleModel, women: readonly Woman[]): void {
  const run = (): void => {
    for (const woman of women) {
      const next = nextCycle(model, { cycles: woman.lengths.map((length) => ({ length, ovulationDay: null, slack: 0 })), age: null });
      nextOvulationDay(next.posterior);
    }
  };
  run();
  // Processor time of this process: other work on the machine does not count.
  const start = process.cpuUsage();
  const clock = performance.now();
  for (let i = 0; i < 5; i += 1) run();
  const used = process.cpuUsage(start);
  const rate = (5 * women.length) / ((used.user + used.system) / 1e6);
  console.log(`\nspeed: ${rate.toFixed(0)} women a second of processor time, ${((5 * women.length) / ((performance.now() - clock) / 1000)).toFixed(0)} by the clock (${mean(women.map((w) => w.lengths.length)).toFixed(1)} cycles each; next start, range, ovulation day)  ${verdict(rate >= 2000)}`);
}

const model = buildCycleModel(compileCycleModel('data', knownSources('data')));
const file = process.argv[2];
if (file !== undefined) report(model, file, readWomenCsv(readFileSync(file, 'utf8')), true);
const worlds = simulatedWorlds(400);
for (const world of worlds) report(model, `world "${world.name}": ${world.about}`, world.women, world.name === 'ordinary');
speed(model, worlds[0]!.women);
console.log(failures === 0 ? '\nEvery line holds.' : `\n${failures} line(s) fail.`);
