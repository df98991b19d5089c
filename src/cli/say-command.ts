import { Command, InvalidArgumentError, Option } from 'commander';
import type { DishText } from '../app/change-desk.ts';
import type { AllergenReport } from '../app/change-report.ts';
import type { Desk } from '../app/desk.ts';
import type { DishStore } from '../app/ports.ts';
import { sayDish } from '../app/say-dish.ts';
import type { StatementGround } from '../app/statement-ground.ts';
import { lawIds, type LawId } from '../core/statements/index.ts';
import { AppError } from '../errors.ts';
import { noSuchDish, onlyOneFromInput } from '../messages/dish-named.ts';
import { dishNamed } from './change-deps.ts';
import { exitCodes } from './exit-codes.ts';
import { positive } from './positive-number.ts';
import { readInput } from './read-input.ts';
import { sayView } from './say-view.ts';
import type { Screen } from './screen.ts';

interface SayOptions {
  law: LawId[];
  than?: string;
  serves?: number;
  for?: string;
  client: string[];
  theme: string[];
  form?: 'solid' | 'liquid';
  sheet?: boolean;
  json?: boolean;
}

/** What the command is wired with: the desk with her store, the allergens of a dish, rules and words, the day. */
export interface SayDeps {
  readonly open: () => Promise<{ readonly desk: Desk; readonly allergensOf: (dish: DishText) => Promise<AllergenReport> }>;
  readonly ground: () => StatementGround;
  readonly screen: Screen;
  readonly today: () => string;
}

function laws(text: string): LawId[] {
  const asked = text.split(',').map((t) => t.trim().toLowerCase()).filter((t) => t !== '');
  const known = asked.filter((t): t is LawId => (lawIds as readonly string[]).includes(t));
  if (known.length === 0 || known.length < asked.length) throw new InvalidArgumentError(`Choose from ${lawIds.join(', ')}, several with commas.`);
  return [...new Set(known)];
}

const listOf = (text: string): string[] => text.split(',').map((t) => t.trim()).filter((t) => t !== '');

/** A file, - or a saved dish; throws `bad-input` that names the saved ones when it is none of them. */
async function dishOf(name: string, dishes: DishStore, serves: number | undefined): Promise<DishText> {
  try {
    return await dishNamed(name, dishes, serves);
  } catch (error) {
    if (!(error instanceof AppError) || error.code !== 'file-unreadable') throw error;
    throw new AppError('bad-input', { what: noSuchDish(name, (await dishes.list({})).map((dish) => dish.name)) }, error);
  }
}

/** `truepot say DISH SCRIPT`: holds a script against a dish, sentence by sentence, as the page “Say it” does. */
export function sayCommand({ open, ground, screen, today }: SayDeps): Command {
  return new Command('say')
    .description('Check a script, caption or voice-over against a dish: what holds, what may be said, and what to say instead')
    .argument('<dish>', 'a recipe file, - for standard input, or the name of a saved dish')
    .argument('<script>', 'a file with the words to check; - reads standard input')
    .option('--law <laws>', `which law: ${lawIds.join(', ')}; several with commas`, laws, ['eu'])
    .option('--than <dish>', 'the dish that “less”, “reduced” and “more” compare with: a recipe file or the name of a saved dish')
    .option('--serves <n>', 'number of portions, instead of what the recipe says', positive)
    .option('--for <life-stage>', 'life stage for the cautions of the dish')
    .option('--client <tags>', 'who listens: pregnant, trying, anticoagulant, thyroid-tablet; several with commas', listOf, [])
    .option('--theme <words>', 'nutrients and topics that come first, for example iron,tiredness', listOf, [])
    .addOption(new Option('--form <form>', 'whether the dish is eaten or drunk, where its name does not tell').choices(['solid', 'liquid']))
    .option('--sheet', 'print the text for publication only')
    .option('--json', 'print everything as JSON')
    .action(async (dish: string, script: string, options: SayOptions) => {
      if ([dish, script, options.than].filter((name) => name === '-').length > 1) throw new AppError('bad-input', { what: onlyOneFromInput });
      const { desk, allergensOf } = await open();
      try {
        const { dishes } = desk.store;
        const named = await dishOf(dish, dishes, options.serves);
        const other = options.than === undefined ? null : await dishOf(options.than, dishes, undefined);
        const said = await sayDish({
          dish: options.for === undefined ? named : { ...named, choices: { ...named.choices, lifeStage: options.for } }, other,
          script: await readInput(script), laws: options.law, client: options.client, theme: options.theme, plate: options.form === undefined ? {} : { form: options.form },
        }, { desk, ground: ground(), allergensOf, today: today() });
        process.stdout.write(options.json ? `${JSON.stringify(said, null, 2)}\n` : options.sheet && said.notChecked === null ? `${said.sheet.description}\n` : sayView(said, screen));
        if (said.notChecked !== null) process.exitCode = exitCodes.nothingRead;
      } finally {
        await desk.store.close();
      }
    });
}
