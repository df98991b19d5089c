import type { Scheme } from '../core/scheme/index.ts';
import type { CycleWords } from '../messages/cycle-words.ts';

/** What GET /api/cycle gives: what can be chosen. */
export interface CycleStart {
  readonly schemes: readonly Scheme[];
  readonly regions: readonly string[];
  readonly questions: readonly string[];
}

/** A picture as the page shows it: SVG, caption, the same as a table. */
export interface CyclePicture {
  readonly svg: string;
  readonly caption: string;
  readonly table: { readonly caption: string; readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

/** What POST /api/cycle gives: a report in words and pictures. */
export interface CycleAnswer {
  readonly schemeName: string;
  readonly words: CycleWords;
  readonly pictures: readonly CyclePicture[];
}
