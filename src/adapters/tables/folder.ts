import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AppError } from '../../errors.ts';

/** The folder of the package: the nearest one upwards that holds package.json. */
export function packageFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) {
    const parent = dirname(folder);
    if (parent === folder) throw new AppError('not-built', { what: 'package folder' });
    folder = parent;
  }
  return folder;
}

/** A file of the compiled tables; throws `not-built` when `npm run tables` has not been run. */
export function compiledFile(name: string): string {
  const file = join(packageFolder(), 'dist', 'tables', name);
  if (!existsSync(file)) throw new AppError('not-built', { what: name });
  return file;
}
