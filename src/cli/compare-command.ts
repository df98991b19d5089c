import { Command } from 'commander';
import type { CompareReport } from '../app/change-report.ts';
import { gramsText } from '../messages/numbers.ts';
import { dishNamed, withDesk, type ChangeDeps } from './change-deps.ts';
import { clip, pad, paint, wrap, type Screen } from './screen.ts';

function view(report: CompareReport, all: boolean, screen: Screen): string {
  const label = 30;
  const width = Math.max(14, Math.floor((screen.width - label - 2) / report.columns.length));
  const row = (name: string, cells: readonly string[]): string => `  ${pad(clip(name, label - 2), label)}${cells.map((c) => pad(clip(c, width - 1), width)).join('')}`.trimEnd();
  const out = [paint(row('A portion of', report.columns.map((c) => c.name)), 'bold', screen)];
  out.push(row('Serves', report.columns.map((c) => c.servings)), row('Weight', report.columns.map((c) => gramsText(c.weightG))), row('Minutes in the method', report.columns.map((c) => (c.minutes === null ? 'not said' : String(Math.round(c.minutes))))), row('Cost', report.columns.map((c) => c.cost)));
  out.push('', paint('Nutrients', 'bold', screen));
  for (const n of report.nutrients) {
    if (!all && n.most === null) continue;
    out.push(row(n.name, n.cells.map((c, i) => `${c.words}${c.change === null || c.change === 'no change' ? '' : ` (${c.change.replace(/ \S+$/, '')})`}${n.most === i ? ' ▲' : ''}`)));
  }
  out.push('', paint('Allergens', 'bold', screen));
  for (const a of report.allergens) if (all || a.differ || a.cells.some((c) => c.state !== 'not')) out.push(row(`${a.differ ? '≠ ' : '  '}${a.name}`, a.cells.map((c) => c.words)));
  out.push('', paint('Diets', 'bold', screen));
  for (const d of report.diets) out.push(row(`${d.differ ? '≠ ' : '  '}${d.name}`, d.cells.map((c) => c.words)));
  for (const only of report.onlyIn) if (only.lines.length > 0) out.push('', paint(`Not in every one, in ${only.name}`, 'bold', screen), ...wrap(only.lines.join('; '), screen.width - 2).map((t) => `  ${t}`));
  out.push('', ...wrap(`▲ marks the most, ≠ a difference. ${report.caution}`, screen.width).map((t) => paint(t, 'dim', screen)));
  return `${out.join('\n')}\n`;
}

/** `truepot compare DISH DISH …`: dishes, or versions of one, side by side. */
export function compareCommand(deps: ChangeDeps): Command {
  return new Command('compare')
    .description('Put two or more dishes side by side: nutrients of a portion, cost, allergens, diets and time')
    .argument('<dishes...>', 'two to six recipe files or names of saved dishes')
    .option('--all', 'show every row, not only those that differ')
    .option('--json', 'print everything as JSON')
    .action((names: string[], options: { all?: boolean; json?: boolean }) => withDesk(deps, async ({ desk, dishes }) => {
      const asked = await Promise.all(names.map((name) => dishNamed(name, dishes, undefined)));
      const report = await desk.compare(asked);
      process.stdout.write(options.json ? `${JSON.stringify(report, null, 2)}\n` : view(report, options.all ?? false, deps.screen));
    }));
}
