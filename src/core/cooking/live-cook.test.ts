import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cookPlan, solvePlan } from './cook-plan.ts';
import { barley, dish, fish, half7, order, roast, rules } from './kitchen.fixture.ts';
import { advance, caughtUp, finished, startLive, tapped, unbroken, type LiveCook, type LiveTools } from './live-cook.ts';

const tools: LiveTools = { rules, budget: { conflicts: 1500 }, chance: { seed: 1, runs: 30 } };
const dinner = unbroken(order([dish(roast, 'a'), dish(barley, 'b'), dish(fish, 'c')], { kitchen: { rings: 3 } }));

function begun(): LiveCook {
  const outcome = solvePlan({ request: dinner, rules, budget: { conflicts: 5000 } });
  if (outcome.kind !== 'solved') throw new Error(outcome.kind);
  return startLive(dinner, cookPlan(outcome.plan, rules));
}

const startOf = (live: LiveCook, id: string): number => live.plan.steps.find((entry) => entry.step.id === id)!.start;

describe('live cooking', () => {
  it('begins by itself what is due, and nothing before it is due', () => {
    const live = begun();
    const first = live.plan.steps[0]!;
    expect(advance(live, first.start - 1)).toBe(live);
    expect(Object.keys(advance(live, first.start).steps)).toContain(first.step.id);
  });

  it('does not begin a step before what it needs is tapped done', () => {
    const live = begun();
    const later = advance(live, half7 - 1);
    expect(later.steps['a/3']).toBeUndefined();
    expect(later.steps['a/2']).toBeUndefined();
  });

  it('follows the plan to the end when every tap comes on time, and then is finished', () => {
    let live = begun();
    const promised = live.plan.end;
    for (let minute = live.plan.begin; minute <= half7 + 30 && !finished(live); minute += 1) {
      live = advance(live, minute);
      for (const step of Object.values(live.steps)) {
        const due = live.plan.steps.find((entry) => entry.step.id === step.id)!;
        if (step.doneAt === null && minute >= due.end) live = tapped(live, { kind: 'done', step: step.id }, minute, tools);
      }
    }
    expect(finished(live)).toBe(true);
    expect(live.plan.end).toBe(promised);
    expect(live.notes).toEqual([]);
  });

  it('moves what is left when three more minutes are asked for, and says so when the table has to wait', () => {
    let live = begun();
    live = advance(live, startOf(live, 'c/3'));
    for (const id of ['a/1', 'a/2', 'a/3', 'b/1', 'b/2', 'b/3', 'c/1']) live = tapped(live, { kind: 'done', step: id }, half7 - 4, tools);
    live = tapped(live, { kind: 'start', step: 'c/2' }, half7 - 4, tools);
    const before = live.plan.end;
    live = tapped(live, { kind: 'more', step: 'c/2', minutes: 3 }, half7 - 3, tools);
    expect(live.plan.end).toBeGreaterThan(before);
    expect(live.notes.at(-1)).toMatchObject({ kind: 'moved' });
    expect(startOf(live, 'c/3')).toBeGreaterThanOrEqual(live.plan.steps.find((entry) => entry.step.id === 'c/2')!.end);
  });

  it('never moves what is done or begun, always has a next plan, and keeps one pair of hands', { timeout: 120_000 }, () => {
    const taps = fc.array(fc.record({ pick: fc.nat(20), kind: fc.constantFrom<('done' | 'more' | 'start')[]>('done', 'done', 'done', 'more', 'start'), pause: fc.integer({ min: 0, max: 12 }) }), { minLength: 1, maxLength: 25 });
    const fresh = begun();
    fc.assert(
      fc.property(taps, (list) => {
        let live = fresh;
        let minute = live.plan.begin;
        for (const { pick, kind, pause } of list) {
          minute += pause;
          live = caughtUp(live, minute, tools);
          const open = live.plan.steps.filter((entry) => live.steps[entry.step.id]?.doneAt == null);
          const running = open.filter((entry) => live.steps[entry.step.id]);
          const pool = kind === 'start' || running.length === 0 ? open : running;
          if (pool.length === 0) break;
          const { id } = pool[pick % pool.length]!.step;
          const before = live;
          live = tapped(live, kind === 'more' ? { kind, step: id, minutes: 3 } : { kind, step: id }, minute, tools);
          for (const step of Object.values(before.steps)) {
            if (step.id !== id) expect(live.steps[step.id]).toEqual(step);
            else expect(live.steps[id]!.startedAt).toBe(step.startedAt);
            expect(startOf(live, step.id)).toBe(step.startedAt);
          }
          for (const entry of live.plan.steps) if (!live.steps[entry.step.id]) expect(entry.start).toBeGreaterThanOrEqual(Math.floor(minute));
          const waiting = live.plan.steps.filter((entry) => !live.steps[entry.step.id] && (entry.step.attention.kind === 'hands' || entry.step.attention.kind === 'stir'));
          for (const [i, a] of waiting.entries()) for (const b of waiting.slice(i + 1)) expect(Math.min(a.end, b.end)).toBeLessThanOrEqual(Math.max(a.start, b.start));
          expect(live.plan.end).toBeGreaterThanOrEqual(Math.max(...live.plan.steps.map((entry) => entry.end)));
        }
      }),
      { numRuns: 40 },
    );
  });

  it('survives being written out and read back', () => {
    let live = advance(begun(), half7 - 60);
    live = JSON.parse(JSON.stringify(live)) as LiveCook;
    const id = Object.keys(live.steps)[0]!;
    expect(tapped(live, { kind: 'done', step: id }, half7 - 59, tools).steps[id]!.doneAt).toBe(half7 - 59);
  });

  it('leaves everything as it is on a tap for a step that is not in the plan', () => {
    const live = begun();
    expect(tapped(live, { kind: 'done', step: 'x/9' }, half7, tools)).toBe(live);
  });
});
