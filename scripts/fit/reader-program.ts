import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gramBucketCount, gramBuckets, tagCount, type Sign } from '../../src/core/statements/index.ts';
import type { PreparedSentence } from './claim-rows.ts';
import { vectorWidth } from './word-vectors.ts';

/** What scripts/fit/claim-reader/ is given: `watched` sentences are not fitted to, only scored after every epoch. */
export interface ReaderProblem {
  readonly sentences: readonly (PreparedSentence & { readonly watched: boolean })[];
  /** Row of each word; every other word is unknown. */
  readonly words: ReadonlyMap<string, number>;
  readonly signs: ReadonlyMap<Sign, number>;
  /** Starting vector of each word, `words.size * vectorWidth`. */
  readonly vectors: Float32Array;
}

export interface ReaderSettings {
  readonly hidden: number; readonly layers: number; readonly epochs: number; readonly batch: number; readonly averaged: number;
  readonly rate: number; readonly dropInput: number; readonly dropOutput: number; readonly dropWord: number; readonly dropSign: number; readonly clip: number;
}

/** A matrix by rows, `values[row * width + column]`. */
export interface FittedTable {
  readonly rows: number;
  readonly width: number;
  readonly values: Float32Array;
}
export interface FittedDirection {
  readonly input: FittedTable;
  readonly state: FittedTable;
  readonly bias: Float32Array;
}
/** The fitted weights; the gates in, forget, new and out lie side by side. */
export interface FittedReader {
  readonly words: FittedTable; readonly signs: FittedTable; readonly grams: FittedTable;
  readonly layers: readonly { readonly forward: FittedDirection; readonly backward: FittedDirection }[];
  readonly out: FittedTable; readonly outBias: Float32Array; readonly follow: Float32Array; readonly first: Float32Array; readonly last: Float32Array;
}

const magic = 0x4d4c4331;
// As in scripts/fit/claim-reader/settings.h.
const signWidth = 28;
const gramWidth = 32;

function inputOf({ sentences, words, signs, vectors }: ReaderProblem): Buffer {
  const forms = new Map<string, number>();
  for (const { words: here } of sentences) for (const word of here) if (!forms.has(word)) forms.set(word, forms.size);
  const numbers: number[] = [magic, tagCount, vectorWidth, words.size, signs.size, gramBucketCount, forms.size, sentences.length];
  for (const form of forms.keys()) {
    const buckets = gramBuckets(form);
    numbers.push(words.get(form) ?? words.size, buckets.length, ...buckets);
  }
  for (const sentence of sentences) {
    numbers.push(sentence.watched ? 1 : 0, sentence.words.length);
    sentence.words.forEach((word, i) => {
      const known = (sentence.signs[i] ?? []).flatMap((sign) => signs.get(sign) ?? []);
      numbers.push(forms.get(word) ?? 0, sentence.tags[i] ?? 0, known.length, ...known);
    });
  }
  return Buffer.concat([Buffer.from(Int32Array.from(numbers).buffer), Buffer.from(vectors.buffer, vectors.byteOffset, vectors.byteLength)]);
}

function outputOf(file: Buffer): FittedReader {
  const bytes = new Uint8Array(file).buffer;
  const [found, tags = 0, words = 0, signs = 0, buckets = 0, hidden = 0, layerCount = 0] = new Int32Array(bytes, 0, 7);
  if (found !== magic || tags !== tagCount) throw new Error('the fitting program wrote something else than weights');
  let from = 7 * 4;
  const take = (count: number): Float32Array => {
    const values = new Float32Array(bytes, from, count);
    from += 4 * count;
    return values;
  };
  const table = (rows: number, width: number): FittedTable => ({ rows, width, values: take(rows * width) });
  const direction = (width: number): FittedDirection => ({ input: table(width, 4 * hidden), state: table(hidden, 4 * hidden), bias: take(4 * hidden) });
  const big = { words: table(words + 1, vectorWidth), signs: table(signs, signWidth), grams: table(buckets, gramWidth) };
  const layers = Array.from({ length: layerCount }, (_, l) => {
    const width = l === 0 ? vectorWidth + signWidth + gramWidth : 2 * hidden;
    return { forward: direction(width), backward: direction(width) };
  });
  const reader = { ...big, layers, out: table(2 * hidden, tags), outBias: take(tags), follow: take(tags * tags), first: take(tags), last: take(tags) };
  if (from !== bytes.byteLength) throw new Error('the fitting program wrote more or less than its weights');
  return reader;
}

async function run(program: string, words: readonly string[], what: string): Promise<void> {
  const [status] = await once(spawn(program, words, { stdio: 'inherit' }), 'close') as [number | null];
  if (status !== 0) throw new Error(`${what} did not end well`);
}

/**
 * Compiles the C program, lets it check its gradients, fits a reader from each seed (side by side), and reads what it wrote.
 * Needs gcc (Debian: apt-get install gcc).
 */
export async function fitReaders(problem: ReaderProblem, settings: ReaderSettings, seeds: readonly number[]): Promise<FittedReader[]> {
  const folder = mkdtempSync(join(tmpdir(), 'claim-reader-'));
  const program = join(folder, 'claim-reader');
  try {
    execFileSync('gcc', ['-O3', '-march=native', '-ffast-math', `-DTAGS=${tagCount}`, join(import.meta.dirname, 'claim-reader/claim-reader.c'), '-o', program, '-lm'], { stdio: 'inherit' });
    await run(program, ['check'], 'the check of the gradients');
    writeFileSync(join(folder, 'input'), inputOf(problem));
    return await Promise.all(seeds.map(async (seed) => {
      const output = join(folder, `output-${seed}`);
      await run(program, ['fit', join(folder, 'input'), output, `seed=${seed}`, ...Object.entries(settings).map(([name, value]) => `${name}=${value}`)], 'the fitting');
      return outputOf(readFileSync(output));
    }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
