import type { AheadStep, Clash, CookPlan, CookRequest, DeadAir, Deed, Goal, LeftOut, Limit, LineTrouble, LiveNote, PlannedStep, Remedy } from '../core/cooking/index.ts';
import { listed, percent } from './numbers.ts';

/** A clock minute as 19:05; the day before and after are said in words. */
export function clock(minute: number): string {
  const day = Math.floor(minute / 1440);
  const rest = ((minute % 1440) + 1440) % 1440;
  const text = `${Math.floor(rest / 60)}:${String(Math.floor(rest % 60)).padStart(2, '0')}`;
  if (day === 0) return text;
  if (day === -1) return `${text} the day before`;
  return day < 0 ? `${text}, ${-day} days before` : `${text} the day after`;
}

/** Clock seconds as 19:05:30. */
export function clockSeconds(second: number): string {
  return `${clock(Math.floor(second / 60))}:${String(Math.floor(((second % 60) + 60) % 60)).padStart(2, '0')}`;
}

export function minutesText(minutes: number): string {
  if (minutes < 60) return `${minutes} min`;
  const rest = minutes % 60;
  return `${Math.floor(minutes / 60)} h${rest === 0 ? '' : ` ${rest} min`}`;
}

export function secondsText(seconds: number): string {
  const whole = Math.round(seconds);
  return whole < 60 ? `${whole} s` : `${Math.floor(whole / 60)} min${whole % 60 === 0 ? '' : ` ${whole % 60} s`}`;
}

// From here on seconds no longer matter.
const longCountdown = 3 * 3600;

/** Minutes and seconds left: 4:05, or +0:30 when over. */
export function countdown(seconds: number): string {
  const size = Math.abs(Math.round(seconds));
  const sign = seconds < 0 ? '+' : '';
  if (size >= longCountdown) return `${sign}${Math.floor(size / 3600)} h ${String(Math.floor((size % 3600) / 60)).padStart(2, '0')} min`;
  return `${sign}${Math.floor(size / 60)}:${String(size % 60).padStart(2, '0')}`;
}

export type DishNames = Readonly<Record<string, string>>;

/** Where a step happens: "ring 2 · medium pan", "oven 190 °C". */
export function placeText(step: PlannedStep): string {
  const { pan, oven, places } = step.step;
  return [
    ...(step.ring === null ? [] : [`ring ${step.ring}`]),
    ...(pan ? [`${pan.size} pan`] : []),
    ...(oven ? [step.ovenCelsius === oven.celsius ? `oven ${oven.celsius} °C` : `oven ${step.ovenCelsius} °C instead of ${oven.celsius} °C`] : []),
    ...places,
  ].join(' · ');
}

export function attentionText(step: PlannedStep): string {
  const { attention } = step.step;
  switch (attention.kind) {
    case 'none': return 'runs by itself';
    case 'glance': return `look every ${attention.everyMinutes} min`;
    case 'hands': return 'hands';
    case 'stir': return 'stay with it';
  }
}

const who = (cooks: readonly number[], many: boolean): string => (many && cooks.length > 0 ? `Cook ${listed(cooks.map(String))}: ` : '');

/** One thing to do, in words. */
export function deedText(deed: Deed, dishNames: DishNames, cooks: number): string {
  switch (deed.kind) {
    case 'oven': return `Set the oven to ${deed.celsius} °C`;
    case 'start': return `${who(deed.cooks, cooks > 1)}${deed.step.step.title} (${minutesText(deed.step.end - deed.step.start)})`;
    case 'go-on': return `${who(deed.cooks, cooks > 1)}go on: ${deed.step.step.title}`;
    case 'look': return `look: ${deed.step.step.title}`;
    case 'over': return deed.step.step.oven ? `out of the oven: ${deed.step.step.title}` : `done: ${deed.step.step.title}`;
    case 'serve': return `On the table: ${listed(deed.dishes.map((dish) => dishNames[dish] ?? dish))}`;
  }
}

export function aheadText(ahead: AheadStep): string {
  return `${ahead.step.title}: begin between ${clock(ahead.earliest)} and ${clock(ahead.latest)}`;
}

const goals: Readonly<Record<Goal, string>> = { lateness: 'late', spread: 'is the longest that anything hot stands before the table', waiting: 'hot food waiting, all added up', total: 'from the first move to the table' };

/** How good the plan is, and whether that is proven. */
export function qualityText(plan: CookPlan): string {
  const parts = plan.stages.map((stage) => `${minutesText(stage.value)} ${goals[stage.goal]}${stage.proven ? '' : ` (no plan can do better than ${minutesText(Math.max(0, stage.bound))})`}`);
  return `${parts.join('; ')}. ${plan.proven ? 'Proven: no plan does better.' : 'The search ended before it could prove that nothing is better.'}`;
}

export function chanceText(chances: { readonly onTime: number; readonly lateAtMost: number; readonly waitedTooLong: number; readonly runs: number }): string {
  const late = chances.lateAtMost > 0 ? ` On nine evenings in ten it is at most ${minutesText(chances.lateAtMost)} late.` : '';
  const long = chances.waitedTooLong >= 0.01 ? ` On ${percent(chances.waitedTooLong)} of them something has to wait longer than it should.` : '';
  return `Ready on time on ${percent(chances.onTime)} of ${chances.runs} simulated evenings, each step taking as long as it does.${late}${long}`;
}

