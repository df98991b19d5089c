import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { classOfTag, spokenFor, tagCount } from './claim-tags.ts';
import { bestTags, classChances, tagOrder, type TagOrder } from './tag-words.ts';

const number = fc.double({ min: -3, max: 3, noNaN: true });
// Only the first few tags are in play, so that all rows of tags can be tried one by one.
const inPlay = 4;
const never = -60;
const scoresOf = (rows: readonly (readonly number[])[]): Float64Array[] => rows.map((row) => Float64Array.from({ length: tagCount }, (_, t) => row[t] ?? never));
const followOf = (table: readonly (readonly number[])[]): TagOrder => tagOrder(Float32Array.from({ length: tagCount * tagCount }, (_, k) => table[Math.floor(k / tagCount)]?.[k % tagCount] ?? 0));
const table = (rows: number) => fc.array(fc.array(number, { minLength: inPlay, maxLength: inPlay }), { minLength: rows, maxLength: rows });

function allRows(length: number): number[][] {
  return length === 0 ? [[]] : allRows(length - 1).flatMap((row) => Array.from({ length: inPlay }, (_, t) => [...row, t]));
}
function weight(tags: readonly number[], scores: readonly Float64Array[], { follow }: TagOrder): number {
  return tags.reduce((sum, t, i) => sum + (scores[i]?.[t] ?? 0) + (i > 0 ? (follow[(tags[i - 1] ?? 0) * tagCount + t] ?? 0) : 0), 0);
}

describe('the row of tags of a sentence', () => {
  it('is the heaviest of all rows', () => {
    fc.assert(fc.property(table(4), table(inPlay), (s, f) => {
      const [scores, follow] = [scoresOf(s), followOf(f)];
      const best = Math.max(...allRows(4).map((row) => weight(row, scores, follow)));
      expect(weight(bestTags(scores, follow), scores, follow)).toBeCloseTo(best, 6);
    }));
  });
  it('gives each class at each word the share that it has among all rows', () => {
    fc.assert(fc.property(table(3), table(inPlay), (s, f) => {
      const [scores, follow] = [scoresOf(s), followOf(f)];
      const rows = allRows(3).map((tags) => ({ tags, share: Math.exp(weight(tags, scores, follow)) }));
      const total = rows.reduce((sum, row) => sum + row.share, 0);
      classChances(scores, follow).forEach((here, i) => {
        expect(here.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
        spokenFor.forEach((_, c) => expect(here[c]).toBeCloseTo(rows.filter((row) => classOfTag(row.tags[i] ?? 0) === c).reduce((sum, row) => sum + row.share, 0) / total, 6));
      });
    }));
  });
  it('is empty for a sentence without words', () => {
    expect(bestTags([], followOf([]))).toEqual([]);
    expect(classChances([], followOf([]))).toEqual([]);
  });
});
