import { readFileSync } from 'node:fs';
import { statementVocabulary, type StatementRules, type StatementVocabulary } from '../../core/statements/index.ts';
import { compiledFile } from './folder.ts';

/** Reads the compiled rule sets, words and evidence of statements from dist/tables/ and makes the words ready. */
export function readStatementGround(): { rules: StatementRules; vocabulary: StatementVocabulary } {
  const rules = JSON.parse(readFileSync(compiledFile('statements.json'), 'utf8')) as StatementRules;
  return { rules, vocabulary: statementVocabulary(rules.words) };
}
