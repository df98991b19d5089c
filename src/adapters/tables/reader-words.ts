import { readFileSync } from 'node:fs';
import { readerVocabulary, type ReaderVocabulary, type ReaderWords } from '../../core/dish/index.ts';
import { compiledFile } from './folder.ts';
import { readUnitTable } from './units.ts';

/** Reads the compiled words and units by which recipes are read. `isFood` settles doubtful splits when a food list is at hand. */
export function readReaderVocabulary(isFood: ((phrase: string) => boolean) | null = null): ReaderVocabulary {
  return readerVocabulary(readUnitTable(), JSON.parse(readFileSync(compiledFile('reader-words.json'), 'utf8')) as ReaderWords, isFood);
}
