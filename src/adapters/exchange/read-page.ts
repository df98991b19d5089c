import { readJsonLd, readRecipe, type Finding, type ReaderVocabulary, type Recipe } from '../../core/dish/index.ts';
import { plainText, readPage } from './page-text.ts';

/** Characters of a page that are looked at. */
const mostCharacters = 5_000_000;

/** Parses a JSON-LD block; forgives comments, line ends inside texts and commas too many. Undefined when it cannot be read. */
function parseData(text: string): unknown {
  const bare = text.trim().replace(/^<!--|-->$/g, '').replace(/^\s*\/\*<!\[CDATA\[\*\/|\/\*\]\]>\*\/\s*$|^<!\[CDATA\[|\]\]>$/g, '').trim().replace(/;$/, '');
  // Only stray control characters and commas are mended; anything else stays unreadable.
  for (const attempt of [bare, bare.replace(/[\u0000-\u001f]+/g, ' '), bare.replace(/[\u0000-\u001f]+/g, ' ').replace(/,\s?([}\]])/g, '$1')]) {
    try {
      return JSON.parse(attempt) as unknown;
    } catch {
      continue;
    }
  }
  return undefined;
}

const withFindings = (recipe: Recipe, findings: readonly Finding[]): Recipe => ({ ...recipe, findings: [...recipe.findings, ...findings] });
const note = (code: string, data: Finding['data'], severity: Finding['severity'] = 'note'): Finding => ({ code, lineId: null, data, severity });

/** Reads a recipe from a saved page: its schema.org data where it has some, otherwise what a reader of the page sees. Never throws. */
export function readHtml(html: string, vocabulary: ReaderVocabulary): Recipe {
  const page = readPage(html.slice(0, mostCharacters));
  const findings: Finding[] = html.length > mostCharacters ? [note('text-cut', { read: mostCharacters, length: html.length }, 'warning')] : [];
  for (const block of page.data) {
    const document = parseData(block);
    if (document === undefined) {
      findings.push(note('bad-json-ld', { start: block.trim().slice(0, 60) }, 'warning'));
      continue;
    }
    const recipe = readJsonLd(document, vocabulary, plainText);
    if (recipe && recipe.lines.length > 0) return withFindings(recipe, findings);
  }
  return withFindings(readRecipe(page.text, vocabulary), [...findings, note('read-from-page-text', {})]);
}

/** Reads schema.org data saved as a JSON file; text that is no JSON, or JSON without a recipe, is read as plain text. Never throws. */
export function readJsonText(text: string, vocabulary: ReaderVocabulary): Recipe {
  const document = parseData(text);
  const recipe = document === undefined ? null : readJsonLd(document, vocabulary, plainText);
  if (recipe) return recipe;
  return withFindings(readRecipe(text, vocabulary), [note(document === undefined ? 'bad-json-ld' : 'no-recipe-in-data', { start: text.trim().slice(0, 60) }, 'warning')]);
}
