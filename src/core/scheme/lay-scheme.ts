import { addDays, type Day } from '../calendar/index.ts';
import { cycleOn, type Future } from '../cycle/index.ts';
import type { Scheme } from './scheme.ts';
import { fixedRuleHolds, ruleHolds } from './windows.ts';

export interface RuleChance {
  readonly ruleId: string;
  /** Share of the futures in which the rule holds that day. */
  readonly chance: number;
}

/** `say`: at least one rule is likely enough. `uncertain`: rules may hold, none likely enough. `nothing`: the scheme has no rule for that day. */
export type DayVerdict = 'say' | 'uncertain' | 'nothing';

export interface SchemeDay {
  readonly day: Day;
  readonly verdict: DayVerdict;
  /** Rules likely enough to say, the likeliest first. */
  readonly said: readonly RuleChance[];
  /** Every rule with any chance that day. */
  readonly all: readonly RuleChance[];
  /** What the fixed-day scheme would say that day, counted from the last start known or the likeliest one to come. */
  readonly fixed: readonly string[];
}

/** Below this total chance of any rule a day counts as one the scheme says nothing about. */
const nothingBelow = 0.4;

/** Lays a scheme over the ways the coming weeks may go: each day gets its rules with their chances. `starts`: the last start and the likeliest ones to come, for the fixed days beside it. */
export function layScheme(scheme: Scheme, futures: readonly Future[], span: { from: Day; to: Day; starts: readonly Day[] }): SchemeDay[] {
  const days: SchemeDay[] = [];
  for (let day = span.from; day <= span.to; day = addDays(day, 1)) {
    const counts = scheme.rules.map(() => 0);
    let any = 0;
    for (const future of futures) {
      const cycle = cycleOn(future, day);
      if (!cycle) continue;
      let held = false;
      scheme.rules.forEach((rule, i) => {
        if (!ruleHolds(scheme, rule, cycle, day - cycle.start + 1)) return;
        counts[i]! += 1;
        held = true;
      });
      if (held) any += 1;
    }
    const all = scheme.rules.map((rule, i) => ({ ruleId: rule.id, chance: counts[i]! / futures.length })).filter((r) => r.chance > 0.005).sort((a, b) => b.chance - a.chance);
    const said = all.filter((r) => r.chance >= scheme.sayFrom);
    const verdict: DayVerdict = said.length > 0 ? 'say' : any / futures.length < nothingBelow ? 'nothing' : 'uncertain';
    const start = span.starts.filter((s) => s <= day).at(-1);
    const fixed = start === undefined ? [] : scheme.rules.filter((rule) => fixedRuleHolds(scheme, rule, day - start + 1)).map((r) => r.id);
    days.push({ day, verdict, said, all, fixed });
  }
  return days;
}
