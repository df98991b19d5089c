import type { Finding, IngredientLine, LineRemark, Recipe, Span } from './recipe.ts';
import { readLayout } from './read-layout.ts';
import { readIngredientLine } from './read-line.ts';
import { usSigns } from './read-measures.ts';
import { foodsInMethod } from './read-method-foods.ts';
import { readSteps } from './read-steps.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

/** Characters and ingredient lines that are read; what lies behind is named in a finding. A cookery book chapter is under 100,000. */
const mostCharacters = 200_000;
const mostLines = 1_000;

/** What a section's heading says of all its lines: "To serve", "For the garnish". */
function sectionRemark(section: string | null, vocabulary: ReaderVocabulary): LineRemark | null {
  const words = section?.toLowerCase().replace(/^(?:for )?the /, '').trim() ?? '';
  const { remarks } = vocabulary.words;
  return Object.hasOwn(remarks, words) ? remarks[words]! : Object.hasOwn(remarks, `for ${words}`) ? remarks[`for ${words}`]! : null;
}

/** "Marinade: 3 tbsp tamari", "to serve: lemon wedges": the part of the dish before the colon, and where the line itself begins. */
function partBefore(line: string, vocabulary: ReaderVocabulary): { readonly part: string; readonly length: number } | null {
  const [whole = '', written = ''] = /^\s*([\p{L} ]{3,30}?)\s*:\s*(?=\S)/u.exec(line) ?? [];
  const part = written.toLowerCase().replace(/^(?:for )?(?:the |a )?/, '');
  const { parts, remarks } = vocabulary.words;
  const known = parts.includes(part) || Object.hasOwn(remarks, written.toLowerCase()) || Object.hasOwn(remarks, `for ${part}`);
  return written !== '' && known ? { part: written, length: whole.length } : null;
}

/** The ingredient lines of stretches of text, numbered l1, l2 …, with what there is to ask about them. */
export function readLines(text: string, stretches: readonly (Span & { readonly section: string | null })[], vocabulary: ReaderVocabulary): { lines: IngredientLine[]; findings: Finding[] } {
  const lines: IngredientLine[] = [];
  const findings: Finding[] = [];
  for (const whole of stretches) {
    const before = partBefore(text.slice(whole.start, whole.end), vocabulary);
    const stretch = before ? { start: whole.start + before.length, end: whole.end, section: before.part } : whole;
    if (lines.length >= mostLines) {
      findings.push({ code: 'too-many-lines', lineId: null, data: { read: lines.length, at: stretch.start }, severity: 'warning' });
      break;
    }
    const said = sectionRemark(stretch.section, vocabulary);
    for (const { problems, ...line } of readIngredientLine(text, stretch, vocabulary)) {
      const id = `l${lines.length + 1}`;
      lines.push({ id, section: stretch.section, ...line, remarks: said === null || line.remarks.includes(said) ? line.remarks : [...line.remarks, said] });
      for (const problem of problems) findings.push({ ...problem, lineId: id });
    }
  }
  return { lines, findings };
}

/** A title without pictures and without a bracket that only tells a time ("ready in 25!"). */
function titleOf(written: string, vocabulary: ReaderVocabulary): string | null {
  const plain = written.replace(/[\p{Extended_Pictographic}\p{Emoji_Modifier}\u200d\ufe0f]+/gu, ' ').replace(/\s+/g, ' ').trim();
  const bracket = /^(.+?)\s*\(([^()]{1,40})\)$/.exec(plain);
  const inside = bracket?.[2]?.toLowerCase() ?? '';
  const timing = vocabulary.words.timings.some((word) => inside === word || inside.startsWith(`${word} `)) || /^\d+\s?(?:min|hour|hr)/.test(inside);
  return (bracket && timing ? bracket[1]! : plain) || null;
}

/**
 * Reads a recipe as somebody wrote, pasted or dictated it. Never throws; takes time linear in the text.
 * What cannot be read is kept as a line of low confidence or named in a finding.
 */
export function readRecipe(text: string, vocabulary: ReaderVocabulary): Recipe {
  const cut = text.length > mostCharacters;
  const readable = cut ? text.slice(0, mostCharacters) : text;
  const layout = readLayout(readable, vocabulary);
  const told = layout.ingredients.length > 0 ? [] : foodsInMethod(readable, layout.steps, vocabulary);
  const { lines, findings } = readLines(text, layout.ingredients.length > 0 ? layout.ingredients : told.map((span) => ({ ...span, section: null })), vocabulary);
  const steps = readSteps(text, layout.steps, lines, vocabulary);
  const all: Finding[] = [...findings];
  if (cut) all.push({ code: 'text-cut', lineId: null, data: { read: mostCharacters, length: text.length }, severity: 'warning' });
  for (const span of layout.leftOut.slice(0, 50)) all.push({ code: 'left-out', lineId: null, data: { text: text.slice(span.start, Math.min(span.end, span.start + 120)), start: span.start, end: span.end }, severity: 'note' });
  if (layout.lists > 1) all.push({ code: 'several-recipes', lineId: null, data: { count: layout.lists }, severity: 'warning' });
  const us = usSigns(readable, lines, vocabulary);
  if (us) all.push({ code: 'us-measures', lineId: null, data: { cups: us.cups, signs: [...(us.fahrenheit ? ['°F'] : []), ...us.words].join(', ') }, severity: 'question' });
  if (told.length > 0) all.push({ code: 'ingredients-from-method', lineId: null, data: { count: lines.length }, severity: 'warning' });
  if (lines.length === 0) all.push({ code: 'no-ingredients', lineId: null, data: {}, severity: 'warning' });
  if (layout.servings === null) all.push({ code: 'no-servings', lineId: null, data: {}, severity: 'question' });
  return { title: layout.title ? titleOf(text.slice(layout.title.start, layout.title.end), vocabulary) : null, servings: layout.servings, lines, steps, findings: all, text };
}
