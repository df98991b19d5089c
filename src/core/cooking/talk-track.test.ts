import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cookPlan, solvePlan, type CookPlan } from './cook-plan.ts';
import { barley, dish, fish, order, roast, rules } from './kitchen.fixture.ts';
import { looksOf } from './looks.ts';
import { readScript } from './script-text.ts';
import { talkTrack, talkWindows, type TalkSettings } from './talk-track.ts';

const settings: TalkSettings = { wordsPerMinute: 150, deadAirSeconds: 40, speaker: 1, cooks: 1 };
const request = order([dish(roast, 'a'), dish(barley, 'b'), dish(fish, 'c')], { kitchen: { rings: 3 } });
const names = new Map(request.dishes.map((one) => [one.id, one.name]));

function planned(): CookPlan {
  const outcome = solvePlan({ request, rules, budget: { conflicts: 20_000 } });
  if (outcome.kind !== 'solved') throw new Error(outcome.kind);
  return cookPlan(outcome.plan, rules);
}
const plan = planned();
const stepOf = (id: string) => plan.steps.find((entry) => entry.step.id === id)!;
const track = (script: string, more: Partial<TalkSettings> = {}) => talkTrack(plan, readScript(script, plan.steps, names), { ...settings, ...more });
const words = (count: number): string => Array.from({ length: count }, (_, i) => `word${i}`).join(' ');

describe('the talk track', () => {
  it.each([
    ['[while the beetroot roasts] x', 'while', 'a/2'],
    ['[before the fish is poached] x', 'before', 'c/2'],
    ['[after the onions are softened] x', 'after', 'b/2'],
    ['While the barley simmers, I tell you something.', 'while', 'b/3'],
    ['[at the start] x', 'start', null],
    ['[at serving] x', 'serving', null],
    ['[while the omelette sets] x', 'while', null],
  ])('finds the step of “%s”', (text, kind, step) => {
    expect(readScript(text, plan.steps, names)[0]!.anchor).toMatchObject({ kind, step });
  });

  it('takes a paragraph that merely begins with “while” for what it is', () => {
    expect(readScript('While we are at it, welcome.', plan.steps, names)[0]!.anchor).toBeNull();
  });

  it('lands anchored lines where they belong', () => {
    const { spoken, leftOut } = track(`[while the beetroot roasts] ${words(50)}\n\n[after the onions are softened] ${words(20)}\n\n[at serving] ${words(10)}`);
    expect(leftOut).toEqual([]);
    expect(spoken[0]!.start).toBeGreaterThanOrEqual(stepOf('a/2').start * 60);
    expect(spoken[0]!.end).toBeLessThanOrEqual(stepOf('a/2').end * 60);
    expect(spoken[1]!.start).toBeGreaterThanOrEqual(stepOf('b/2').end * 60);
    expect(spoken[2]!.end).toBeLessThanOrEqual(plan.end * 60);
  });

  it('never speaks across a step that binds her, nor across a look at what can burn', () => {
    const paragraph = fc.record({ count: fc.integer({ min: 1, max: 400 }), anchor: fc.constantFrom('', '[while the barley simmers] ', '[before the fish is poached] ', '[at the start] ') });
    const fiery = plan.steps.filter(({ step }) => step.burns && step.attention.kind === 'glance');
    const cuts = looksOf(fiery, 1).map((look) => look.minute * 60);
    fc.assert(
      fc.property(fc.array(paragraph, { minLength: 1, maxLength: 8 }), fc.integer({ min: 90, max: 200 }), (list, rate) => {
        const { spoken, leftOut } = track(list.map(({ count, anchor }) => `${anchor}${words(count)}`).join('\n\n'), { wordsPerMinute: rate });
        expect(spoken.length + leftOut.length).toBe(list.length);
        for (const [i, line] of spoken.entries()) {
          expect(line.end - line.start).toBe(Math.ceil((line.paragraph.words / rate) * 60));
          if (i > 0) expect(line.start).toBeGreaterThan(spoken[i - 1]!.end);
          for (const entry of plan.steps) if (!entry.step.talk) expect(line.start >= entry.end * 60 || line.end <= entry.start * 60).toBe(true);
          for (const cut of cuts) expect(line.start < cut && cut < line.end).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('names what does not fit and why', () => {
    const { leftOut } = track(`[while the omelette sets] ${words(5)}\n\n[after the onions are softened] ${words(3000)}`);
    expect(leftOut.map((out) => out.why)).toEqual(['no-step', 'too-long']);
    expect(leftOut[1]!.longest).toBeLessThan(leftOut[1]!.seconds);
  });

  it('gives up the shorter free line rather than one with a place of its own', () => {
    const window = talkWindows(plan, settings)[0]!;
    const fill = Math.floor(((window.end - window.start) / 60) * 150) - 20;
    const { leftOut } = track(`${words(30)}\n\n[at the start] ${words(Math.min(fill, 700))}`);
    expect(leftOut.every((out) => out.paragraph.anchor === null)).toBe(true);
  });

  it('shows silences longer than asked for, and how much of each she could fill', () => {
    const { deadAir, spoken } = track(words(30));
    expect(spoken).toHaveLength(1);
    expect(deadAir).toHaveLength(2);
    for (const dead of deadAir) expect(dead.free).toBeLessThanOrEqual(dead.end - dead.start);
    expect(track(words(30), { deadAirSeconds: 36_000 }).deadAir).toEqual([]);
  });

  it('speaks slower at a lower rate', () => {
    const [fast, slow] = [200, 100].map((wordsPerMinute) => track(words(60), { wordsPerMinute }).spoken[0]!);
    expect(slow!.end - slow!.start).toBe(2 * (fast!.end - fast!.start));
  });
});
