import { listed } from './numbers.ts';

const mostNames = 8;

/** A name on the command line that is neither a file nor a saved dish. */
export function noSuchDish(name: string, saved: readonly string[]): string {
  const have = saved.length === 0 ? 'No dish is saved yet' : `Saved dishes: ${listed(saved.slice(0, mostNames).map((n) => `“${n}”`))}${saved.length > mostNames ? ` and ${saved.length - mostNames} more` : ''}`;
  return `There is no file and no saved dish called “${name}”. Give the path of a recipe file, or the name of a saved dish as it is written. ${have}.`;
}

export const onlyOneFromInput = 'Only one of the dish, the script and the dish to compare with can be read from standard input (-). Put the others in files.';
