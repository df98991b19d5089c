import { Command, InvalidArgumentError } from 'commander';
import type { ScaleReport } from '../app/change-report.ts';
import type { Pan, ScaleAim } from '../core/dish/index.ts';
import type { NutrientId } from '../core/foods/index.ts';
import { AppError } from '../errors.ts';
import { dishNamed, lineWith, nutrientAmount, withDesk, type ChangeDeps } from './change-deps.ts';
import { positive } from './positive-number.ts';
import { pad, paint, wrap, type Screen } from './screen.ts';

interface ScaleOptions {
  by?: number;
  portions?: number;
  atHand?: string;
  reach?: { id: NutrientId; amount: number }[];
  fromPan?: Pan;
  toPan?: Pan;
  text?: boolean;
  json?: boolean;
}

/** "round 20", "round 20x5", "18x18", "30x20x6": centimetres across, or length × width, with the depth last where it is given. */
export function readPan(text: string): Pan {
  const numbers = [...text.matchAll(/\d+(?:\.\d+)?/g)].map((m) => Number(m[0]));
  const [a, b, c] = numbers;
  if (a !== undefined && numbers.length <= 3) {
    if (/round/i.test(text) && numbers.length <= 2) return { shape: 'round', acrossCm: a, depthCm: b ?? null };
    if (/square/i.test(text) && numbers.length <= 2) return { shape: 'square', sideCm: a, depthCm: b ?? null };
    if (b !== undefined && !/round|square/i.test(text)) return { shape: 'oblong', lengthCm: a, widthCm: b, depthCm: c ?? null };
  }
  throw new InvalidArgumentError('Write a pan as “round 20”, “square 18x5” or “30x20x6” in centimetres, the depth last.');
}

function view(report: ScaleReport, screen: Screen): string {
  const out = [...wrap(report.words, screen.width), ''];
  const width = Math.min(46, Math.max(12, ...report.lines.map((l) => l.before.length)));
  for (const line of report.lines) {
    out.push(`  ${pad(line.before, width)}  ${line.state === 'kept' ? paint('as it is', 'dim', screen) : line.after}`);
    if (line.words !== null) out.push(paint(`  ${' '.repeat(width)}  ${line.words}`, 'dim', screen));
  }
  if (report.times.length > 0) out.push('', paint('Times and pans', 'bold', screen), ...report.times.flatMap((t) => wrap(`• ${t}`, screen.width - 2).map((p, i) => (i === 0 ? `  ${p}` : `    ${p}`))));
  return `${out.join('\n')}\n`;
}

/** `truepot scale DISH`: the recipe for another number of portions, another pan, what is at hand, or a nutrient target. */
export function scaleCommand(deps: ChangeDeps): Command {
  return new Command('scale')
    .description('Write a recipe for another size: portions, pan, what you have, or a nutrient target')
    .argument('<dish>', 'a recipe file, - for standard input, or the name of a saved dish')
    .option('--portions <n>', 'for so many portions', positive)
    .option('--by <factor>', 'times this, for example 1.5', positive)
    .option('--at-hand <words=grams>', 'to what you have of one line, as bought, for example kale=300')
    .option('--reach <nutrient=amount>', 'until a portion gives this, for example magnesium=100', nutrientAmount)
    .option('--from-pan <size>', 'the pan that the recipe is for, for example “round 20x5” (centimetres, depth last)', readPan)
    .option('--to-pan <size>', 'the pan that you have', readPan)
    .option('--text', 'print only the new recipe, ready to be saved in a file')
    .option('--json', 'print everything as JSON')
    .action((name: string, options: ScaleOptions) => withDesk(deps, async ({ desk, dishes }) => {
      const dish = await dishNamed(name, dishes, undefined);
      const aims: ScaleAim[] = [];
      if (options.by !== undefined) aims.push({ kind: 'factor', factor: options.by });
      if (options.portions !== undefined) aims.push({ kind: 'portions', count: options.portions });
      if (options.reach?.[0]) aims.push({ kind: 'nutrient', nutrient: options.reach[0].id, portionAmount: options.reach[0].amount });
      if (options.fromPan && options.toPan) aims.push({ kind: 'pan', from: options.fromPan, to: options.toPan });
      if (options.atHand !== undefined) {
        const [words = '', grams = ''] = options.atHand.split('=');
        if (!(Number(grams) > 0)) throw new AppError('bad-input', { what: 'Write what you have as words=grams, for example kale=300.' });
        aims.push({ kind: 'at-hand', lineId: (await lineWith(words, dish, desk)).lineId, grams: Number(grams) });
      }
      const [aim] = aims;
      if (aims.length !== 1 || !aim) throw new AppError('bad-input', { what: 'Say one size: --portions, --by, --at-hand, --reach, or both --from-pan and --to-pan.' });
      const report = await desk.scale(dish, aim);
      process.stdout.write(options.json ? `${JSON.stringify(report, null, 2)}\n` : options.text ? report.text : view(report, deps.screen));
      for (const warning of report.warnings) process.stderr.write(`${warning}\n`);
    }));
}
