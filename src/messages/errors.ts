import type { AppError, ErrorCode } from '../errors.ts';

type Say = (data: AppError['data']) => string;

const words: Record<ErrorCode, Say> = {
  'unknown-food': (d) => `There is no food with the code ${d['code']}. Search for the food by name and choose it from the list.`,
  'unknown-nutrient': (d) => `“${d['id']}” is not a nutrient that Truepot knows. Try an id such as magnesium, vitamin-c or protein.`,
  'unknown-unit': (d) => `“${d['unit']}” is not a unit that Truepot knows.`,
  'unknown-source': (d) => `The source “${d['id']}” is not in the list of sources.`,
  'unknown-life-stage': (d) => `There are no reference intakes for “${d['stage']}”${d['authority'] ? ` from ${d['authority']}` : ''}.${d['known'] ? ` Known: ${d['known']}.` : ''}`,
  'unknown-dish': () => 'That dish is not among the saved ones. It may have been removed for good on another screen; look in the list again.',
  'bad-date': (d) => `“${d['text']}” is not a date. Write it as year-month-day, for example 2026-03-09.`,
  'bad-table': (d) => `The food tables cannot be used: ${d['what']}. Run “npm run build” and start again.`,
  'bad-input': (d) => String(d['what'] ?? 'The input cannot be used.'),
  'input-too-large': (d) => `The text is too long to be a recipe (${d['length']} characters; the limit is ${d['limit']}). Paste one recipe at a time.`,
  'file-unreadable': (d) => `The file ${d['file']} cannot be read. Check the name and that it is a text file.`,
  'store-unreadable': (d) => `The saved dishes cannot be opened${d['file'] ? ` (${d['file']})` : ''}. The file was left as it is. If you have a copy of it, put the copy in its place; otherwise move it away and a new one is made.`,
  'name-taken': (d) => `There is already a dish called “${d['name']}”. Choose another name.`,
  'not-built': (d) => `A built part is missing (${d['what']}). Run “npm run build” once.`,
};

/** What went wrong and how to mend it, in words for people. */
export function errorText(error: AppError): string {
  return words[error.code](error.data);
}
