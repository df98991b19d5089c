import type { KitchenRules, KitchenStep } from './kitchen.ts';

/** One way to run the oven: a setting for each temperature that steps ask for. Equal settings share the oven. */
export type OvenWay = ReadonlyMap<number, number>;

/**
 * Every way to run the oven: neighbouring temperatures that differ by no more than the rule allows may share a setting half-way
 * between (to the next 5 °C), unless a step wants its own exactly; otherwise each keeps its own and they follow one another.
 */
export function ovenWays(steps: readonly KitchenStep[], rules: KitchenRules): readonly OvenWay[] {
  const needs = steps.flatMap((step) => (step.oven ? [step.oven] : []));
  const temperatures = [...new Set(needs.map((need) => need.celsius))].sort((a, b) => a - b);
  const exact = new Set(needs.filter((need) => need.exact).map((need) => need.celsius));
  const ways: OvenWay[] = [];
  const visit = (from: number, way: Map<number, number>): void => {
    if (from === temperatures.length) {
      ways.push(new Map(way));
      return;
    }
    for (let to = from; to < temperatures.length; to += 1) {
      const group = temperatures.slice(from, to + 1);
      if (group.at(-1)! - group[0]! > rules.ovenShareCelsius) break;
      const fixed = group.filter((t) => exact.has(t));
      if (fixed.length > 1) break;
      const setting = fixed[0] ?? Math.round((group[0]! + group.at(-1)!) / 10) * 5;
      for (const t of group) way.set(t, setting);
      visit(to + 1, way);
    }
  };
  visit(0, new Map());
  return ways.slice(0, 8);
}

/** Minutes in the oven at `setting` for a step written for `celsius`: longer when cooler, shorter when hotter. */
export function ovenMinutes(minutes: number, celsius: number, setting: number, rules: KitchenRules): number {
  return Math.max(1, Math.round(minutes * (1 + rules.timePerDegree * (celsius - setting))));
}

/** Minutes for the oven to come from one setting to another. */
export function changeMinutes(from: number, to: number, rules: KitchenRules): number {
  return Math.ceil(to >= from ? (to - from) / rules.ovenHeatsPerMinute : (from - to) / rules.ovenCoolsPerMinute);
}
