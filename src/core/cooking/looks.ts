import type { PlannedStep } from './cook-plan.ts';

export interface Look {
  readonly step: string;
  readonly minute: number;
}

/** When to look at what runs by itself: every so many minutes from its start, before its end, at a moment when no cook is bound to a pan. */
export function looksOf(steps: readonly PlannedStep[], cooks: number): readonly Look[] {
  const bound = steps.filter((step) => step.step.attention.kind === 'stir');
  const busyAt = (minute: number): PlannedStep[] => bound.filter((step) => step.start < minute && minute < step.end);
  return steps.flatMap(({ step, start, end }) => {
    if (step.attention.kind !== 'glance') return [];
    const looks: Look[] = [];
    let last = start;
    while (last + step.attention.everyMinutes < end) {
      let minute = last + step.attention.everyMinutes;
      // A look comes a little early rather than late; between two steps is always possible.
      while (minute > last + 1 && busyAt(minute).length >= cooks) minute -= 1;
      looks.push({ step: step.id, minute });
      last = minute;
    }
    return looks;
  });
}
