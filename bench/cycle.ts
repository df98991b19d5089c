import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { buildCycleModel, nextLength, posterior, type CycleParameters } from '../src/core/cycle/index.ts';
import { coverageOf, mean, ovulationTrialsOf, rivals, rowsOf, trialsOf } from './cycle-scores.ts';
import { simulatedWorlds, type Woman } from './cycle-worlds.ts';
import { readWomenCsv } from './cycle-csv.ts';

const parameters = parse(readFileSync('data/parameters/cycle/model.yaml', 'utf8')) as CycleParameters;
const t0 = performance.now();
const model = buildCycleModel(parameters);
console.log(`model built in ${(performance.now() - t0).toFixed(0)} ms`);
const most = 12;

function report(name: string, women: readonly Woman[]): void {
  const trials = trialsOf(model, women, most);
  console.log(`\n== ${name}: ${women.length} women, ${trials.length} forecasts`);
  for (const row of rowsOf(trials, most)) {
    const best = Math.min(...rivals.flatMap((r) => row.rivals[r]?.mae ?? []));
    const bestSpread = Math.min(...rivals.flatMap((r) => row.rivals[r]?.spreadCrps ?? []));
    console.log(`${String(row.history).padStart(3)} n=${String(row.count).padStart(5)}  CRPS ${row.crps.toFixed(3)} (best rival with spread ${bestSpread.toFixed(3)})  MAE ${row.mae.toFixed(3)} vs ${best.toFixed(3)} ${((row.mae / best - 1) * 100).toFixed(1)} %  | ${rivals.map((r) => row.rivals[r]?.mae.toFixed(2) ?? '-').join(' ')}`);
  }
  for (const from of [0, 1, 3]) {
    const c = coverageOf(trials, women, from);
    console.log(`cover h>=${from} ${(c.overall * 100).toFixed(1)}  quarters ${c.quarters.map((q) => (q * 100).toFixed(1)).join(' ')}  width ${c.width.toFixed(2)}`);
  }
  const ov = ovulationTrialsOf(model, women, most);
  if (ov.length) console.log(`ovulation MAE ${mean(ov.map((t) => Math.abs(t.truth - t.model))).toFixed(3)} vs shrunk ${mean(ov.map((t) => Math.abs(t.truth - t.shrunk))).toFixed(3)}  (h=0 ${mean(ov.filter((t) => t.history === 0).map((t) => Math.abs(t.truth - t.model))).toFixed(3)} vs ${mean(ov.filter((t) => t.history === 0).map((t) => Math.abs(t.truth - t.shrunk))).toFixed(3)})`);
}
const file = process.argv[2];
if (file) report(file, readWomenCsv(readFileSync(file, 'utf8')));
for (const world of simulatedWorlds(600)) report(world.name, world.women);
