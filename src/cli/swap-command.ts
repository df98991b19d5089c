import { Command } from 'commander';
import type { SwapReport, WishReport } from '../app/change-report.ts';
import type { NutrientId } from '../core/foods/index.ts';
import { AppError } from '../errors.ts';
import { dishNamed, gathered, lineWith, nutrientAmount, withDesk, type ChangeDeps } from './change-deps.ts';
import { positive } from './positive-number.ts';
import { pad, paint, wrap, type Screen } from './screen.ts';

interface SwapOptions {
  line?: string;
  reach?: { id: NutrientId; amount: number }[];
  atMost?: { id: NutrientId; amount: number }[];
  without?: string[];
  diet?: string[];
  keep?: string[];
  cost?: number;
  swaps?: string;
  strict?: boolean;
  show?: string;
  json?: boolean;
}

const shownNutrients = ['energy', 'protein', 'fibre', 'iron', 'magnesium', 'calcium', 'folate-dfe'];

function swapView(report: SwapReport, screen: Screen): string {
  const out = [paint(report.line, 'bold', screen), report.roles.length > 0 ? `Its part in a dish: ${report.roles.join(', ')}` : 'Its part in a dish is not in the tables.'];
  report.options.forEach((o, i) => {
    out.push('', `${pad(`${i + 1}.`, 4)}${paint(o.text ?? o.name, 'bold', screen)}`);
    const indent = '    ';
    out.push(...wrap(o.why.join(' '), screen.width - 4).map((t) => paint(`${indent}${t}`, 'dim', screen)));
    const shown = o.nutrients.filter((n) => shownNutrients.includes(n.id)).map((n) => `${n.name.toLowerCase().replace(/,.*/, '')} ${n.words}`);
    out.push(...wrap(`A portion: ${shown.join(' · ')}`, screen.width - 4).map((t) => `${indent}${t}`));
    out.push(`${indent}Cost ${o.cost.words}${o.season.words === '' ? '' : ` · ${o.season.words}`}${o.minutes === null ? '' : ` · ${o.minutes}`}`);
    for (const a of o.allergens) out.push(`${indent}${a.graver ? '! ' : ''}${a.words}`);
    for (const d of o.diets) out.push(`${indent}${d.words}`);
    if (o.fodmap !== null) out.push(`${indent}FODMAP: ${o.fodmap}`);
  });
  return `${out.join('\n')}\n`;
}

function wishView(report: WishReport, screen: Screen): string {
  const out = [...wrap(report.words, screen.width)];
  report.answers.forEach((answer, i) => {
    out.push('', paint(`${i + 1}. ${answer.swaps.length === 0 ? 'As it is' : `${answer.swaps.length} ${answer.swaps.length === 1 ? 'swap' : 'swaps'}`}`, 'bold', screen));
    for (const swap of answer.swaps) out.push(`   ${swap.before}  →  ${paint(swap.after, 'bold', screen)}`, ...wrap(swap.why.join(' '), screen.width - 6).map((t) => paint(`      ${t}`, 'dim', screen)));
    out.push(`   ${[...answer.nutrients.map((n) => `${n.name} ${n.words}`), answer.cost].join(' · ')}`);
    if (answer.notSure.length > 0) out.push(...wrap(`Not sure: ${answer.notSure.join('; ')}. Read the packs.`, screen.width - 3).map((t) => `   ${t}`));
  });
  return `${out.join('\n')}\n`;
}

/** `truepot swap DISH`: alternatives for a line, or the swaps that reach a wish. */
export function swapCommand(deps: ChangeDeps): Command {
  return new Command('swap')
    .description('Alternatives for a line, or the swaps that reach what you wish for')
    .argument('<dish>', 'a recipe file, - for standard input, or the name of a saved dish')
    .option('--line <words>', 'show alternatives for the line that holds these words')
    .option('--reach <nutrient=amount>', 'a portion shall give at least this, for example magnesium=100; may be repeated', nutrientAmount)
    .option('--at-most <nutrient=amount>', 'a portion shall give at most this, for example sodium=600; may be repeated', nutrientAmount)
    .option('--without <allergens>', 'what shall not be in it, for example nuts,milk', gathered)
    .option('--diet <diets>', 'diets that it shall fit, for example vegan', gathered)
    .option('--keep <words>', 'a line that must stay, by words in it; may be repeated', gathered)
    .option('--cost <amount>', 'most that a portion may cost, by your own prices', positive)
    .option('--swaps <n>', 'at most so many lines change, 0 to 3 (usual: 3)')
    .option('--strict', 'also rule out traces and foods whose composition is not known')
    .option('--show <n>', 'how many alternatives or answers (usual: 8 and 5)')
    .option('--json', 'print everything as JSON')
    .action((name: string, options: SwapOptions) => withDesk(deps, async ({ desk, dishes }) => {
      const dish = await dishNamed(name, dishes, undefined);
      const show = options.show === undefined ? null : Math.max(1, Math.min(40, Math.round(Number(options.show)) || 1));
      if (options.line !== undefined) {
        const { lineId } = await lineWith(options.line, dish, desk);
        const report = await desk.swap(dish, lineId, show ?? 8);
        process.stdout.write(options.json ? `${JSON.stringify(report, null, 2)}\n` : swapView(report, deps.screen));
        return;
      }
      const { reach = [], atMost = [], without = [], diet = [], keep = [] } = options;
      if (reach.length + atMost.length + without.length + diet.length === 0 && options.cost === undefined) {
        throw new AppError('bad-input', { what: 'Name a line with --line, or a wish with --reach, --at-most, --without, --diet or --cost.' });
      }
      const report = await desk.wish(dish, {
        nutrients: [...reach.map(({ id, amount }) => ({ id, least: amount, most: null })), ...atMost.map(({ id, amount }) => ({ id, least: null, most: amount }))],
        costMost: options.cost ?? null, without, diets: diet, keep: (await Promise.all(keep.map((words) => lineWith(words, dish, desk)))).map((l) => l.lineId),
        swaps: options.swaps === undefined ? 3 : Number(options.swaps), strict: options.strict ?? false, answers: Math.min(10, show ?? 5),
      });
      process.stdout.write(options.json ? `${JSON.stringify(report, null, 2)}\n` : wishView(report, deps.screen));
    }));
}
