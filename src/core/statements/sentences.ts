/** A sentence of a script with its place: character offsets, end excluded. */
export interface Sentence {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

const shortened = /(?:\b(?:dr|mr|mrs|ms|prof|approx|vs|e\.g|i\.e|etc|no|st|min|tbsp|tsp)|\b[A-Z])\.$/i;

/** Splits a script, caption or voice-over into sentences: at full stops, question and exclamation marks, line ends, bullets and hashtags. */
export function sentencesOf(text: string): Sentence[] {
  const sentences: Sentence[] = [];
  let start = 0;
  const close = (end: number): void => {
    const raw = text.slice(start, end);
    const lead = raw.length - raw.trimStart().length;
    const trimmed = raw.trim();
    if (/[\p{L}\p{N}]/u.test(trimmed)) sentences.push({ text: trimmed, start: start + lead, end: start + lead + trimmed.length });
    start = end;
  };
  for (let i = 0; i < text.length; i++) {
    const c = text[i] ?? '';
    if (c === '\n' || c === '\u2022') close(i + 1);
    else if (c === '#' && /\s/.test(text[i - 1] ?? '') && /\p{L}/u.test(text[i + 1] ?? '')) close(i);
    else if (/[.!?\u2026]/.test(c)) {
      const next = text[i + 1] ?? ' ';
      if (c === '.' && shortened.test(text.slice(Math.max(start, i - 12), i + 1)) && !/^\s+[A-Z]?[a-z]*\s*$/.test(text.slice(i + 1))) continue;
      if (/[.!?\u2026"'\u201d\u2019)]/.test(next)) continue;
      if (!/\s/.test(next) && i + 1 < text.length) continue;
      close(i + 1);
    } else if (/["'\u201d\u2019)]/.test(c) && /[.!?\u2026]/.test(text[i - 1] ?? '') && /\s/.test(text[i + 1] ?? ' ')) close(i + 1);
  }
  close(text.length);
  return sentences;
}
