/**
 * Damerau-Levenshtein distance in its optimal string alignment form (a swap of two neighbours
 * counts one; Damerau 1964, Levenshtein 1966), or `limit + 1` as soon as it must exceed `limit`.
 */
export function editDistance(a: string, b: string, limit: number): number {
  const over = limit + 1;
  if (Math.abs(a.length - b.length) > limit) return over;
  if (a === b) return 0;
  const width = b.length + 1;
  let before: number[] = new Array<number>(width).fill(0);
  let last: number[] = Array.from({ length: width }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row: number[] = [i];
    let least = i;
    for (let j = 1; j < width; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      let d = Math.min((last[j] ?? over) + 1, (row[j - 1] ?? over) + 1, (last[j - 1] ?? over) + cost);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) d = Math.min(d, (before[j - 2] ?? over) + 1);
      row.push(d);
      if (d < least) least = d;
    }
    if (least > limit) return over;
    before = last;
    last = row;
  }
  return Math.min(last[b.length] ?? over, over);
}

// With so many letters right at the start, a word of six or seven may hold two slips ("lentles").
const rightStart = 4;

/** How many slips a word of that length may hold and still be read: none up to 3 letters, one up to 7, two beyond. */
export function slipsAllowed(length: number): number {
  if (length < 4) return 0;
  return length < 8 ? 1 : 2;
}

// Below this length one other letter is as likely another word: "shard" is not a slip of "shark".
const longEnoughForOtherLetter = 6;

function isOneOtherLetter(a: string, b: string): boolean {
  return a.length === b.length && [...a].filter((letter, i) => letter !== b[i]).length === 1;
}

/**
 * Whether `typed` can be a slip of `word`. People seldom miss the first
 * letter (counts reviewed by Kukich 1992, from memory), so it must stand or be swapped with the second.
 */
export function isSlipOf(typed: string, word: string): number | null {
  const shorter = Math.min(typed.length, word.length);
  const limit = shorter >= 6 && typed.slice(0, rightStart) === word.slice(0, rightStart) ? 2 : slipsAllowed(shorter);
  if (limit === 0) return null;
  const firstHolds = typed[0] === word[0] || (typed[0] === word[1] && typed[1] === word[0]);
  if (!firstHolds) return null;
  const distance = editDistance(typed, word, limit);
  if (distance > limit) return null;
  return isOneOtherLetter(typed, word) && typed.length < longEnoughForOtherLetter ? null : distance;
}

/**
 * The same where a neighbouring word already speaks for `word` ("frsh yeast"): shorter words and
 * a wrong first letter are let through.
 */
export function isSlipInContext(typed: string, word: string): number | null {
  const shorter = Math.min(typed.length, word.length);
  if (shorter < 3) return null;
  const limit = shorter < 7 ? 1 : 2;
  const distance = editDistance(typed, word, limit);
  return distance <= limit ? distance : null;
}
