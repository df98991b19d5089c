import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { checkPlan, earliestEnd, minimise, type PlanModel } from '../src/core/cooking/index.ts';
import { readPsplib, readPsplibOptima } from '../src/adapters/solver/psplib.ts';
import { designCells, progen } from './scheduling/progen.ts';

/**
 * npx tsx bench/psplib.ts FOLDER [OPTIMA] [--seconds 2]   runs every .sm file of a folder
 * npx tsx bench/psplib.ts --generate 2 [--seconds 2]      runs 2 drawn projects in each of the 48 cells of the j30 design
 */
const words = process.argv.slice(2);
const option = (name: string, otherwise: number): number => {
  const at = words.indexOf(name);
  return at < 0 ? otherwise : Number(words.splice(at, 2)[1]);
};
const seconds = option('--seconds', 2);
const generate = option('--generate', 0);
const firstSeed = option('--seed', 1);
const [folder, optimaFile] = words;

interface Instance {
  readonly name: string;
  readonly key: string;
  readonly model: PlanModel;
}
const instances: Instance[] = [];
if (generate > 0) {
  designCells.forEach((cell, c) => {
    for (let i = 0; i < generate; i += 1) {
      const name = `NC ${cell.complexity} RF ${cell.factor} RS ${cell.strength} #${i + 1}`;
      instances.push({ name, key: name, model: progen(cell, (firstSeed * 1000 + c) * 100 + i) });
    }
  });
} else if (folder) {
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.sm')).sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))) {
    const key = /(\d+_\d+)\.sm$/.exec(file)?.[1] ?? basename(file, '.sm');
    instances.push({ name: file, key, model: readPsplib(readFileSync(join(folder, file), 'utf8'), file) });
  }
} else {
  console.error('Say which folder holds the .sm files, or --generate N.');
  process.exit(2);
}
const optima = optimaFile ? readPsplibOptima(readFileSync(optimaFile, 'utf8')) : new Map<string, number>();

let proven = 0;
let worst = 0;
let wrong = 0;
let total = 0;
for (const { name, key, model } of instances) {
  const begin = performance.now();
  const result = minimise(model, earliestEnd(model, model.activities.length - 1), { conflicts: Infinity, stop: () => performance.now() - begin > seconds * 1000 });
  const spent = (performance.now() - begin) / 1000;
  total += spent;
  if (result.kind !== 'solved') {
    console.log(`${name}\t${result.kind}\t${spent.toFixed(3)} s`);
    wrong += 1;
    continue;
  }
  const breaches = checkPlan(model, result.starts).length;
  const known = optima.get(key);
  if (breaches > 0 || (known !== undefined && result.proven && known !== result.value)) wrong += 1;
  if (result.proven) proven += 1;
  const reference = known ?? result.bound;
  worst = Math.max(worst, (result.value - reference) / reference);
  console.log(`${name}\t${result.value}\t${result.proven ? 'proven' : `bound ${result.bound}`}\t${spent.toFixed(3)} s\t${result.conflicts} conflicts${known === undefined ? '' : `\tknown ${known}`}${breaches > 0 ? '\tBROKEN' : ''}`);
}
console.log(`${proven} of ${instances.length} proven within ${seconds} s (${((100 * proven) / instances.length).toFixed(1)} %); worst ${(100 * worst).toFixed(2)} % above ${optima.size > 0 ? 'best known' : 'the bound'}; ${wrong} wrong; ${total.toFixed(1)} s in all`);
