import { describe, expect, it } from 'vitest';
import { compileCycle } from '../../../scripts/tables/cycle.ts';
import { knownSources } from '../../../scripts/tables/known-sources.ts';
import { addDays, day, type Day } from '../calendar/index.ts';
import { seededRandom } from '../quantity/index.ts';
import { dayFromPeriod } from './daily-ratings.ts';
import { benjaminiHochberg, menuChange, permutationChance } from './menu-change.ts';
import { ratingCurve } from './rating-curve.ts';
import { emptyDay, type DayEntry } from './record.ts';
import { studentPoint } from './student-t.ts';

const { ratings: rules } = compileCycle('data', knownSources('data'));
const first = day('2025-01-05');
const startsOf = (n: number): Day[] => Array.from({ length: n }, (_, i) => addDays(first, 28 * i));

/** Ratings on the seven days before each start. */
function diary(starts: readonly Day[], rating: (cycle: number, item: string) => number, items: readonly string[] = ['bloating']): DayEntry[] {
  return starts.flatMap((start, c) => [-7, -6, -5, -4, -3, -2, -1].map((d) => ({ ...emptyDay(dayFromPeriod(start, d)), ratings: new Map(items.map((i) => [i, rating(c, i)])) })));
}

describe('before and after a change of menu', () => {
  const starts = startsOf(12);
  const changed = addDays(starts[6]!, -20);

  it('says nothing when cycles are too few, and how many are needed', () => {
    const few = startsOf(6);
    expect(menuChange(rules, diary(few, (c) => (c < 3 ? 5 : 1)), few, addDays(few[3]!, -20))).toEqual([{ kind: 'too-few', item: 'bloating', before: 3, after: 3, needed: 4 }]);
  });
  it('finds a great and lasting difference', () => {
    const [item] = menuChange(rules, diary(starts, (c) => (c < 6 ? 5 : 2) + (c % 2) * 0.5), starts, changed);
    expect(item).toMatchObject({ kind: 'compared', before: 6, after: 6, difference: -3, clear: true });
    if (item?.kind === 'compared') {
      expect(item.low).toBeLessThan(-3);
      expect(item.high).toBeGreaterThan(-3);
      expect(item.chance).toBeCloseTo(2 / 924, 6);
    }
  });
  it('finds none where there is none', () => {
    const [item] = menuChange(rules, diary(starts, (c) => 3 + (c % 3)), starts, changed);
    expect(item).toMatchObject({ kind: 'compared', clear: false });
  });
  it('leaves out a window that straddles the change', () => {
    const straddling = addDays(starts[6]!, -3);
    const [item] = menuChange(rules, diary(starts, () => 3), starts, straddling);
    expect(item).toMatchObject({ before: 6, after: 5 });
  });
  it('seldom calls chance clear, however many items are looked at', () => {
    const random = seededRandom(9);
    const items = Array.from({ length: 12 }, (_, i) => `item ${i}`);
    let any = 0;
    const runs = 60;
    for (let run = 0; run < runs; run += 1) {
      const draws = new Map<string, number>();
      const days = diary(starts, (c, i) => {
        const key = `${c} ${i}`;
        if (!draws.has(key)) draws.set(key, 1 + Math.floor(6 * random.uniform()));
        return draws.get(key)!;
      }, items);
      if (menuChange(rules, days, starts, changed).some((i) => i.kind === 'compared' && i.clear)) any += 1;
    }
    // 5 % expected; 12 of 60 would be far outside it.
    expect(any).toBeLessThan(12);
  });
});

describe('the statistics behind it', () => {
  it('permutation: counted by hand for two against two', () => {
    // Splits of 1, 2, 5, 6 in two and two: six, of which {1,2} and {5,6} are as far apart as seen.
    expect(permutationChance([1, 2], [5, 6])).toBeCloseTo(2 / 6, 10);
  });
  // Benjamini & Hochberg 1995, JRSS B 57:289: of m ordered chances, p(i) · m / i, made monotone from the largest down.
  it('false discovery: the worked order of four', () => {
    expect(benjaminiHochberg([0.01, 0.04, 0.03, 0.5])).toEqual([0.04, 0.16 / 3, 0.16 / 3, 0.5].map((x) => expect.closeTo(x, 10) as number));
  });
  it('Student: the closed forms for 1 and 2 degrees of freedom, and the normal far out', () => {
    expect(studentPoint(1)).toBeCloseTo(Math.tan(Math.PI * 0.475), 2);
    const p = 0.95;
    expect(studentPoint(2)).toBeCloseTo(p * Math.sqrt(2 / (1 - p * p)), 2);
    expect(studentPoint(500)).toBeCloseTo(1.965, 2);
  });
});

describe('the curve of an item by day from the period', () => {
  it('has an interval only from three cycles on, and no day 0', () => {
    const two = startsOf(2);
    const three = startsOf(3);
    expect(ratingCurve(rules, diary(two, (c) => 2 + c), two, 'bloating').every((p) => p.low === null)).toBe(true);
    const points = ratingCurve(rules, diary(three, (c) => 2 + c), three, 'bloating');
    expect(points.map((p) => p.day)).toEqual([-7, -6, -5, -4, -3, -2, -1]);
    // Ratings 2, 3, 4: mean 3, deviation 1, t(2) = 4.303, half 4.303 / √3 = 2.48, cut to the scale at 1.
    expect(points[0]).toMatchObject({ mean: 3, cycles: 3, low: 1 });
    expect(points[0]!.high).toBeCloseTo(5.48, 2);
  });
});
