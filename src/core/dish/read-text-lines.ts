import type { Span } from './recipe.ts';

/** One line of the text without its bullet, number and marks of emphasis. */
export interface TextLine extends Span {
  /** The number it was given: "3. Stir". */
  readonly number: number | null;
  /** A bullet, checkbox or number stood before it. */
  readonly marked: boolean;
  /** Marked by an emoji and nothing else, as titles are too. */
  readonly emojiOnly: boolean;
  /** Markdown's "# ". */
  readonly hash: boolean;
  /** Set off as a whole: "**Sauce**". */
  readonly strong: boolean;
  readonly blankBefore: boolean;
}

const lineEnds = /\r\n|[\n\r\u0085\u2028\u2029\v\f]/g;
const bullet = /^(?:[*•·▪●○◦‣∙>✓✔☐☑☒□■◻◽▢➤►»+]|[-–—−](?!\d)|[-–—](?=\s)|\[\s{0,3}[xX✓]?\s{0,3}\]|\p{Extended_Pictographic}|\p{Emoji_Modifier}|[\u200d\ufe0f\u200b\u2060\ufeff]|\*\*|__|#{1,6}(?=\s))\s*/u;
const numbered = /^(?:step\s{0,3})?(\d{1,2})\s{0,2}(?:[.):]|\s-(?=\s+[^\s\d]))\s+(?=\S)|^step\s{0,3}(\d{1,2})\s{0,2}[.:)-]?\s*/i;

interface Place {
  readonly start: number;
  readonly end: number;
  readonly blankBefore: boolean;
  /** Dashes right before figures are bullets here, not minus signs. */
  readonly dashed: boolean;
}

function readLine(text: string, { start, end, blankBefore, dashed }: Place): TextLine | null {
  let from = start;
  let marked = false;
  let emojiOnly = true;
  let hash = false;
  let strong = false;
  for (let n = 0; n < 8; n++) {
    while (from < end && /[\s\u200b\ufeff]/.test(text[from]!)) from++;
    const head = text.slice(from, Math.min(end, from + 16));
    const match = bullet.exec(head) ?? (dashed && !marked ? /^[-–—−](?=[\d¼-¾⅐-⅞])/.exec(head) : null);
    if (!match || match[0] === '') break;
    strong ||= /^(?:\*\*|__)/.test(head);
    hash ||= head.startsWith('#');
    marked = true;
    emojiOnly &&= !/^[\p{P}\p{S}]\s*$|^\[/u.test(match[0]) || /^\p{Extended_Pictographic}/u.test(match[0]);
    from += match[0].length;
  }
  let to = end;
  strong &&= /[*_]\s*$/.test(text.slice(Math.max(from, end - 4), end));
  while (to > from && /[\s*_\u200b\ufeff]/.test(text[to - 1]!)) to--;
  const number = numbered.exec(text.slice(from, Math.min(to, from + 24)));
  if (number) from += number[0].length;
  return to > from || number ? { start: Math.min(from, to), end: to, number: number ? Number(number[1] ?? number[2]) : null, marked: marked || number !== null, emojiOnly: emojiOnly && number === null, hash, strong, blankBefore } : null;
}

/** One line without its bullet, box, number and marks of emphasis; the line itself when nothing else is in it. */
export function bareLine(text: string, span: Span): Span {
  return readLine(text, { ...span, blankBefore: false, dashed: false }) ?? span;
}

/** The lines of a text that hold anything, in order. */
export function readTextLines(text: string): TextLine[] {
  const lines: TextLine[] = [];
  const dashes = text.match(/^[^\S\n]{0,8}[-–—−][\d¼-¾⅐-⅞]/gm)?.length ?? 0;
  const figures = text.match(/^[^\S\n]{0,8}[\d¼-¾⅐-⅞]/gm)?.length ?? 0;
  const dashed = dashes > 1 && dashes >= figures;
  let start = 0;
  let blank = false;
  const close = (end: number): void => {
    const line = readLine(text, { start, end, blankBefore: blank, dashed });
    blank = line === null;
    if (line) lines.push(line);
  };
  for (const match of text.matchAll(lineEnds)) {
    close(match.index);
    start = match.index + match[0].length;
  }
  close(text.length);
  return lines;
}

/** Sentences of a paragraph: cut behind . ! ? before a new start, not behind an abbreviation or inside a number. */
export function readSentences(text: string, { start, end }: Span): Span[] {
  const sentences: Span[] = [];
  let from = start;
  const ends = /[.!?]["')\]]?\s+(?=[\p{Lu}\d"'(])|[.!?]\s*$/gu;
  const anyCase = /[.!?]["')\]]?\s+(?=[\p{L}\d"'(])|[.!?]\s*$/gu;
  // A message without a capital letter: any new word behind a full stop begins a sentence.
  const small = !/\p{Lu}/u.test(text.slice(start, end)) && end - start > 60;
  for (const match of text.slice(start, end).matchAll(small ? anyCase : ends)) {
    const at = start + match.index;
    const before = text.slice(Math.max(from, at - 6), at).toLowerCase();
    if (/(?:^|[\s\d(])(?:tbsp|tsp|tbs|oz|lb|lbs|min|mins|hr|hrs|approx|ca|c|no|fl|pt|g|kg|ml|st|e\.g|i\.e|dr|mr|mrs|\d)$/.test(before) && /\d/.test(text[at + match[0].length] ?? '') ) continue;
    // "spin. 100 g": a word cut short, not a sentence
    if (/^\p{L}{1,6}$/u.test(text.slice(from, at).trim()) && /[\d\p{Ll}]/u.test(text[at + match[0].length] ?? '')) continue;
    sentences.push({ start: from, end: at + 1 });
    from = at + match[0].length;
  }
  if (text.slice(from, end).trim() !== '') sentences.push({ start: from, end });
  return sentences;
}
