import { exactly, type Interval } from '../quantity/index.ts';
import { places, type Attention, type KitchenDish, type KitchenRules, type KitchenStep, type OvenNeed, type PanSize, type Place, type StepLink } from './kitchen.ts';

/** What a typed line says that could not be used. Lines count from 1. */
export interface LineTrouble {
  readonly line: number;
  readonly text: string;
  readonly code: 'no-minutes' | 'not-understood' | 'unknown-step' | 'no-title' | 'no-steps' | 'too-long';
}

export interface TypedDish {
  readonly dish: KitchenDish;
  readonly troubles: readonly LineTrouble[];
}

const number = String.raw`(\d+(?:[.,]\d+)?)`;
const duration = new RegExp(String.raw`^(?:about |ca\.? )?${number}(?:\s*(?:-|–|to)\s*${number})?\s*(min(?:ute)?s?|h(?:ours?|rs?)?)(?:\s*${number}(?:\s*min(?:ute)?s?)?)?$`, 'i');

function minutesOf(text: string): Interval | null {
  const match = duration.exec(text);
  if (!match) return null;
  const value = (part: string | undefined): number => Number((part ?? '0').replace(',', '.'));
  const unit = match[3]!.toLowerCase().startsWith('h') ? 60 : 1;
  const low = value(match[1]) * unit + value(match[4]);
  const high = match[2] === undefined ? low : value(match[2]) * unit + value(match[4]);
  return low === high ? exactly(low) : { low: Math.min(low, high), value: (low + high) / 2, high: Math.max(low, high) };
}

interface Draft {
  minutes: Interval | null;
  attention: Attention | null;
  cooks: number;
  talk: boolean | null;
  burns: boolean;
  ring: boolean;
  oven: OvenNeed | null;
  pan: PanSize | null;
  places: Place[];
  within: number | null;
  wait: number;
  after: number[] | null;
  mayPause: boolean;
  ahead: { least: number; most: number } | null;
}

/** Reads one clause into the draft; false when it is not understood. */
function clause(draft: Draft, text: string): boolean {
  const words = text.toLowerCase().replace(/\s+/g, ' ').trim();
  if (words === '') return true;
  const minutes = minutesOf(words);
  if (minutes) {
    draft.minutes = minutes;
    return true;
  }
  const pan = /^(?:a |in a )?(small|medium|large|wide) (?:pan|pot)$/.exec(words);
  const oven = /^oven (\d{2,3})(?: ?°?c)?( exactly)?$/.exec(words);
  const look = /^(?:look|glance|check|stir) every (\d+) ?min(?:ute)?s?$/.exec(words);
  const within = /^within (.+)$/.exec(words);
  const wait = /^(?:wait|after waiting) (.+)$/.exec(words);
  const after = /^after (?:steps? )?((?:\d+)(?:(?:,| and|, and)? \d+|,\d+)*)$/.exec(words);
  const ahead = /^ahead (\d+)(?:\s*(?:-|–|to)\s*(\d+))? ?h(?:ours?)?$/.exec(words);
  const cooks = /^(\d) cooks?$/.exec(words);
  const shelves = /^(\d) shel(?:f|ves)$/.exec(words);
  const place = places.find((name) => name === words);
  if (pan) draft.pan = pan[1] as PanSize;
  else if (oven) draft.oven = { celsius: Number(oven[1]), shelves: draft.oven?.shelves ?? 1, exact: oven[2] !== undefined };
  else if (shelves) draft.oven = { celsius: draft.oven?.celsius ?? 180, shelves: Number(shelves[1]), exact: draft.oven?.exact ?? false };
  else if (look) draft.attention = { kind: 'glance', everyMinutes: Number(look[1]) };
  else if (within && minutesOf(within[1]!)) draft.within = minutesOf(within[1]!)!.value;
  else if (wait && minutesOf(wait[1]!)) draft.wait = minutesOf(wait[1]!)!.value;
  else if (after) draft.after = (after[1]!.match(/\d+/g) ?? []).map(Number);
  else if (ahead) draft.ahead = { least: Number(ahead[1]) * 60, most: Number(ahead[2] ?? Number(ahead[1]) + 6) * 60 };
  else if (cooks) draft.cooks = Number(cooks[1]);
  else if (place) draft.places.push(place);
  else if (words === 'hands') draft.attention = { kind: 'hands' };
  else if (/^stir(ring)?( all the time)?$/.test(words)) draft.attention = { kind: 'stir' };
  else if (/^(alone|hands off|no hands)$/.test(words)) draft.attention = { kind: 'none' };
  else if (words === 'ring') draft.ring = true;
  else if (/^(burns|catches|can burn|can catch)$/.test(words)) draft.burns = true;
  else if (/^(may pause|can pause|pause)$/.test(words)) draft.mayPause = true;
  else if (words === 'talk') draft.talk = true;
  else if (words === 'no talk') draft.talk = false;
  else if (/^(any time|at any time)$/.test(words)) draft.after = [];
  else return /^until /.test(words);
  return true;
}

