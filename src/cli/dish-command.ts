import { Command, Option } from 'commander';
import { usualChoices, type DishChoices } from '../app/dish-choices.ts';
import type { Desk } from '../app/desk.ts';
import { measureSystems, type MeasureSystem } from '../core/quantity/index.ts';
import type { IntakeAuthority } from '../core/people/index.ts';
import { dishView, explanationView } from './dish-view.ts';
import { exitCodes } from './exit-codes.ts';
import { positive } from './positive-number.ts';
import { readInput } from './read-input.ts';
import type { Screen } from './screen.ts';

interface DishOptions {
  serves?: number;
  for?: string;
  authority?: IntakeAuthority;
  measures?: MeasureSystem;
  cooked?: number;
  json?: boolean;
  explain?: string;
}

function chosen(options: DishOptions, desk: Desk): DishChoices {
  const lifeStage = options.for ?? usualChoices.lifeStage;
  const stage = desk.options().lifeStages.find((s) => s.id === lifeStage);
  return {
    ...usualChoices,
    servings: options.serves ?? null,
    lifeStage,
    authority: options.authority ?? stage?.authorities[0] ?? usualChoices.authority,
    measures: options.measures ?? usualChoices.measures,
    cookedWeightG: options.cooked ?? null,
  };
}

/** `truepot dish FILE|-`: works a recipe out and prints what one portion gives. */
export function dishCommand(openDesk: () => Promise<Desk>, screen: Screen): Command {
  return new Command('dish')
    .description('Work out a recipe: what one portion gives, and where each number comes from')
    .argument('<file>', 'a text file, a saved web page or JSON-LD with a recipe; - reads standard input')
    .option('--serves <n>', 'number of portions, instead of what the recipe says', positive)
    .option('--for <life-stage>', `whose reference intakes stand beside the portion (usual: ${usualChoices.lifeStage})`)
    .addOption(new Option('--authority <who>', 'who set the reference intakes').choices(['nasem', 'efsa', 'eu-label']))
    .addOption(new Option('--measures <country>', 'whose cups, spoons and pints are meant').choices([...measureSystems]))
    .option('--cooked <grams>', 'weight of the cooked pot from the scale, instead of the estimate', positive)
    .option('--json', 'print everything as JSON (docs/dish-report.schema.json)')
    .option('--explain <nutrient>', 'print the whole path of one number, for example magnesium')
    .action(async (file: string, options: DishOptions) => {
      const text = await readInput(file);
      const desk = await openDesk();
      try {
        await print(desk, { text, choices: chosen(options, desk), options, screen });
      } finally {
        await desk.store.close();
      }
    });
}

async function print(desk: Desk, at: { text: string; choices: DishChoices; options: DishOptions; screen: Screen }): Promise<void> {
  const { text, choices, options, screen } = at;
      if (options.explain !== undefined) {
        const explanation = await desk.explain(text, choices, options.explain);
        process.stdout.write(options.json ? `${JSON.stringify(explanation, null, 2)}\n` : explanationView(explanation, screen));
        return;
      }
      const report = await desk.workOut(text, choices);
      process.stdout.write(options.json ? `${JSON.stringify(report, null, 2)}\n` : dishView(report, screen));
      if (report.lines.length === 0) process.exitCode = exitCodes.nothingRead;
}
