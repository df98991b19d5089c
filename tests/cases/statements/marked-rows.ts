import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { claimClasses, polarities, type ClaimClass, type Polarity } from '../../../src/core/statements/index.ts';
import type { LabelledRow } from './score.ts';

const mark = /\[([^[\]|]+)\|([a-z-]+)(?:,([a-z]+))?\]/g;

/** A line with its claims marked in place: "This stew [eases cramps|disease] and [calms|function,reported]". */
export function markedRow(line: string, id: string): LabelledRow {
  const claims: { span: string; class: ClaimClass; polarity: Polarity; start: number }[] = [];
  let text = '';
  let at = 0;
  for (const match of line.matchAll(mark)) {
    text += line.slice(at, match.index);
    const span = match[1] ?? '';
    const kind = claimClasses.find((c) => c === match[2]);
    const polarity = polarities.find((p) => p === (match[3] ?? 'asserted'));
    if (!kind || !polarity) throw new Error(`${id}: "${match[0]}" names no class or polarity of the labelling guide`);
    claims.push({ span, class: kind, polarity, start: text.length });
    text += span;
    at = match.index + match[0].length;
  }
  text += line.slice(at);
  if (/[[\]|]/.test(text)) throw new Error(`${id}: a bracket or bar is left over in "${text}"`);
  return { id, text, claims };
}

/** Rows of one file of marked lines; a line that begins with "# " is a comment. */
export function readMarked(file: string, name: string): LabelledRow[] {
  return readFileSync(file, 'utf8').split('\n').map((line, i) => ({ line: line.trim(), id: `${name}:${i + 1}` })).filter(({ line }) => line !== '' && !line.startsWith('# ')).map(({ line, id }) => markedRow(line, id));
}

const filesOf = (folder: string): string[] => readdirSync(folder).filter((name) => name.endsWith('.txt')).sort();

/** Tells whether fitted weights belong to a folder of marked rows: the sha256 of its files in the order of their names. */
export function folderSum(folder: string): string {
  const sum = createHash('sha256');
  for (const name of filesOf(folder)) sum.update(readFileSync(join(folder, name)));
  return sum.digest('hex');
}

/** All marked rows of a folder. */
export function readMarkedFolder(folder: string): LabelledRow[] {
  return filesOf(folder).flatMap((name) => readMarked(join(folder, name), name.replace('.txt', '')));
}
