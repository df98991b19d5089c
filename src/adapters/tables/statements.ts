import { readFileSync } from 'node:fs';
import type { StatementRules } from '../../core/statements/index.ts';
import { compiledFile } from './folder.ts';

/** Reads the compiled rule sets, words and evidence of statements from dist/tables/. */
export function readStatementRules(): StatementRules {
  return JSON.parse(readFileSync(compiledFile('statements.json'), 'utf8')) as StatementRules;
}
