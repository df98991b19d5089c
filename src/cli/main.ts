#!/usr/bin/env node
import { Command, CommanderError } from 'commander';
import type { DishText } from '../app/change-desk.ts';
import { AppError } from '../errors.ts';
import { errorText } from '../messages/errors.ts';
import type { ChangeDeps } from './change-deps.ts';
import { exitCodeOf, exitCodes } from './exit-codes.ts';
import type { Screen } from './screen.ts';

const screen: Screen = {
  width: Math.max(60, Math.min(process.stdout.columns || 120, 150)),
  colour: process.stdout.isTTY && process.env['NO_COLOR'] === undefined,
};

const changeCommands = ['swap', 'scale', 'price', 'compare', 'allergens'] as const;

async function changeMaker(name: (typeof changeCommands)[number]): Promise<(deps: ChangeDeps) => Command> {
  switch (name) {
    case 'swap': return (await import('./swap-command.ts')).swapCommand;
    case 'scale': return (await import('./scale-command.ts')).scaleCommand;
    case 'price': return (await import('./price-command.ts')).priceCommand;
    case 'compare': return (await import('./compare-command.ts')).compareCommand;
    case 'allergens': return (await import('./allergens-command.ts')).allergensCommand;
  }
}

/** Each command is loaded only when it is called: the others need not start. */
async function command(name: string | undefined): Promise<Command[]> {
  const { dataFile } = await import('./data-folder.ts');
  const openDesk = async () => (await import('./wire.ts')).openStoredDesk(dataFile());
  const makers: Record<string, () => Promise<Command>> = {
    dish: async () => (await import('./dish-command.ts')).dishCommand(openDesk, screen),
    ...Object.fromEntries(changeCommands.map((name) => [name, async () => {
      const { openChangeDesk } = await import('./wire.ts');
      return (await changeMaker(name))({ open: () => openChangeDesk(dataFile()), screen });
    }])),
    say: async () => {
      const [{ sayCommand }, { readStatementGround }, { changeDeskOf, systemClock }] = await Promise.all([import('./say-command.ts'), import('../adapters/tables/statements.ts'), import('./wire.ts')]);
      const open = async () => {
        const desk = await openDesk();
        const change = changeDeskOf(desk);
        return { desk, allergensOf: (dish: DishText) => change.allergens(dish) };
      };
      return sayCommand({ open, ground: readStatementGround, screen, today: () => systemClock().today() });
    },
    cook: async () => {
      const [{ cookCommand }, { cookTools, openStore, systemClock }] = await Promise.all([import('./cook-command.ts'), import('./wire.ts')]);
      const savedDish = async (name: string) => {
        const store = await openStore(dataFile());
        try {
          return (await store.dishes.list({})).find((dish) => dish.name === name) ?? null;
        } finally {
          await store.close();
        }
      };
      return cookCommand({ tools: cookTools, savedDish, clock: systemClock(), screen });
    },
    cycle: async () => {
      const [{ cycleCommand }, { cycleDesk }, { readCycleTables }] = await Promise.all([import('./cycle-command.ts'), import('../app/cycle-report.ts'), import('../adapters/tables/cycle.ts')]);
      return cycleCommand(() => cycleDesk(readCycleTables()), screen);
    },
    desk: async () => (await import('./desk-command.ts')).deskCommand(),
  };
  const wanted = name !== undefined && makers[name] !== undefined ? [makers[name]] : Object.values(makers);
  return Promise.all(wanted.map((make) => make()));
}

const program = new Command('truepot')
  .description('Works out what one portion of a recipe gives, where each number comes from, and what is not known.')
  .version('0.1.0', '--version', 'print the version')
  .showHelpAfterError('Add --help to see how it is used.')
  .exitOverride();
for (const sub of await command(process.argv[2])) program.addCommand(sub.exitOverride().showHelpAfterError());

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? exitCodes.ok : exitCodes.usage;
  else if (error instanceof AppError) {
    console.error(errorText(error));
    process.exitCode = exitCodeOf(error.code);
  } else {
    console.error('Something in Truepot itself went wrong. Nothing that was saved is lost.');
    console.error(error);
    process.exitCode = exitCodes.bug;
  }
}
