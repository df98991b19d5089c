import { readFile } from 'node:fs/promises';
import { AppError } from '../errors.ts';

/** The text of a file, or of standard input for `-`. Throws `file-unreadable`. */
export async function readInput(file: string): Promise<string> {
  try {
    if (file !== '-') return await readFile(file, 'utf8');
    const parts: Buffer[] = [];
    for await (const part of process.stdin) parts.push(part as Buffer);
    return Buffer.concat(parts).toString('utf8');
  } catch (cause) {
    throw new AppError('file-unreadable', { file }, cause);
  }
}
