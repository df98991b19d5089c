import { InvalidArgumentError } from 'commander';

/** Reads an option that must be a number above 0. */
export function positive(text: string): number {
  const value = Number(text);
  if (!(value > 0)) throw new InvalidArgumentError('It must be a number above 0.');
  return value;
}
