import { Command, InvalidArgumentError, Option } from 'commander';
import { usualChoices } from '../app/dish-choices.ts';
import type { Desk } from '../app/desk.ts';
import { plateOfDish } from '../app/plate-of-dish.ts';
import { say } from '../app/say.ts';
import type { StatementGround } from '../app/statement-ground.ts';
import { lawIds, type LawId } from '../core/statements/index.ts';
import { exitCodes } from './exit-codes.ts';
import { positive } from './positive-number.ts';
import { readInput } from './read-input.ts';
import { sayView } from './say-view.ts';
import type { Screen } from './screen.ts';

interface SayOptions {
  law: LawId[];
  serves?: number;
  for?: string;
  client: string[];
  theme: string[];
  form?: 'solid' | 'liquid';
  sheet?: boolean;
  json?: boolean;
}

function laws(text: string): LawId[] {
  const asked = text.split(',').map((t) => t.trim().toLowerCase()).filter((t) => t !== '');
  const known = asked.filter((t): t is LawId => (lawIds as readonly string[]).includes(t));
  if (known.length === 0 || known.length < asked.length) throw new InvalidArgumentError(`Choose from ${lawIds.join(', ')}, several with commas.`);
  return [...new Set(known)];
}

const listOf = (text: string): string[] => text.split(',').map((t) => t.trim()).filter((t) => t !== '');

/** `truepot say DISH SCRIPT`: holds a script against a dish, sentence by sentence. `today` is the day for which the law is asked. */
export function sayCommand(openDesk: () => Promise<Desk>, ground: () => StatementGround, at: { readonly screen: Screen; readonly today: () => string }): Command {
  return new Command('say')
    .description('Check a script, caption or voice-over against a dish: what holds, what may be said, and what to say instead')
    .argument('<dish>', 'a file with the recipe; - reads standard input')
    .argument('<script>', 'a file with the words to check; - reads standard input')
    .option('--law <laws>', `which law: ${lawIds.join(', ')}; several with commas`, laws, ['eu'])
    .option('--serves <n>', 'number of portions, instead of what the recipe says', positive)
    .option('--for <life-stage>', 'life stage for the cautions of the dish')
    .option('--client <tags>', 'who listens: pregnant, trying, anticoagulant, thyroid-tablet; several with commas', listOf, [])
    .option('--theme <words>', 'nutrients and topics that come first, for example iron,tiredness', listOf, [])
    .addOption(new Option('--form <form>', 'whether the dish is eaten or drunk, where its name does not tell').choices(['solid', 'liquid']))
    .option('--sheet', 'print the text for publication only')
    .option('--json', 'print everything as JSON')
    .action(async (dish: string, script: string, options: SayOptions) => {
      const recipe = await readInput(dish);
      const text = await readInput(script);
      const { rules, vocabulary } = ground();
      const desk = await openDesk();
      const report = await desk.workOut(recipe, { ...usualChoices, servings: options.serves ?? null, lifeStage: options.for ?? usualChoices.lifeStage });
      const plate = plateOfDish(report, rules.referenceAmounts, options.form === undefined ? {} : { form: options.form });
      const said = say(
        { script: text, laws: options.law, emphasis: { nutrients: options.theme, topics: options.theme }, client: options.client, ownNotes: [], on: at.today() },
        { plate, other: null, rules, vocabulary, dishCautions: report.cautions.map((c) => ({ id: c.id, text: c.text, source: c.source })) },
      );
      process.stdout.write(options.json ? `${JSON.stringify(said, null, 2)}\n` : options.sheet && said.notChecked === null ? `${said.sheet.description}\n` : sayView(said, at.screen));
      if (said.notChecked !== null) process.exitCode = exitCodes.nothingRead;
    });
}
