import { baseForms, oneSpelling, type WordForms } from './forms.ts';

/** A word, number or mark of a text; offsets are characters of the whole text, end excluded. */
export interface Token {
  readonly kind: 'word' | 'number' | 'mark';
  readonly text: string;
  /** In one spelling and lower case. */
  readonly word: string;
  /** The word and its possible base forms. */
  readonly forms: readonly string[];
  readonly start: number;
  readonly end: number;
  /** Written together with the token before it ("hormone-balancing"). */
  readonly joined: boolean;
}

/** Words met before with their forms: the same word is taken apart once. */
export type SeenWords = Map<string, { readonly word: string; readonly forms: readonly string[] }>;
const mostSeen = 20_000;

const pattern = /#[\p{L}\p{N}_]+|\d+(?:[.,]\d+)*|\p{L}[\p{L}\p{M}]*(?:['\u2019\u02bc][\p{L}]+)*(?:['\u2019](?=\s|$))?|%|[^\s\p{L}\p{N}]/gu;
const numberWords = new Set(['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve', 'fifteen', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety', 'hundred', 'thousand']);

/** "#HormoneBalance" → Hormone Balance: the parts of a hashtag, each with its place in the text. */
function hashtagParts(text: string, start: number, known: (word: string) => boolean): { text: string; start: number }[] {
  const body = text.slice(1);
  const parts: { text: string; start: number }[] = [];
  let at = start + 1;
  for (const piece of body.split(/(?<=\p{Ll})(?=\p{Lu})|_|(?<=\p{L})(?=\p{N})/u)) {
    if (piece === '') continue;
    const place = start + 1 + body.indexOf(piece, at - start - 1);
    parts.push(...splitKnown(piece, place, known));
    at = place + piece.length;
  }
  return parts;
}

function splitKnown(piece: string, start: number, known: (word: string) => boolean): { text: string; start: number }[] {
  const low = piece.toLowerCase();
  if (known(low) || low.length < 6) return [{ text: piece, start }];
  for (let cut = low.length - 3; cut >= 3; cut--) {
    if (!known(low.slice(0, cut))) continue;
    const rest = splitKnown(piece.slice(cut), start + cut, known);
    if (rest.every((part) => known(part.text.toLowerCase()))) return [{ text: piece.slice(0, cut), start }, ...rest];
  }
  return [{ text: piece, start }];
}

/** Splits a stretch of text into tokens. `known` tells words of the vocabulary, to take hashtags apart. */
export function tokensOf(text: string, offset: number, words: { readonly forms: WordForms; known(word: string): boolean; readonly seen: SeenWords }): Token[] {
  const tokens: Token[] = [];
  const push = (piece: string, start: number): void => {
    const before = words.seen.get(piece);
    const spelt = before ?? { word: oneSpelling(piece, words.forms), forms: [] };
    const { word } = spelt;
    const kind = /^\d/.test(piece) || numberWords.has(word) ? 'number' : /^\p{L}/u.test(piece) ? 'word' : 'mark';
    const forms = before ? before.forms : kind === 'mark' ? [word] : baseForms(word, words.forms);
    if (!before && words.seen.size < mostSeen) words.seen.set(piece, { word, forms });
    tokens.push({ kind, text: piece, word, forms, start: start + offset, end: start + piece.length + offset, joined: start > 0 && /[^\s]/.test(text[start - 1] ?? ' ') && kind !== 'mark' && /[-\u2010\u2011/\p{L}\p{N}]/u.test(text[start - 1] ?? '') });
  };
  for (const match of text.matchAll(pattern)) {
    const piece = match[0];
    if (piece === '-' || piece === '\u2010' || piece === '\u2011') {
      const inside = /[\p{L}\p{N}]/u.test(text[match.index - 1] ?? '') && /[\p{L}\p{N}]/u.test(text[match.index + 1] ?? '');
      if (inside) continue; // A hyphen only joins: the next token says so.
    }
    if (piece.startsWith('#') && piece.length > 1) for (const part of hashtagParts(piece, match.index, (w) => words.known(w))) push(part.text, part.start);
    else push(piece, match.index);
  }
  return tokens;
}
