import type { BoundedChange, FixedComparison, RuleAdvice, Scheme, SchemeProblem } from '../core/scheme/index.ts';
import { dayCount } from './days.ts';

const words: Record<SchemeProblem['code'], (d: SchemeProblem['data']) => string> = {
  missing: () => 'is missing',
  'not-text': () => 'should be words',
  'not-number': () => 'should be a number',
  'not-a-list': () => 'should be a list',
  'unknown-word': (d) => `“${d['value']}” is not known here; use one of: ${d['known']}`,
  'out-of-range': (d) => `${d['value']} is outside ${d['from']} to ${d['to']}`,
  'unknown-key': (d) => `is not part of a scheme; known here: ${d['known']}`,
  'same-id': () => 'stands twice; give each rule its own id',
  'window-backwards': (d) => `ends (${d['to']}) before it begins (${d['from']})`,
  'unknown-nutrient': (d) => `“${d['value']}” is not a nutrient; use energy, carbohydrate, fat, protein, fibre or an id such as iron`,
};

/** What is wrong with a scheme, where, and how to mend it. */
export function schemeProblemText(problem: SchemeProblem): string {
  return `${problem.at}: ${words[problem.code](problem.data)}.`;
}

/** Everything a rule advises in one line. */
export function adviceText(advice: RuleAdvice): string {
  const parts = [
    ...advice.emphasis.map((e) => `${e.direction} ${e.what}`),
    advice.favour.length > 0 ? `favour ${advice.favour.join(', ')}` : '',
    advice.leave.length > 0 ? `leave ${advice.leave.join(', ')}` : '',
    advice.fastingHours === null ? '' : `${advice.fastingHours} hours without food over the night`,
    advice.energyKcal === null ? '' : `${Math.round(advice.energyKcal)} kcal a day`,
    advice.carbohydrateG === null ? '' : `${Math.round(advice.carbohydrateG)} g carbohydrate a day`,
    advice.proteinG === null ? '' : `${Math.round(advice.proteinG)} g protein a day`,
    advice.training ? `training: ${advice.training}` : '',
    advice.heatAndCold ? `heat and cold: ${advice.heatAndCold}` : '',
    advice.workload ? `work: ${advice.workload}` : '',
    advice.sleep ? `sleep: ${advice.sleep}` : '',
  ];
  return parts.filter((p) => p !== '').join('; ');
}

/** On how many days the fixed-day scheme parts from the anchored one. */
export function comparisonText(c: FixedComparison): string {
  return `Counted in fixed days this scheme would say something else on ${dayCount(Math.round(c.days.mean))} of a cycle of about ${Math.round(c.cycleLength)} (eight times in ten ${c.days.low} to ${c.days.high}).`;
}

const kinds: Record<BoundedChange['what'], string> = { fasting: 'fasting', 'low-energy': 'eating below her energy need', 'low-carbohydrate': 'little carbohydrate', 'low-protein': 'too little protein' };

/** What a bound took out of a rule or raised. */
export function schemeChangeText(scheme: Scheme, change: BoundedChange): string {
  return `${scheme.rules.find((r) => r.id === change.ruleId)?.title ?? change.ruleId}: ${kinds[change.what]} was ${change.done === 'removed' ? 'taken out' : `raised to ${Math.round(change.floor ?? 0)}`}.`;
}
