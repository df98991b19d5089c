import { readFileSync } from 'node:fs';
import { claimReader, senseIndex, statementVocabulary, type StatementRules, type StatementVocabulary, type WordSenses } from '../../core/statements/index.ts';
import { unpackReader, type PackedReader } from './claim-reader.ts';
import { compiledFile } from './folder.ts';

const readJson = <T>(name: string): T => JSON.parse(readFileSync(compiledFile(name), 'utf8')) as T;

/** Reads the compiled rule sets, words and evidence of statements from dist/tables/ and makes the words ready. */
export function readStatementGround(): { rules: StatementRules; vocabulary: StatementVocabulary } {
  const rules = readJson<StatementRules>('statements.json');
  const senses = senseIndex(readJson<WordSenses>('word-senses.json'));
  const reader = claimReader(unpackReader(readJson<PackedReader>('claim-reader.json')));
  const polarity = new Map(readJson<[string, number[]][]>('polarity-weights.json'));
  return { rules, vocabulary: statementVocabulary(rules.words, { senses, fitted: { reader, polarity } }) };
}
