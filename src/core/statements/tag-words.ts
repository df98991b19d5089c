import { classOfTag, spokenFor, tagCount } from './claim-tags.ts';

// Looked up in the inmost loops: a name of this file's own.
const tags = tagCount;

/** What a tag weighs after another, `follow[a * tags + b]`, and e to the power of it. */
export interface TagOrder {
  readonly follow: Float64Array;
  readonly odds: Float64Array;
}

export function tagOrder(follow: Float32Array): TagOrder {
  return { follow: Float64Array.from(follow), odds: Float64Array.from(follow, Math.exp) };
}

/** The most likely row of tags (A. Viterbi, 1967). */
export function bestTags(scores: readonly Float64Array[], { follow }: TagOrder): number[] {
  const from: Int16Array[] = [];
  let last = scores[0]?.slice() ?? new Float64Array(tags);
  for (let i = 1; i < scores.length; i++) {
    const now = new Float64Array(tags).fill(-Infinity);
    const back = new Int16Array(tags);
    for (let a = 0, at = 0; a < tags; a++) {
      const so = last[a]!;
      for (let b = 0; b < tags; b++, at++) {
        const value = so + follow[at]!;
        if (value <= now[b]!) continue;
        now[b] = value;
        back[b] = a;
      }
    }
    const here = scores[i]!;
    for (let b = 0; b < tags; b++) now[b]! += here[b]!;
    from[i] = back;
    last = now;
  }
  const row: number[] = [];
  if (scores.length === 0) return row;
  let at = last.indexOf(Math.max(...last));
  for (let i = scores.length - 1; i >= 0; i--) {
    row[i] = at;
    at = from[i]?.[at] ?? 0;
  }
  return row;
}

/** Makes the numbers of a list sum to 1. */
function evenOut(values: Float64Array): void {
  let sum = 0;
  for (const v of values) sum += v;
  if (sum > 0) for (let t = 0; t < values.length; t++) values[t]! /= sum;
}

function raised(scores: Float64Array): Float64Array {
  let most = -Infinity;
  for (const s of scores) if (s > most) most = s;
  const out = new Float64Array(scores.length);
  for (let t = 0; t < out.length; t++) out[t] = Math.exp(scores[t]! - most);
  return out;
}

/** `into[b]` = sum over a of `from[a] * odds[a][b]`. */
function stepOn(from: Float64Array, odds: Float64Array, into: Float64Array): void {
  for (let a = 0, at = 0; a < tags; a++) {
    const share = from[a]!;
    for (let b = 0; b < tags; b++, at++) into[b]! += share * odds[at]!;
  }
}

/** `into[a]` = sum over b of `odds[a][b] * from[b]`. */
function stepBack(from: Float64Array, odds: Float64Array, into: Float64Array): void {
  for (let a = 0, at = 0; a < tags; a++) {
    let sum = 0;
    for (let b = 0; b < tags; b++, at++) sum += odds[at]! * from[b]!;
    into[a] = sum;
  }
}

function multiply(row: Float64Array, by: Float64Array): void {
  for (let t = 0; t < row.length; t++) row[t]! *= by[t]!;
  evenOut(row);
}

/** How likely each class is at each word, 0 to 1, over all rows of tags (forward and backward sums; L. Rabiner, 1989). */
export function classChances(scores: readonly Float64Array[], { odds }: TagOrder): Float64Array[] {
  const here = scores.map(raised);
  const ahead: Float64Array[] = [];
  for (let i = 0; i < here.length; i++) {
    const row = new Float64Array(tags);
    const before = ahead[i - 1];
    if (before) stepOn(before, odds, row);
    else row.fill(1);
    multiply(row, here[i]!);
    ahead.push(row);
  }
  const chances: Float64Array[] = [];
  const behind = new Float64Array(tags).fill(1);
  for (let i = here.length - 1; i >= 0; i--) {
    const classes = new Float64Array(spokenFor.length);
    for (let t = 0; t < tags; t++) classes[classOfTag(t)]! += ahead[i]![t]! * behind[t]!;
    evenOut(classes);
    chances[i] = classes;
    const after = behind.slice();
    multiply(after, here[i]!);
    stepBack(after, odds, behind);
    evenOut(behind);
  }
  return chances;
}
