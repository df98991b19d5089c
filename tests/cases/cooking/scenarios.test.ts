import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { watch } from '../../../src/adapters/solver/index.ts';
import { readCookingTables, readReaderVocabulary } from '../../../src/adapters/tables/index.ts';
import { cookDishes, type CookedPlan } from '../../../src/app/cook-dishes.ts';
import { isActive } from '../../../src/core/cooking/index.ts';
import { impossible } from '../../../src/core/cooking/walk-through.fixture.ts';
import { readRecipe } from '../../../src/core/dish/index.ts';

interface Scenario {
  name: string;
  dishes: string[];
  kitchen: { rings: number; cooks: number };
  ready: string;
  script?: string;
  unsaid?: number;
}
const text = (file: string): string => readFileSync(join(import.meta.dirname, file), 'utf8');
const scenarios = parse(text('scenarios.yaml')) as Scenario[];
const vocabulary = readReaderVocabulary();
const tools = { tables: readCookingTables(), readRecipe: (recipe: string) => readRecipe(recipe, vocabulary), watch };

function planOf(scenario: Scenario): CookedPlan {
  const [hour, minute] = scenario.ready.split(':').map(Number);
  const answer = cookDishes(
    {
      dishes: scenario.dishes.map((file) => ({ name: null, text: text(file) })),
      kitchen: scenario.kitchen,
      when: { kind: 'serve-at', minute: hour! * 60 + minute!, notBefore: null },
      script: scenario.script ? text(scenario.script) : null,
      wordsPerMinute: null,
      deadAirSeconds: null,
    },
    tools,
  );
  if (answer.kind !== 'plan') throw new Error(answer.kind);
  return answer;
}

describe.each(scenarios)('$name, walked through minute by minute', (scenario) => {
  const answer = planOf(scenario);
  const { plan, request, sheet } = answer;

  it('was read without trouble and is proven best', () => {
    expect(answer.troubles).toEqual([]);
    expect(plan.proven).toBe(true);
  });

  it('asks nothing impossible in any minute', () => {
    expect(impossible(plan, request)).toEqual([]);
  });

  it('never has one pair of hands begin two things that want hands in the same minute', () => {
    for (const row of sheet) {
      const begun = row.deeds.flatMap((deed) => (deed.kind === 'start' || deed.kind === 'go-on') && isActive(deed.step.step) ? [...deed.cooks] : []);
      expect(new Set(begun).size).toBe(begun.length);
    }
  });

  it('tells every step on the sheet once, before the table', () => {
    const told = sheet.flatMap((row) => row.deeds.flatMap((deed) => (deed.kind === 'start' ? [deed.step.step.id] : [])));
    expect([...told].sort()).toEqual(plan.steps.map((step) => step.step.id).sort());
    expect(Math.max(...sheet.map((row) => row.minute))).toBe(plan.end);
  });

  it('looks at what runs alone as often as asked', () => {
    for (const { step, start, end } of plan.steps) {
      if (step.attention.kind !== 'glance') continue;
      const looks = sheet.filter((row) => row.deeds.some((deed) => deed.kind === 'look' && deed.step.step.id === step.id)).map((row) => row.minute);
      const marks = [start, ...looks, end];
      for (const [i, mark] of marks.slice(1).entries()) expect(mark - marks[i]!).toBeLessThanOrEqual(step.attention.everyMinutes);
    }
  });

  it('is ready on time on nearly nine evenings in ten or more', () => {
    expect(answer.chances.onTime).toBeGreaterThanOrEqual(0.85);
  });

  it('says the script or names what it leaves out', () => {
    expect(answer.talk?.leftOut.length ?? 0).toBe(scenario.unsaid ?? 0);
  });
});

describe('the plan of a recipe as it is written', () => {
  it('asks nothing impossible either', () => {
    const answer = cookDishes({ dishes: [{ name: null, text: text('barley-and-fish.recipe.txt') }], kitchen: { rings: 2 }, when: { kind: 'serve-at', minute: 1170, notBefore: null }, script: null, wordsPerMinute: null, deadAirSeconds: null }, tools);
    expect(answer.kind).toBe('plan');
    if (answer.kind === 'plan') expect(impossible(answer.plan, answer.request)).toEqual([]);
  });
});
