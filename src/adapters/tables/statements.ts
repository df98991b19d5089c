import { readFileSync } from 'node:fs';
import { claimReader, readTogether, senseIndex, statementVocabulary, type StatementRules, type StatementVocabulary, type WordSenses } from '../../core/statements/index.ts';
import { unpackReaders, type PackedReader } from './claim-reader.ts';
import { fastHeap } from './fast-heap.ts';
import { compiledFile } from './folder.ts';

const readJson = <T>(name: string): T => JSON.parse(readFileSync(compiledFile(name), 'utf8')) as T;

/** Reads the compiled rule sets, words and evidence of statements from dist/tables/ and makes the words ready. */
export function readStatementGround(): { rules: StatementRules; vocabulary: StatementVocabulary } {
  const rules = readJson<StatementRules>('statements.json');
  const senses = senseIndex(readJson<WordSenses>('word-senses.json'));
  const reader = readTogether(unpackReaders(readJson<PackedReader>('claim-reader.json')).map((weights) => claimReader(weights, fastHeap)));
  const polarity = new Map(readJson<[string, number[]][]>('polarity-weights.json'));
  return { rules, vocabulary: statementVocabulary(rules.words, { senses, fitted: { reader, polarity } }) };
}
