import type { CycleShape } from '../cycle/index.ts';
import type { Scheme, SchemeRule, WindowEdge } from './scheme.ts';

/** The cycle day (1-based) that an edge falls on in a cycle. */
function edgeDay(edge: WindowEdge, cycle: CycleShape, stretch: number): number {
  switch (edge.anchor) {
    case 'period-start':
      return edge.day * stretch;
    case 'ovulation':
      return cycle.ovulationDay + edge.day;
    case 'next-period':
      return cycle.length + 1 + edge.day;
  }
}

/** Whether a rule holds on cycle day `day` of a cycle. A stretched first day begins the day after the stretched day before it, so neighbouring windows still meet. */
export function ruleHolds(scheme: Scheme, rule: SchemeRule, cycle: CycleShape, day: number): boolean {
  if (day < 1 || day > cycle.length) return false;
  const { from, to, stretch } = rule.window;
  const factor = stretch === 'scaled' ? cycle.length / scheme.textbook.length : 1;
  const first = from.anchor === 'period-start' && factor !== 1 ? Math.round((from.day - 1) * factor) + 1 : edgeDay(from, cycle, 1);
  const last = Math.round(edgeDay(to, cycle, to.anchor === 'period-start' ? factor : 1));
  return day >= first && day <= last;
}

/** The fixed days of a rule: as its author gave them, else where the window falls in the textbook cycle. */
export function fixedDaysOf(scheme: Scheme, rule: SchemeRule): { from: number; to: number | null } {
  if (rule.fixedDays) return rule.fixedDays;
  const textbook: CycleShape = { length: scheme.textbook.length, ovulationDay: scheme.textbook.ovulationDay, bleedDays: 5 };
  const to = rule.window.to.anchor === 'next-period' && rule.window.to.day === -1 ? null : edgeDay(rule.window.to, textbook, 1);
  return { from: edgeDay(rule.window.from, textbook, 1), to };
}

/** Whether the fixed-day scheme would give a rule on cycle day `day`. */
export function fixedRuleHolds(scheme: Scheme, rule: SchemeRule, day: number): boolean {
  const { from, to } = fixedDaysOf(scheme, rule);
  return day >= from && (to === null || day <= to);
}
