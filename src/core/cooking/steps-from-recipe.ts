import type { Recipe, StepAction } from '../dish/index.ts';
import type { Interval } from '../quantity/index.ts';
import { panSizes, type Attention, type KitchenDish, type KitchenRules, type KitchenStep, type PanSize, type StepLink } from './kitchen.ts';
import { habitOf, type StepHabit, type StepHabits } from './step-habits.ts';

interface Move {
  readonly action: StepAction;
  readonly text: string;
  readonly habit: StepHabit;
  readonly minutes: Interval;
  readonly attention: Attention;
  readonly timed: boolean;
  readonly methodStep: number;
}

/** Verbs that only set the oven going: the plan warms it up by itself. */
const warmsOven = (action: StepAction): boolean => action.heat === 'oven' && action.minutes === null && (action.verb === 'heat' || action.verb === 'preheat');
const waits = new Set(['rest', 'leave', 'let', 'stand', 'cool', 'chill', 'prove', 'freeze', 'thaw', 'keep', 'soak', 'marinate']);

function attentionOf(habit: StepHabit, text: string, habits: StepHabits): Attention {
  const words = text.toLowerCase();
  if (habits.constantWords.some((phrase) => words.includes(phrase))) return { kind: 'stir' };
  const every = Object.entries(habits.everyWords).find(([phrase]) => words.includes(phrase));
  if (every) return { kind: 'glance', everyMinutes: every[1] };
  if (typeof habit.attention === 'number') return { kind: 'glance', everyMinutes: habit.attention };
  return { kind: habit.attention };
}

function interval([low, value, high]: readonly [number, number, number]): Interval {
  return { low, value, high };
}

function movesOf(recipe: Recipe, habits: StepHabits): Move[] {
  const moves: Move[] = [];
  for (const step of recipe.steps) {
    for (const action of step.actions) {
      if (warmsOven(action)) continue;
      const text = recipe.text.slice(action.span.start, action.span.end).replace(/\s+/g, ' ').trim();
      const inOven = action.heat === 'oven' || action.method === 'roasted' || action.method === 'baked';
      const usual = habitOf(action.verb, habits);
      const habit: StepHabit = inOven ? { ...usual, ring: false, oven: action.celsius ?? usual.oven ?? 180 } : usual;
      // "cook for 2 minutes": the verb alone says nothing of the heat, the pot does.
      const timed = action.minutes !== null && !(habits.verbKinds[action.verb] === 'prepare' && action.inPot.length === 0);
      moves.push({ action, text, habit, minutes: action.minutes ?? interval(habit.minutes), attention: attentionOf(habit, text, habits), timed, methodStep: step.number });
    }
  }
  return moves;
}

const short = (move: Move): boolean => !move.timed && (move.attention.kind === 'hands' || move.habit.minutes[2] <= 2) && !move.habit.ahead && !move.habit.place && !move.habit.oven;

/** Small moves of one sentence in one go: "add the barley and stock, cover". */
function gathered(moves: readonly Move[]): Move[][] {
  const groups: Move[][] = [];
  for (const move of moves) {
    const group = groups.at(-1);
    const before = group?.at(-1);
    if (group && before && short(move) && short(before) && before.methodStep === move.methodStep) group.push(move);
    else groups.push([move]);
  }
  return groups;
}

function sumOf(group: readonly Move[]): Interval {
  const total = (end: keyof Interval): number => group.reduce((sum, move) => sum + move.minutes[end], 0);
  const value = Math.max(1, Math.round(total('value')));
  return { low: Math.min(value, total('low')), value, high: Math.max(value, total('high')) };
}

function panOf(group: readonly Move[], habits: StepHabits, text: string): PanSize {
  const words = text.toLowerCase();
  let best: { size: PanSize; length: number } = { size: 'medium', length: 0 };
  for (const size of panSizes) for (const name of habits.pans[size]) if (words.includes(name) && name.length > best.length) best = { size, length: name.length };
  if (best.length > 0) return best.size;
  return group.some((move) => ['fried', 'stir-fried', 'deep-fried', 'poached'].includes(move.action.method ?? '')) ? 'wide' : 'medium';
}

