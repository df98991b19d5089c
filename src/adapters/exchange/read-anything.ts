import { readRecipe, type ReaderVocabulary, type Recipe } from '../../core/dish/index.ts';
import { readHtml, readJsonText } from './read-page.ts';

export type TextKind = 'page' | 'data' | 'text';

/** What a pasted or opened text is: a saved web page, schema.org data or a recipe in words. */
export function kindOfText(text: string): TextKind {
  const head = text.slice(0, 5_000).trimStart();
  if (/^[{[]/.test(head) && /"@(?:type|graph|context)"|"recipeIngredient"/.test(text.slice(0, 200_000))) return 'data';
  if (/^<(?:!doctype|\?xml|html|head|body)\b/i.test(head) || /<(?:script|div|p|ul|ol|li|h[1-6]|br|span|table|meta|article|section)\b[^>]{0,500}>/i.test(head)) return 'page';
  return 'text';
}

/** Reads a recipe from whatever she pasted: page, data or words. Never throws. */
export function readAnything(text: string, vocabulary: ReaderVocabulary): Recipe {
  switch (kindOfText(text)) {
    case 'page':
      return readHtml(text, vocabulary);
    case 'data':
      return readJsonText(text, vocabulary);
    case 'text':
      return readRecipe(text, vocabulary);
  }
}
