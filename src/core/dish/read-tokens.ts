import type { Span } from './recipe.ts';

export interface Token extends Span {
  readonly kind: 'word' | 'number' | 'mark';
  /** As written. */
  readonly text: string;
  /** Lower case, straight apostrophes and hyphens. */
  readonly word: string;
  /** The number read, NaN for other kinds. */
  readonly value: number;
  /** Written as a fraction: `1/2` or `½`. */
  readonly fraction: boolean;
  /** White space stands before it. */
  readonly spaced: boolean;
}

/** A stretch of text as tokens, with their words in a row of their own for phrase look-ups. */
export interface Row {
  readonly tokens: readonly Token[];
  readonly words: readonly string[];
  /** The whole text that the offsets point into. */
  readonly text: string;
}

const vulgar: Readonly<Record<string, number>> = {
  '¼': 1 / 4, '½': 1 / 2, '¾': 3 / 4, '⅐': 1 / 7, '⅑': 1 / 9, '⅒': 1 / 10, '⅓': 1 / 3, '⅔': 2 / 3, '⅕': 1 / 5, '⅖': 2 / 5,
  '⅗': 3 / 5, '⅘': 4 / 5, '⅙': 1 / 6, '⅚': 5 / 6, '⅛': 1 / 8, '⅜': 3 / 8, '⅝': 5 / 8, '⅞': 7 / 8,
};

// No part of the pattern can match the same text in two ways, so it runs in linear time.
const pattern = /(\d{1,4} ?[/⁄∕] ?\d{1,4}(?!\d))|((?:(?<=^|[\s(])\.)?\d+(?:[.,]\d+)*)|([¼½¾⅐-⅞])|(\p{L}[\p{L}\p{M}]*(?:['’‘‐‑-]\p{L}[\p{L}\p{M}]*)*)|[\p{Extended_Pictographic}\p{Emoji_Modifier}\u200d\ufe0f\u20e3]|(\S)/gu;

/** `1.5`, `1,5` and `0,250` are decimals; `1,000` and `1,500.5` have a thousands comma. */
export function readDigits(text: string): number {
  if (!/[.,]/.test(text)) return Number(text);
  if (/^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(text)) return Number(text.replaceAll(',', ''));
  if (/^\d*[.,]\d+$/.test(text)) return Number(text.replace(',', '.'));
  if (/^[1-9]\d{0,2}(\.\d{3})+,\d+$/.test(text)) return Number(text.replaceAll('.', '').replace(',', '.'));
  return NaN;
}

function readFraction(text: string): number {
  const [top, bottom] = text.split(/[/⁄∕]/).map(Number);
  return top! / bottom!;
}

const plain = (text: string): string => text.toLowerCase().replace(/[’‘]/g, "'").replace(/[‐‑]/g, '-');

/** The tokens between two offsets of the text. */
export function readTokens(text: string, { start, end }: Span): Row {
  const tokens: Token[] = [];
  const slice = text.slice(start, end);
  let last = 0;
  for (const match of slice.matchAll(pattern)) {
    const [whole, fraction, digits, glyph, word, mark] = match;
    if ((fraction ?? digits ?? glyph ?? word ?? mark) === undefined) continue; // emojis say nothing
    const value = fraction !== undefined ? readFraction(fraction) : digits !== undefined ? readDigits(digits) : glyph !== undefined ? vulgar[glyph]! : NaN;
    const kind = Number.isFinite(value) ? 'number' : word !== undefined ? 'word' : 'mark';
    // "Salt n pepper": the letter stands for the sign.
    const joins = word === 'n' && tokens.at(-1)?.kind === 'word';
    tokens.push({
      kind: joins ? 'mark' : kind,
      text: whole,
      word: joins ? '&' : plain(whole),
      value,
      fraction: (fraction ?? glyph) !== undefined,
      spaced: match.index > last || match.index === 0,
      start: start + match.index,
      end: start + match.index + whole.length,
    });
    last = match.index + whole.length;
  }
  return { tokens, words: tokens.map((token) => token.word), text };
}

/** The row from one token to another, end excluded. */
export function partOfRow(row: Row, from: number, to: number): Row {
  return { tokens: row.tokens.slice(from, to), words: row.words.slice(from, to), text: row.text };
}

/** The words of the tokens from one to another as written, with single spaces. */
export function wordsOf(row: Row, from: number, to: number): string {
  let out = '';
  for (let at = from; at < to; at++) {
    const token = row.tokens[at];
    if (token) out += at > from && token.spaced ? ` ${token.text}` : token.text;
  }
  return out;
}

/** Rows one behind the other; a gap between them counts as white space. */
export function joinRows(first: Row, second: Row): Row {
  const [head, ...rest] = second.tokens;
  if (!head || first.tokens.length === 0) return first.tokens.length === 0 ? second : first;
  const tokens = [...first.tokens, head.spaced || head.kind === 'mark' ? head : { ...head, spaced: true }, ...rest];
  return { tokens, words: tokens.map((token) => token.word), text: first.text };
}
