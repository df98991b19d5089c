import type { Unit } from '../quantity/index.ts';
import type { Row } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

/** The unit written at a place and the token after it; abbreviation dots are passed over. */
export function readUnit(row: Row, at: number, vocabulary: ReaderVocabulary): { unit: Unit; next: number } | null {
  if (['"', '″', '”'].includes(row.words[at] ?? '') && row.tokens[at - 1]?.kind === 'number' && !row.tokens[at]!.spaced) return { unit: vocabulary.units.get('inch'), next: at + 1 };
  let phrase = '';
  let found: { unit: Unit; next: number } | null = null;
  let next = at;
  for (let n = 0; n < 3; n++) {
    const token = row.tokens[next];
    if (token?.kind !== 'word') break;
    const text = token.text.replace(/[‐‑]/g, '-');
    phrase = n === 0 ? text : `${phrase} ${text}`;
    next++;
    const dot = row.words[next] === '.' && row.tokens[next]!.spaced === false;
    const unit = (dot ? vocabulary.units.spelled(`${phrase}.`) : null) ?? vocabulary.units.spelled(phrase);
    if (dot) next++;
    if (unit) found = { unit, next };
  }
  return found;
}

/** Whether a unit measures: a stated weight, volume or length, not a count. */
export const measures = (unit: Unit): boolean => unit.kind !== 'count';