const resources: Readonly<Record<string, [string, string]>> = {
  cooks: ['cook', 'cooks'], rings: ['ring', 'rings'], shelves: ['oven shelf', 'oven shelves'], board: ['chopping board', 'chopping boards'],
  blender: ['blender', 'blenders'], sink: ['sink', 'sinks'], grill: ['grill', 'grills'], microwave: ['microwave oven', 'microwave ovens'],
  'pan small': ['small pan', 'small pans'], 'pan medium': ['medium pan', 'medium pans'], 'pan large': ['large pan', 'large pans'], 'pan wide': ['wide pan', 'wide pans'],
};
const counted = (of: string, count: number): string => `${count} ${(resources[of] ?? [of, of])[count === 1 ? 0 : 1]}`;

interface Kitchenful {
  readonly request: CookRequest;
  readonly dishNames: DishNames;
}

function stepTitle(id: string, { request }: Kitchenful): string {
  for (const dish of request.dishes) for (const step of dish.steps) if (step.id === id) return `“${step.title}”`;
  return id;
}

export function limitText(limit: Limit, kitchen: Kitchenful): string {
  switch (limit.kind) {
    case 'capacity': return limit.have === 0 ? `there is no ${(resources[limit.of] ?? [limit.of])[0]}` : `there ${limit.have === 1 ? 'is' : 'are'} only ${counted(limit.of, limit.have)}`;
    case 'within': return `${stepTitle(limit.to, kitchen)} has to follow ${stepTitle(limit.from, kitchen)} within ${minutesText(limit.minutes)}${limit.safety ? ' (food safety)' : ''}`;
    case 'hold': return `${kitchen.dishNames[limit.dish] ?? limit.dish} may wait for the table no longer than ${minutesText(limit.minutes)}${limit.safety ? ' (food safety)' : ''}`;
    case 'not-before': return `nothing may begin before ${clock(limit.minute)}`;
  }
}

export function remedyText(remedy: Remedy, kitchen: Kitchenful): string {
  switch (remedy.kind) {
    case 'more': return `with ${counted(remedy.of, remedy.need)} it can be done`;
    case 'serve-later': return `everything can be on the table at ${clock(remedy.minute)}`;
    case 'wait-longer':
      return remedy.limit.kind === 'hold'
        ? `if ${kitchen.dishNames[remedy.limit.dish] ?? remedy.limit.dish} may wait ${minutesText(remedy.minutes)} for the table it can be done`
        : remedy.limit.kind === 'within'
          ? `if ${stepTitle(remedy.limit.from, kitchen)} may wait ${minutesText(remedy.minutes)} for ${stepTitle(remedy.limit.to, kitchen)} it can be done`
          : 'begin earlier';
  }
}

/** Why there is no plan, as sentences. */
export function clashTexts(clash: Clash, kitchen: Kitchenful): { readonly why: readonly string[]; readonly remedies: readonly string[] } {
  return { why: clash.limits.map((limit) => limitText(limit, kitchen)), remedies: clash.remedies.map((remedy) => remedyText(remedy, kitchen)) };
}

export function leftOutText(out: LeftOut): string {
  const start = out.paragraph.text.split(/\s+/).slice(0, 8).join(' ');
  const where = out.paragraph.anchor ? ` “${out.paragraph.anchor.words}”` : '';
  const length = `${out.paragraph.words} words, ${secondsText(out.seconds)}`;
  switch (out.why) {
    case 'no-step': return `“${start} …” (${length}): no step answers to${where}. Use words of the step.`;
    case 'too-long': return out.longest === 0 ? `“${start} …” (${length}): there is no free moment${where}; her hands are bound there. Move it or say it elsewhere.` : `“${start} …” (${length}) is too long${where}: the longest free stretch there is ${secondsText(out.longest)}. Shorten or split it.`;
    case 'no-room': return `“${start} …” (${length}) finds no room${where}: other lines take it.`;
  }
}

export function deadAirText(dead: DeadAir): string {
  const free = dead.free >= 5 ? `; she could speak for ${secondsText(dead.free)} of it` : '; her hands or the noise leave no room to speak';
  return `${clockSeconds(dead.start)} to ${clockSeconds(dead.end)}: ${secondsText(dead.end - dead.start)} of silence${free}`;
}

export function noteText(note: LiveNote, titleOf: (step: string) => string): string {
  switch (note.kind) {
    case 'moved': return `The table moves from ${clock(note.from)} to ${clock(note.to)}.`;
    case 'waits-too-long': return `“${titleOf(note.step)}” is waiting longer than it should. Look at it before you go on.`;
    case 'crowded': return 'Not everything fits as it should any more: the limits on waiting had to give way. Look at what is standing.';
  }
}

export function lineTroubleText(trouble: LineTrouble & { readonly dish: string }): string {
  const at = `${trouble.dish}, line ${trouble.line}`;
  switch (trouble.code) {
    case 'no-minutes': return `${at}: “${trouble.text}” says no time. Add one, such as “10 min”; one minute was taken.`;
    case 'not-understood': return `${at}: “${trouble.text}” was not understood and left out.`;
    case 'unknown-step': return `${at}: there is no step ${trouble.text} before this one.`;
    case 'no-title': return `${at}: the first line should be the name of the dish.`;
    case 'no-steps': return `${at}: no steps were found. Write one a line: “chop the onion: 5 min, hands”.`;
    case 'too-long': return `${at}: longer than a day. Mark it “ahead 24-36 h” to do it before.`;
  }
}
