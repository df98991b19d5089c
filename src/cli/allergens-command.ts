import { Command } from 'commander';
import type { AllergenReport } from '../app/change-report.ts';
import { dishNamed, withDesk, type ChangeDeps } from './change-deps.ts';
import { paint, wrap, type Screen } from './screen.ts';

function view(report: AllergenReport, name: string, screen: Screen): string {
  const out = [paint(name, 'bold', screen), `Allergens by ${report.list.name} (${report.list.source})`];
  const block = (title: string, state: string): void => {
    const items = report.items.filter((i) => i.state === state);
    if (items.length === 0) return;
    out.push('', paint(title, 'bold', screen));
    for (const item of items) {
      out.push(`  ${item.name}${item.members.length > 0 ? ` (${item.members.join(', ')})` : ''}`);
      for (const reason of item.reasons) out.push(...wrap(reason, screen.width - 6).map((t) => paint(`      ${t}`, 'dim', screen)));
    }
  };
  block('Contains', 'contains');
  block('May contain', 'may');
  block('Not known', 'unknown');
  const not = report.items.filter((i) => i.state === 'not').map((i) => i.name);
  if (not.length > 0) out.push('', paint('Not by its ingredients', 'bold', screen), ...wrap(not.join(', '), screen.width - 2).map((t) => `  ${t}`));
  if (report.saidAnyway.length > 0) out.push('', ...wrap(`Not on this list, told all the same: ${report.saidAnyway.map((s) => `${s.name} (${s.words})`).join(', ')}.`, screen.width));
  out.push('', paint('Diets', 'bold', screen));
  for (const diet of report.diets) out.push(...wrap(`${diet.name}: ${diet.words}${diet.because === '' ? '' : ` — ${diet.because}`}`, screen.width - 2).map((t, i) => (i === 0 ? `  ${t}` : `    ${t}`)));
  if (report.fodmap.lines.length > 0) {
    out.push('', paint('FODMAP notes', 'bold', screen), ...report.fodmap.lines.map((l) => `  ${l.text}: ${l.kinds.join(', ')}`), ...wrap(`${report.fodmap.caution} (${report.fodmap.source})`, screen.width).map((t) => paint(t, 'dim', screen)));
  }
  out.push('', ...wrap(report.caution, screen.width));
  return `${out.join('\n')}\n`;
}

/** `truepot allergens DISH`: what a dish holds by the law of a place, which diets it fits, and what is not known. */
export function allergensCommand(deps: ChangeDeps): Command {
  return new Command('allergens')
    .description('Tell what a dish contains, may contain and cannot be known to hold, by the law of a place')
    .argument('<dish>', 'a recipe file, - for standard input, or the name of a saved dish')
    .option('--law <list>', 'whose allergen list: eu (also UK), us, ca, au-nz, codex')
    .option('--json', 'print everything as JSON')
    .action((name: string, options: { law?: string; json?: boolean }) => withDesk(deps, async ({ desk, dishes }) => {
      const dish = await dishNamed(name, dishes, undefined);
      const report = await desk.allergens(dish, options.law);
      process.stdout.write(options.json ? `${JSON.stringify(report, null, 2)}\n` : view(report, dish.name, deps.screen));
    }));
}
