import { Command, InvalidArgumentError } from 'commander';
import { cookCalendar } from '../adapters/exchange/cook-calendar.ts';
import { cookDishes, type CookOrder, type CookTools } from '../app/cook-dishes.ts';
import type { Clock } from '../app/ports.ts';
import type { When } from '../core/cooking/index.ts';
import { AppError } from '../errors.ts';
import { cookView } from './cook-view.ts';
import { readInput } from './read-input.ts';
import type { Screen } from './screen.ts';

export interface CookCommandDeps {
  readonly tools: () => CookTools;
  /** The text of a saved dish by its name; null when there is none. */
  readonly savedDish: (name: string) => Promise<{ readonly name: string; readonly text: string } | null>;
  readonly clock: Clock;
  readonly screen: Screen;
}

interface Options {
  ready?: number;
  from?: number;
  now?: boolean;
  shortest?: boolean;
  rings?: number;
  cooks?: number;
  shelves?: number;
  script?: string;
  rate?: number;
  silence?: number;
  date?: string;
  ics?: boolean;
  json?: boolean;
}

/** "19:30", "7.30", "1930" as minutes from midnight. */
function clockMinute(text: string): number {
  const match = /^(\d{1,2})[:.h]?(\d{2})?$/.exec(text.trim()) ?? /^(\d{2})(\d{2})$/.exec(text.trim());
  const hour = Number(match?.[1]);
  const minute = Number(match?.[2] ?? 0);
  if (!match || hour > 23 || minute > 59) throw new InvalidArgumentError('Write it as hours and minutes, such as 19:30.');
  return hour * 60 + minute;
}

function whole(low: number, high: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!Number.isInteger(value) || value < low || value > high) throw new InvalidArgumentError(`It must be a whole number from ${low} to ${high}.`);
    return value;
  };
}

async function dishOf(name: string, deps: CookCommandDeps): Promise<CookOrder['dishes'][number]> {
  const saved = await deps.savedDish(name);
  if (saved) return saved;
  try {
    return { name: null, text: await readInput(name) };
  } catch (error) {
    if (error instanceof AppError && error.code === 'file-unreadable') throw new AppError('bad-input', { what: `“${name}” is neither a saved dish nor a file that can be read. Check the name, or give the path of a text file.` }, error);
    throw error;
  }
}

function whenOf(options: Options, now: number): When {
  if (options.shortest) return { kind: 'shortest', minute: options.from ?? now };
  if (options.ready !== undefined) return { kind: 'serve-at', minute: options.ready, notBefore: options.from ?? null };
  return { kind: 'start-now', minute: options.from ?? now };
}

/** `truepot cook DISH…`: everything ready together. */
export function cookCommand(deps: CookCommandDeps): Command {
  return new Command('cook')
    .description('Plan the cooking of one or several dishes so that everything is ready together')
    .argument('<dish...>', 'saved dishes by name, or text files with a recipe or typed steps; - reads standard input')
    .option('--ready <time>', 'on the table at this time, such as 19:30', clockMinute)
    .option('--from <time>', 'nothing begins before this time (without --ready: begin at this time)', clockMinute)
    .option('--shortest', 'the least total time, even when something hot has to wait a little')
    .option('--rings <n>', 'rings of the hob', whole(0, 12))
    .option('--cooks <n>', 'pairs of hands', whole(1, 6))
    .option('--shelves <n>', 'shelves of the oven', whole(0, 6))
    .option('--script <file>', 'what she wants to say: paragraphs parted by blank lines; [while the beetroot roasts] in front ties one to a step')
    .option('--rate <words>', 'her speaking rate in words a minute', whole(40, 400))
    .option('--silence <seconds>', 'show silences longer than this', whole(1, 3600))
    .option('--date <day>', 'day of serving for the calendar file, YYYY-MM-DD (usual: today)')
    .option('--ics', 'print a calendar file instead of the page')
    .option('--json', 'print the whole plan as JSON')
    .action(async (names: string[], options: Options) => {
      const dishes = [];
      for (const name of names) dishes.push(await dishOf(name, deps));
      const instant = new Date(deps.clock.now());
      const now = instant.getHours() * 60 + instant.getMinutes();
      const kitchen = { ...(options.rings === undefined ? {} : { rings: options.rings }), ...(options.cooks === undefined ? {} : { cooks: options.cooks }), ...(options.shelves === undefined ? {} : { shelves: options.shelves }) };
      const order: CookOrder = {
        dishes,
        kitchen,
        when: whenOf(options, now),
        script: options.script === undefined ? null : await readInput(options.script),
        wordsPerMinute: options.rate ?? null,
        deadAirSeconds: options.silence ?? null,
      };
      const answer = cookDishes(order, deps.tools());
      if (options.json) process.stdout.write(`${JSON.stringify(answer, null, 2)}\n`);
      else if (options.ics && answer.kind === 'plan') process.stdout.write(cookCalendar({ plan: answer.plan, dishNames: answer.dishNames, date: options.date ?? deps.clock.today(), stamp: deps.clock.now() }));
      else process.stdout.write(cookView(answer, deps.screen));
      if (answer.kind !== 'plan') process.exitCode = noPlan;
    });
}

/** Exit status when there is no plan to print: the page says why. */
const noPlan = 4;
