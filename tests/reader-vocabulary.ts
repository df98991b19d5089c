import { join } from 'node:path';
import { compileReaderWords } from '../scripts/tables/reader-words.ts';
import { compileUnits } from '../scripts/tables/units.ts';
import { readerVocabulary, type ReaderVocabulary } from '../src/core/dish/index.ts';
import { unitTable } from '../src/core/quantity/index.ts';

const data = join(import.meta.dirname, '..', 'data');

/** The reader's words and units straight from data/, so that tests need no compiled tables. */
export const testVocabulary: ReaderVocabulary = readerVocabulary(unitTable(compileUnits(data)), compileReaderWords(data));