/** The lines each group works on: its own, else those of the move before in the sentence ("wrap the beetroot and | roast"), else of the move after ("peel and | slice the beetroot"). */
function linesOf(groups: readonly (readonly Move[])[]): Set<string>[] {
  const lines = groups.map((group) => new Set(group.flatMap((move) => [...move.action.lines, ...move.action.inPot])));
  const sameStep = (a: number, b: number): boolean => groups[a]?.[0]!.methodStep === groups[b]?.[0]!.methodStep;
  groups.forEach((_, g) => {
    if (lines[g]!.size > 0) return;
    if (g > 0 && sameStep(g - 1, g) && lines[g - 1]!.size > 0) lines[g] = new Set(lines[g - 1]);
    else if (g + 1 < groups.length && sameStep(g, g + 1)) lines[g] = new Set(groups[g + 1]!.flatMap((move) => [...move.action.lines]));
  });
  return lines;
}

/** Which earlier groups each group takes up: the last ones that worked on the same lines. */
function needsOf(lines: readonly ReadonlySet<string>[]): number[][] {
  const lastWith = new Map<string, number>();
  return lines.map((own, g) => {
    const needs = new Set<number>();
    for (const line of own) {
      const at = lastWith.get(line);
      if (at !== undefined) needs.add(at);
      lastWith.set(line, g);
    }
    if (own.size === 0 && g > 0) needs.add(g - 1);
    return [...needs];
  });
}

const wetMethods = new Set<string>(['simmered', 'stewed', 'boiled-kept', 'poached']);
const wetVerbs = new Set(['simmer', 'stew', 'braise', 'boil', 'bring']);

/**
 * The steps of a recipe as the reader took it apart: times as written or as usual (data/parameters/cooking/steps.yaml), order by
 * what goes into what. Everything can be corrected by typing the steps.
 */
