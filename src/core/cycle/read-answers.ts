import type { DayEntry } from './record.ts';
import type { CriterionId, ReferralParameters } from './referral-parameters.ts';

/** Referral questions that a line of hers answers with yes; "no clots" answers none. */
export function answersIn(line: string, questions: ReferralParameters['questions']): CriterionId[] {
  const lower = line.toLowerCase();
  return questions.filter((q) => q.words.some((word) => {
    const at = lower.indexOf(word);
    return at >= 0 && !/\b(?:no|not|never|without|don't|doesn't)\s+(?:\w+\s+){0,2}$/.test(lower.slice(0, at));
  })).map((q) => q.id);
}

/** The same from notes by day, and from items with such a name that she rated above the least. */
export function answersInDays(days: readonly DayEntry[], questions: ReferralParameters['questions']): CriterionId[] {
  const found = new Set<CriterionId>();
  for (const day of days) {
    if (day.note) for (const id of answersIn(day.note, questions)) found.add(id);
    for (const [item, rating] of day.ratings) if (rating >= 3) for (const id of answersIn(item, questions)) found.add(id);
  }
  return [...found];
}
