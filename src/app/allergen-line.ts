import { allergenLineText } from '../messages/allergen-line.ts';
import type { AllergenReport } from './change-report.ts';

/** The allergens of a dish as one line under a film: what it contains, what it may, and what is not known. It never says "free from". */
export function allergenLine(report: AllergenReport): string {
  const named = (state: string): string[] => report.items.filter((item) => item.state === state).map((item) => item.name.toLowerCase());
  return allergenLineText({ contains: named('contains'), may: named('may'), unknown: named('unknown') });
}
