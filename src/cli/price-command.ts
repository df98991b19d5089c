import { Command } from 'commander';
import type { CostReport } from '../app/change-report.ts';
import type { NutrientId } from '../core/foods/index.ts';
import { AppError } from '../errors.ts';
import { dishNamed, nutrientAmount, withDesk, type ChangeDeps } from './change-deps.ts';
import { readInput } from './read-input.ts';
import { bar, clip, pad, paint, wrap, type Screen } from './screen.ts';

interface PriceOptions {
  bring?: string;
  csv?: boolean;
  list?: boolean;
  cheapest?: { id: NutrientId; amount: number }[];
  json?: boolean;
}

function view(report: CostReport, name: string, screen: Screen): string {
  const out = [paint(name, 'bold', screen), ...wrap(report.words, screen.width), ''];
  for (const line of report.lines) {
    out.push(`  ${pad(clip(line.text, 40), 40)} ${pad(line.cost ?? '—', 9, 'right')} ${line.cost === null ? pad('', 10) : bar(line.share, 10)}  ${paint([line.words, line.from].filter((t) => t !== null && t !== '').join(' · '), 'dim', screen)}`.trimEnd());
  }
  if (report.packs.length > 0) {
    out.push('', paint(`In the basket: ${report.paid} for whole packs, ${report.leftCost} of it left over`, 'bold', screen));
    for (const p of report.packs) out.push(`  ${p.packs} × ${p.pack} ${p.food}, ${p.shop}: ${p.paid}, left ${p.left} (${p.leftCost})`);
  }
  return `${out.join('\n')}\n`;
}

/** `truepot price [DISH]`: what a dish costs by her own price list; the list in and out as CSV. */
export function priceCommand(deps: ChangeDeps): Command {
  return new Command('price')
    .description('What a dish costs by your own price list; brings the list in and out as CSV')
    .argument('[dish]', 'a recipe file, - for standard input, or the name of a saved dish')
    .option('--bring <file>', 'add the prices of a CSV file with the columns food, pack, price, shop, date')
    .option('--csv', 'print the price list as CSV')
    .option('--list', 'show the price list with what was read from each row')
    .option('--cheapest <nutrient=amount>', 'which foods of the list give this for the least money, for example magnesium=100', nutrientAmount)
    .option('--json', 'print everything as JSON')
    .action((name: string | undefined, options: PriceOptions) => withDesk(deps, async ({ desk, dishes }) => {
      const say = (value: unknown, words: () => string): void => void process.stdout.write(options.json ? `${JSON.stringify(value, null, 2)}\n` : words());
      if (options.bring !== undefined) {
        const brought = await desk.bringPrices(await readInput(options.bring));
        say(brought, () => [`${brought.added} prices kept.`, ...brought.faults, ...brought.rows.filter((r) => r.problem !== null).map((r) => r.problem ?? '')].join('\n') + '\n');
      }
      if (options.csv) process.stdout.write(await desk.pricesCsv());
      if (options.list) {
        const { rows } = await desk.prices();
        say(rows, () => (rows.length === 0 ? 'No prices yet. Bring some with --bring FILE.\n' : rows.map((r) => `${pad(clip(r.food, 28), 28)} ${pad(r.pack, 10)} ${pad(String(r.price), 8, 'right')}  ${pad(clip(r.shop, 16), 16)} ${r.date}${r.stale ? ' old' : ''}  ${r.problem ?? `${r.readAs ?? ''}, ${r.perKg ?? ''}`}`).join('\n') + '\n'));
      }
      const wanted = options.cheapest?.[0];
      if (wanted) {
        const found = await desk.cheapest(wanted.id, wanted.amount);
        say(found, () => (found.length === 0 ? 'No food of the price list is known to give it.\n' : found.slice(0, 20).map((f) => `${pad(f.food, 28)} ${f.words}`).join('\n') + '\n'));
      }
      if (name === undefined) {
        if (options.bring === undefined && !options.csv && !options.list && !wanted) throw new AppError('bad-input', { what: 'Name a dish, or use --bring, --csv, --list or --cheapest.' });
        return;
      }
      const dish = await dishNamed(name, dishes, undefined);
      const report = await desk.cost(dish);
      say(report, () => view(report, dish.name, deps.screen));
    }));
}
