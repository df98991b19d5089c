import type { Finding, Recipe, Span, StatedServings } from './recipe.ts';
import { readLines } from './read-recipe.ts';
import { readServings } from './read-servings.ts';
import { readSteps } from './read-steps.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

type Node = Readonly<Record<string, unknown>>;
type Stretch = Span & { section: string | null };

/** Things looked at in one document, and how deep: more is no recipe but an accident. */
const mostNodes = 20_000;
const deepest = 12;
const longestText = 20_000;

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && !Array.isArray(value);
const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : value === undefined || value === null ? [] : [value]);

/** Whether a node is of a schema.org type, written plain, with the address or with a prefix. */
function isType(node: Node, type: string): boolean {
  return list(node['@type']).some((name) => typeof name === 'string' && (name.split(/[/:#]/).at(-1) ?? '') === type);
}

/** Every schema.org Recipe in a parsed JSON-LD document: at the top, in lists, in `@graph` or inside other things. */
function findRecipes(document: unknown): Node[] {
  const found: Node[] = [];
  const waiting: unknown[] = [document];
  for (let seen = 0; seen < waiting.length && seen < mostNodes; seen++) {
    const value = waiting[seen];
    if (Array.isArray(value)) waiting.push(...(value as unknown[]).slice(0, 1_000));
    else if (isNode(value)) {
      if (isType(value, 'Recipe') || Array.isArray(value['recipeIngredient'])) found.push(value);
      else waiting.push(...Object.values(value).filter((inner) => typeof inner === 'object').slice(0, 100));
    }
  }
  return found;
}

/** The words of a text, of a thing's `text` or `name`. */
function wordsIn(value: unknown, depth = 0): string {
  if (typeof value === 'string') return value.slice(0, longestText);
  if (typeof value === 'number') return String(value);
  if (!isNode(value) || depth > deepest) return '';
  return wordsIn(value['text'] ?? value['name'] ?? value['@value'] ?? '', depth + 1);
}

interface Told {
  readonly text: string;
  readonly section: string | null;
}

/** Instructions as text, steps, sections or lists of any of them, in order. */
function tell(value: unknown, section: string | null, depth: number): Told[] {
  if (depth > deepest) return [];
  if (Array.isArray(value)) return (value as unknown[]).slice(0, 500).flatMap((item) => tell(item, section, depth + 1));
  if (!isNode(value)) return typeof value === 'string' ? [{ text: wordsIn(value), section }] : [];
  if (isType(value, 'HowToSection')) return tell(value['itemListElement'] ?? value['steps'] ?? value['text'], wordsIn(value['name']) || section, depth + 1);
  if (isType(value, 'ListItem') && value['item'] !== undefined) return tell(value['item'], section, depth + 1);
  const own = typeof value['text'] === 'string' ? value['text'] : '';
  if (own !== '') return [{ text: wordsIn(own), section }];
  if (value['itemListElement'] !== undefined) return tell(value['itemListElement'], section, depth + 1);
  const name = wordsIn(value);
  return name === '' ? [] : [{ text: name, section }];
}

function readYield(value: unknown, vocabulary: ReaderVocabulary, plain: (html: string) => string): StatedServings | null {
  const said = list(value).map((item) => (isNode(item) && item['value'] !== undefined ? `${wordsIn(item['value'])} ${wordsIn(item['unitText'] ?? '')}` : plain(wordsIn(item))).trim()).filter((text) => text !== '' && text.length < 160);
  const read = said.map((text) => {
    const direct = readServings(text, { start: 0, end: text.length }, vocabulary)?.servings;
    if (direct) return { ...direct, text };
    const yielded = `yields ${text}`;
    const servings = readServings(yielded, { start: 0, end: yielded.length }, vocabulary)?.servings ?? null;
    return servings && { ...servings, text };
  }).filter((servings) => servings !== null);
  return read.find(({ of, text }) => of === null && /\D/.test(text)) ?? read.find(({ of }) => of !== null) ?? read[0] ?? null;
}

const linesIn = (text: string): string[] => text.split(/[\n\r\u2028\u2029]+/).map((line) => line.trim()).filter((line) => line !== '');

/**
 * Reads schema.org/Recipe data (JSON-LD, already parsed). Null when the document holds no recipe. Never throws.
 * `plain` turns mark-up inside values into plain text; the text that spans point into is made of the values.
 */
export function readJsonLd(document: unknown, vocabulary: ReaderVocabulary, plain: (html: string) => string = (text) => text): Recipe | null {
  const recipes = findRecipes(document);
  const ingredientsOf = (node: Node): string[] => list(node['recipeIngredient'] ?? node['ingredients']).slice(0, 1_000).flatMap((item) => linesIn(plain(wordsIn(item))));
  const node = recipes.find((recipe) => ingredientsOf(recipe).length > 0) ?? recipes[0];
  if (!node) return null;

  let text = '';
  const put = (line: string): Span => {
    const start = text.length;
    text += `${line}\n`;
    return { start, end: start + line.length };
  };
  const title = linesIn(plain(wordsIn(node['name']))).join(' ');
  if (title !== '') put(title);
  const ingredients: Stretch[] = [];
  let section: string | null = null;
  for (const line of ingredientsOf(node)) {
    const span = put(line);
    const heading = /^(?:for the\s)?(.{1,60}):$/i.exec(line);
    if (heading) section = heading[1]!.trim();
    else ingredients.push({ ...span, section });
  }
  const steps: Stretch[] = tell(node['recipeInstructions'], null, 0).slice(0, 500).flatMap((told) => linesIn(plain(told.text)).map((line) => ({ ...put(line), section: told.section })));

  const { lines, findings } = readLines(text, ingredients, vocabulary);
  const servings = readYield(node['recipeYield'] ?? node['yield'], vocabulary, plain);
  const all: Finding[] = [...findings];
  if (recipes.length > 1) all.push({ code: 'first-recipe-read', lineId: null, data: { count: recipes.length, title }, severity: 'note' });
  if (lines.length === 0) all.push({ code: 'no-ingredients', lineId: null, data: {}, severity: 'warning' });
  if (servings === null) all.push({ code: 'no-servings', lineId: null, data: {}, severity: 'question' });
  return { title: title === '' ? null : title, servings, lines, steps: readSteps(text, steps, lines, vocabulary), findings: all, text };
}
