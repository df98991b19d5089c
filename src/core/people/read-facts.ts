import { partsOfDay, type Day } from '../calendar/index.ts';
import type { LifeState, LifeStateKind, Person } from './life-state.ts';

/** What one line said about a person; null: the line is about something else. */
export type Fact =
  | { readonly kind: 'age'; readonly age: number }
  | { readonly kind: 'weight'; readonly kg: number }
  | { readonly kind: 'state'; readonly state: LifeState };

const ageLine = /^(?:age|aged)\s*[:=]?\s*(\d{1,2})\b/i;
const bornLine = /^(?:born|birth year|year of birth|birthday|date of birth)\s*[:=]?\s*(?:in\s+)?.*?\b((?:19|20)\d{2})\b/i;
const weightLine = /^(?:weight|weighs)\s*[:=]?\s*(\d{2,3}(?:[.,]\d)?)\s*(?:kg|kilos?)\b/i;

export interface FactContext {
  readonly kinds: readonly LifeStateKind[];
  readonly today: Day;
  /** Reads "from … " and "to …" dates; null when the words hold none. */
  readonly dateIn: (text: string) => Day | null;
}

/** Reads a line such as "age: 34", "born 1990", "combined pill since 2026-01-10", "pregnant". */
export function readFact(line: string, context: FactContext): Fact | null {
  const text = line.trim();
  const age = ageLine.exec(text);
  if (age) return { kind: 'age', age: Number(age[1]) };
  const born = bornLine.exec(text);
  if (born) return { kind: 'age', age: partsOfDay(context.today).year - Number(born[1]) };
  const weight = weightLine.exec(text);
  if (weight) return { kind: 'weight', kg: Number(weight[1]!.replace(',', '.')) };
  return readState(text, context);
}

function readState(text: string, { kinds, dateIn }: FactContext): Fact | null {
  const lower = text.toLowerCase();
  // "no pill", "not pregnant": said to be absent.
  if (/^(?:not|never|no longer)\b/.test(lower)) return null;
  const named = kinds.flatMap((kind) => kind.words.map((word) => ({ kind, word }))).filter(({ word }) => new RegExp(`(?<![a-z])${word}(?![a-z])`).test(lower)).sort((a, b) => b.word.length - a.word.length)[0];
  if (!named) return null;
  const until = /\b(?:until|till|to|stopped|ended)\b(.*)$/i.exec(text);
  const since = /\b(?:since|from|started)\b(.*?)(?:\b(?:until|till|to)\b|$)/i.exec(text);
  return { kind: 'state', state: { id: named.kind.id, from: since ? dateIn(since[1]!) : null, to: until ? dateIn(until[1]!) : null } };
}

/** A person with one more fact known; the latest said wins. */
export function withFact(person: Person, fact: Fact): Person {
  switch (fact.kind) {
    case 'age':
      return { ...person, age: fact.age };
    case 'weight':
      return { ...person, bodyWeightKg: fact.kg };
    case 'state':
      return { ...person, states: [...person.states, fact.state] };
  }
}