export function dishFromRecipe(recipe: Recipe, id: string, habits: StepHabits, rules: KitchenRules): KitchenDish {
  const groups = gathered(movesOf(recipe, habits));
  const needs = needsOf(linesOf(groups));
  const foodOf = new Map(recipe.lines.map((line) => [line.id, `${line.food.name} ${line.food.qualifiers.join(' ')}`.toLowerCase()]));
  const foods = (group: readonly Move[]): string => group.flatMap((move) => [...move.action.lines, ...move.action.inPot]).map((line) => foodOf.get(line) ?? '').join(' ');
  const mentions = (words: readonly string[], text: string): boolean => words.some((word) => new RegExp(`\\b${word}`, 'i').test(text));
  const pots = new Map<number, { name: string; size: PanSize }>();
  groups.forEach((group, g) => {
    const onHeat = group.some((move) => move.habit.ring === true);
    const kept = needs[g]!.map((need) => pots.get(need)).find((pot) => pot !== undefined);
    const sentence = group.map((move) => move.text).join(', ');
    const leaves = group.some((move) => ['serve', 'drain', 'transfer', 'remove'].includes(move.action.verb));
    const inPan = group.every((move) => !move.habit.oven && !move.habit.place && !waits.has(move.action.verb));
    if (kept && (onHeat || inPan) && !leaves) pots.set(g, kept);
    else if (onHeat) pots.set(g, { name: `pan ${g + 1}`, size: panOf(group, habits, sentence) });
  });
  const wet = (g: number): boolean => groups[g]!.some((move) => wetMethods.has(move.action.method ?? '') || wetVerbs.has(move.action.verb));
  // Food that fries goes on frying while it is turned or stirred, until a liquid goes in.
  const fries = (g: number): boolean => !wet(g) && (groups[g]!.some((move) => move.habit.burns === true) || needs[g]!.some((need) => pots.get(need) !== undefined && pots.get(need) === pots.get(g) && fries(need)));
  const panWait = (need: number): number => (wet(need) ? habits.simmerWithin : fries(need) ? habits.fryWithin : habits.panWithin);
  const followed = new Set(needs.flat());
  const steps = groups.map((group, g): KitchenStep => {
    const main = group.reduce((most, move) => (move.minutes.value > most.minutes.value ? move : most));
    const text = group.map((move) => move.text).join(', ').replace(/[,;]?\s*(and|then)?\s*,/g, ',').replace(/[,;]?\s+(and|then)$/, '').replace(/[,;\s]+$/, '').replace(/^(meanwhile|then|finally|now|next),?\s+/i, '');
    const minutes = sumOf(group);
    const pot = pots.get(g) ?? null;
    const ahead = main.habit.ahead ?? (waits.has(main.action.verb) && minutes.value >= habits.aheadFrom ? ([0, minutes.high] as const) : null);
    const after = (needs[g]!.length > 0 || g === 0 ? needs[g]! : []).map((need): StepLink => link(need, g));
    // Loose ends go on the plate: the last step waits for all of them.
    if (g === groups.length - 1) for (let other = 0; other < g; other += 1) if (!followed.has(other) && !after.some((to) => to.step === `${id}/${other + 1}`)) after.push(link(other, g));
    return {
      id: `${id}/${g + 1}`,
      title: text,
      minutes: ahead && main.timed ? { low: 5, value: 5, high: 5 } : minutes,
      attention: main.attention,
      cooks: 1,
      talk: main.habit.talk ?? main.attention.kind !== 'stir',
      burns: main.habit.burns === true || main.attention.kind === 'stir',
      // What is done in a pan that was on the heat is done on the heat: it keeps its ring.
      ring: pot !== null || group.some((move) => move.habit.ring === true),
      oven: main.habit.oven === undefined ? null : { celsius: main.habit.oven, shelves: 1, exact: main.action.method === 'baked' && mentions(['cake', 'soufflé', 'bread', 'biscuit', 'meringue'], recipe.title ?? '') },
      pan: pot,
      places: group.flatMap((move) => (move.habit.place ? [move.habit.place] : [])),
      after,
      mayPause: group.length === 1 && main.habit.pause === true,
      ahead: ahead ? { least: main.timed ? Math.round(main.minutes.low) : ahead[0], most: Math.max(main.timed ? Math.round(main.minutes.high * 1.5) : 0, ahead[1]) } : null,
    };

    function link(need: number, to: number): StepLink {
      const step = `${id}/${need + 1}`;
      const samePot = pots.get(need) !== undefined && pots.get(need) === pots.get(to);
      const fromHot = groups[need]!.some((move) => move.habit.ring === true) || samePot || groups[need]!.some((move) => move.action.verb === 'rest');
      const hurry = mentions(habits.hurried.words, foods(groups[need]!)) && fromHot;
      if (samePot && fromHot) return { step, wait: 0, within: Math.min(panWait(need), hurry ? habits.hurried.minutes : Infinity), reason: 'quality' };
      if (hurry) return { step, wait: 0, within: habits.hurried.minutes, reason: 'quality' };
      if (fromHot && mentions(habits.grains, foods(groups[need]!))) return { step, wait: 0, within: rules.grainsCoolWithin, reason: 'safety' };
      return { step, wait: 0, within: null, reason: 'order' };
    }
  });
  const prep = preparation(recipe, id, habits, steps);
  const all = foods(groups.flat());
  const poultry = mentions(habits.poultry, all);
  const hot = steps.some((step) => step.ring || step.oven);
  return {
    id,
    name: recipe.title ?? id,
    steps: prep ? [prep, ...steps.map((step) => (usesPrepared(step, recipe, habits, groups[steps.indexOf(step)] ?? []) ? { ...step, after: [{ step: prep.id, wait: 0, within: null, reason: 'order' as const }, ...step.after] } : step))] : steps,
    servedAfter: 0,
    hot,
    hold: poultry ? rules.holdPoultry : hot ? rules.holdHot : rules.holdCold,
    holdReason: poultry ? 'safety' : 'quality',
  };
}

const prepared = (recipe: Recipe, habits: StepHabits): string[] =>
  recipe.lines.filter((line) => line.food.qualifiers.some((word) => habits.linePrep.words.includes(word))).map((line) => line.id);

function usesPrepared(step: KitchenStep, recipe: Recipe, habits: StepHabits, group: readonly Move[]): boolean {
  const ready = new Set(prepared(recipe, habits));
  return step.ahead === null && group.some((move) => move.action.lines.some((line) => ready.has(line)));
}

/** "1 onion, chopped": cutting that the list asks for and no step tells. */
function preparation(recipe: Recipe, id: string, habits: StepHabits, steps: readonly KitchenStep[]): KitchenStep | null {
  const lines = prepared(recipe, habits);
  if (lines.length === 0 || steps.length === 0) return null;
  const names = recipe.lines.filter((line) => lines.includes(line.id)).map((line) => line.food.name);
  const [low, value, high] = habits.linePrep.minutes;
  return {
    id: `${id}/0`,
    title: `cut and get ready: ${names.join(', ')}`,
    minutes: { low: low * lines.length, value: value * lines.length, high: high * lines.length },
    attention: { kind: 'hands' }, cooks: 1, talk: true, burns: false, ring: false, oven: null, pan: null, places: ['board'], after: [], mayPause: true, ahead: null,
  };
}
