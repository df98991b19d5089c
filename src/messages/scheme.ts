import type { SchemeProblem } from '../core/scheme/index.ts';

const words: Record<SchemeProblem['code'], (d: SchemeProblem['data']) => string> = {
  missing: () => 'is missing',
  'not-text': () => 'should be words',
  'not-number': () => 'should be a number',
  'not-a-list': () => 'should be a list',
  'unknown-word': (d) => `“${d['value']}” is not known here; use one of: ${d['known']}`,
  'out-of-range': (d) => `${d['value']} is outside ${d['from']} to ${d['to']}`,
  'unknown-key': (d) => `is not part of a scheme; known here: ${d['known']}`,
  'same-id': () => 'stands twice; give each rule its own id',
  'window-backwards': (d) => `ends (${d['to']}) before it begins (${d['from']})`,
  'unknown-nutrient': (d) => `“${d['value']}” is not a nutrient; use energy, carbohydrate, fat, protein, fibre or an id such as iron`,
};

/** What is wrong with a scheme, where, and how to mend it. */
export function schemeProblemText(problem: SchemeProblem): string {
  return `${problem.at}: ${words[problem.code](problem.data)}.`;
}
