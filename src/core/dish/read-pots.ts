import type { CookingMethod } from './recipe.ts';
import type { Clause } from './read-clauses.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

/** A vessel on the way through the method. */
export interface Vessel {
  readonly kind: string;
  readonly word: string;
  readonly lines: Set<string>;
  /** The treatment it last gave. */
  cooking: CookingMethod | null;
}

export interface Taken {
  readonly clause: Clause;
  readonly lines: readonly string[];
  readonly method: CookingMethod | null;
  readonly pronoun: boolean;
  /** The vessel was changed by this clause: what was left behind. */
  readonly moved: Vessel | null;
}

/** Which lines lie in which vessel while the method is read. */
export interface PotState {
  readonly current: Vessel | null;
  /** Goes to the vessel a clause names; gives the one left behind, null when it stays. `lines`: those the clause names. */
  enter(clause: Clause, lines: readonly string[]): Vessel | null;
  /** Lets the clause happen; gives the lines in its vessel, those it adds included. */
  take(taken: Taken): string[];
}

const fresh = new Set(['another', 'separate', 'second', 'different', 'clean', 'new']);
const pouring = new Set(['transfer', 'return', 'move', 'pour', 'tip', 'spoon', 'ladle', 'divide', 'turn']);
const bowlVerbs = new Set(['whisk', 'mix', 'combine', 'beat', 'sift', 'knead', 'toss', 'marinate']);

export function potState(vocabulary: ReaderVocabulary): PotState {
  const vessels: Vessel[] = [];
  const aside = new Set<string>();
  let current: Vessel | null = null;

  const make = (kind: string, word: string): Vessel => {
    const vessel: Vessel = { kind, word, lines: new Set(), cooking: null };
    vessels.push(vessel);
    return vessel;
  };
  const latest = (kind: string): Vessel | null => vessels.findLast((vessel) => vessel.kind === kind) ?? null;

  const named = (clause: Clause): { kind: string; word: string; another: boolean } | null => {
    const { words } = clause.row;
    let found: { kind: string; word: string; another: boolean } | null = null;
    for (let at = 0; at < words.length; at++) {
      const length = vocabulary.vessels.longestAt(words, at);
      if (length === 0) continue;
      const word = words.slice(at, at + length).join(' ');
      const kind = vocabulary.vesselKinds.get(word)!;
      const before = words.slice(Math.max(0, at - 4), at);
      at += length - 1;
      if (kind === 'colander' || (word === 'tin' && !before.includes('the')) || (word === 'plate' && clause.verb === 'serve')) continue;
      if (clause.verb === 'remove' || clause.verb === 'lift' || before.includes('from')) continue;
      const another = before.some((w) => fresh.has(w)) || ((before.includes('a') || before.includes('an')) && (latest(kind)?.lines.size ?? 0) > 0);
      found = { kind, word, another };
    }
    return found;
  };

  return {
    get current() {
      return current;
    },
    enter(clause, lines) {
      const hasLines = lines.length > 0;
      const place = named(clause);
      const before = current;
      if (place) {
        const same = ['pan', 'frying pan'].includes(place.kind) && place.word === 'pan' && !place.another && before && ['pan', 'frying pan'].includes(before.kind) ? before : null;
        const panAgain = place.word === 'pan' && !place.another ? vessels.findLast((vessel) => vessel.kind === 'pan' || vessel.kind === 'frying pan') : undefined;
        current = place.another ? make(place.kind, place.word) : (same ?? panAgain ?? latest(place.kind) ?? make(place.kind, place.word));
        return before === current ? null : before;
      }
      const kind = clause.entry?.kind;
      const inWater = kind === 'cook' && hasLines && clause.row.words.includes('water') && (clause.row.words.includes('boiling') || clause.row.words.includes('salted'));
      const elsewhere = hasLines && (kind === 'cook' || kind === 'remove' || kind === 'wait') ? vessels.find((vessel) => vessel !== current && lines.every((id) => vessel.lines.has(id)) && !lines.every((id) => current?.lines.has(id))) : undefined;
      if (elsewhere) {
        current = elsewhere;
        return before;
      }
      if (inWater && current && current.lines.size > 0 && !lines.some((id) => current?.lines.has(id))) {
        current = make('pan', 'water');
        return before;
      }
      if (clause.entry?.heat === 'oven' && kind === 'cook' && hasLines && current?.kind !== 'oven dish') current = latest('oven dish') ?? make('oven dish', 'oven dish');
      else if (current === null && hasLines) {
        if (bowlVerbs.has(clause.verb)) current = make('bowl', 'bowl');
        else if (kind === 'cook' || kind === 'heat' || kind === 'add') current = make('pan', 'pan');
      } else if (current?.kind === 'bowl' && kind === 'cook' && hasLines) current = vessels.findLast((vessel) => vessel.kind !== 'bowl') ?? make('pan', 'pan');
      else return null;
      return before === current ? null : before;
    },
    take({ clause, lines, method, pronoun, moved }) {
      const kind = clause.entry?.kind ?? null;
      if (kind === 'prepare' && method === null && !['cover', 'uncover', 'turn', 'mash', 'blend', 'blitz', 'purée', 'puree'].includes(clause.verb)) return [];
      if (current === null) return kind === 'cook' || kind === 'add' || kind === 'heat' ? [...lines] : [];
      const { words } = clause.row;
      if (kind === 'remove' && clause.verb !== 'drain' && !words.includes('heat')) {
        const out = lines.length > 0 ? lines : [...current.lines];
        const was = [...current.lines];
        for (const id of out) {
          current.lines.delete(id);
          aside.add(id);
        }
        return was;
      }
      if (moved && (pouring.has(clause.verb) || kind === 'move' || words.includes('mixture')) && (lines.length === 0 || pronoun || words.includes('mixture'))) {
        for (const id of moved.lines) current.lines.add(id);
        moved.lines.clear();
      }
      if (kind === 'move' || words.includes('return') || words.includes('back')) {
        for (const id of lines.length > 0 ? lines : aside) {
          current.lines.add(id);
          aside.delete(id);
        }
      }
      if (kind !== 'prepare' && kind !== 'wait' && kind !== 'remove' && kind !== 'serve' && kind !== null) for (const id of lines) current.lines.add(id);
      if (method !== null && method !== 'soaked') current.cooking = method;
      return [...current.lines];
    },
  };
}