/** "after 4, 9, 13" is one clause: commas between bare numbers become "and". */
const listsJoined = (text: string): string => text.replace(/(\d)\s*,\s*(?=\d+\s*(?:[,;]|and\b|$))/g, '$1 and ');

/** Looks are asked for where a line names fire but no attention: minutes between them. */
const usualLook = { ring: 5, oven: 15 };

function stepOf(draft: Draft, head: { id: string; title: string; after: readonly StepLink[] }): KitchenStep {
  const attention: Attention = draft.attention ?? (draft.ring ? { kind: 'glance', everyMinutes: usualLook.ring } : draft.oven ? { kind: 'glance', everyMinutes: usualLook.oven } : draft.ahead ? { kind: 'none' } : { kind: 'hands' });
  return {
    ...head,
    minutes: draft.minutes ?? exactly(1),
    attention,
    cooks: draft.cooks,
    talk: draft.talk ?? (attention.kind !== 'stir' && !draft.places.includes('blender')),
    burns: draft.burns || attention.kind === 'stir',
    ring: draft.ring,
    oven: draft.oven,
    pan: draft.pan ? { name: draft.pan, size: draft.pan } : null,
    places: draft.places,
    mayPause: draft.mayPause,
    ahead: draft.ahead,
  };
}

/**
 * Reads a dish typed step by step: the first line is its name, then one step a line, "title: clause, clause"
 * (docs/cook-plan.md lists the clauses). Lines about the whole dish: "cold", "hold 30 min", "serve 40 min later".
 */
export function dishFromLines(text: string, id: string, rules: KitchenRules): TypedDish {
  const troubles: LineTrouble[] = [];
  const steps: KitchenStep[] = [];
  let name: string | null = null;
  let hot = true;
  let hold: number | null = null;
  let servedAfter = 0;
  text.split(/\r?\n/).forEach((raw, index) => {
    const line = raw.trim();
    const trouble = (code: LineTrouble['code'], at = line): void => {
      troubles.push({ line: index + 1, text: at, code });
    };
    if (line === '' || line.startsWith('//')) return;
    const colon = line.indexOf(':');
    if (name === null) {
      name = line.replace(/:$/, '');
      return;
    }
    if (colon < 0) {
      const held = /^hold (.+)$/i.exec(line);
      const later = /^serve (.+) later$/i.exec(line);
      if (/^hot$/i.test(line)) hot = true;
      else if (/^cold$/i.test(line)) hot = false;
      else if (held && minutesOf(held[1]!)) hold = minutesOf(held[1]!)!.value;
      else if (later && minutesOf(later[1]!)) servedAfter = minutesOf(later[1]!)!.value;
      else trouble('not-understood');
      return;
    }
    const draft: Draft = { minutes: null, attention: null, cooks: 1, talk: null, burns: false, ring: false, oven: null, pan: null, places: [], within: null, wait: 0, after: null, mayPause: false, ahead: null };
    for (const part of listsJoined(line.slice(colon + 1)).split(/[;,](?!\d)/)) if (!clause(draft, part)) trouble('not-understood', part.trim());
    if (!draft.minutes) trouble('no-minutes');
    if (draft.minutes && draft.minutes.high > 1440) trouble('too-long');
    const named = draft.after ?? (steps.length > 0 ? [steps.length] : []);
    const after = named.flatMap((wanted): StepLink[] => {
      const before = steps[wanted - 1];
      if (!before) {
        trouble('unknown-step', String(wanted));
        return [];
      }
      return [{ step: before.id, wait: draft.wait, within: draft.within === null ? null : Math.max(draft.within, draft.wait), reason: 'quality' }];
    });
    steps.push(stepOf(draft, { id: `${id}/${steps.length + 1}`, title: line.slice(0, colon).trim(), after }));
  });
  if (name === null) troubles.push({ line: 1, text: '', code: 'no-title' });
  if (steps.length === 0) troubles.push({ line: 1, text: '', code: 'no-steps' });
  const dish: KitchenDish = { id, name: name ?? id, steps, servedAfter, hot, hold: hold ?? (hot ? rules.holdHot : rules.holdCold), holdReason: 'quality' };
  return { dish, troubles };
}

/** True when the text looks like typed steps rather than a written recipe. */
export function looksTyped(text: string): boolean {
  const lines = text.split(/\r?\n/).map((line) => line.trim()).filter((line) => line !== '');
  const steps = lines.slice(1).filter((line) => /^[^:]+:\s*.*\d\s*(min|h)/i.test(line));
  return steps.length > 0 && steps.length * 2 >= lines.length - 1;
}

