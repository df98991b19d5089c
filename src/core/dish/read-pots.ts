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
  /** Whether the lid was put on; null while nobody said. */
  lid: boolean | null;
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
  /** Lines of the bowl or blender filled last, for "the mixture" and "the batter". */
  mixture(): string[];
  /** Whether the line lies in a vessel. */
  holds(id: string): boolean;
  /** Lets the clause happen; gives the lines in its vessel, those it adds included. */
  take(taken: Taken): string[];
}

const fresh = new Set(['another', 'separate', 'second', 'different', 'clean', 'new']);
/** Vessels that nobody calls "the pan": naming one is naming another vessel. */
const ownKind = new Set(['pressure cooker', 'slow cooker', 'instant pot', 'cooker', 'karahi', 'kadhai', 'kadai', 'tagine']);
const inWaterDone = new Set<CookingMethod | null>(['boiled-kept', 'boiled-drained', 'blanched', 'steamed', 'poached', 'pressure-cooked', 'deep-fried']);
const fryingMethods = new Set<CookingMethod | null>(['fried', 'stir-fried', 'toasted']);
const hob = new Set<CookingMethod | null>(['fried', 'stir-fried', 'simmered', 'boiled-kept', 'boiled-drained', 'stewed', 'poached', 'blanched', 'deep-fried', 'toasted']);
/** Cooked by itself: in fresh water, over steam, under the grill, not on top of what lies in the pan. */
const alone = new Set<CookingMethod | null>(['boiled-kept', 'boiled-drained', 'blanched', 'steamed', 'grilled', 'toasted', 'deep-fried']);
const homeOf = (method: CookingMethod | null): string => (method === 'steamed' ? 'steamer' : method === 'grilled' || method === 'roasted' || method === 'baked' ? 'oven dish' : 'pan');
const partly = new Set(['half', 'some', 'remaining', 'rest', 'little', 'most', 'quarter', 'third', 'reserved']);
/** Done to a food wherever it lies. */
export const onFood: ReadonlySet<string> = new Set(['season', 'coat', 'rub', 'brush', 'baste', 'glaze']);
const pouring = new Set(['transfer', 'return', 'move', 'pour', 'tip', 'spoon', 'ladle', 'divide', 'turn']);
const bowlVerbs = new Set(['whisk', 'mix', 'combine', 'beat', 'sift', 'knead', 'toss', 'marinate']);

export function potState(vocabulary: ReaderVocabulary): PotState {
  const vessels: Vessel[] = [];
  const aside = new Set<string>();
  /** What clings to a food that was lifted out of its marinade, by the food. */
  const clinging = new Map<string, readonly string[]>();
  let current: Vessel | null = null;

  const make = (kind: string, word: string): Vessel => {
    const vessel: Vessel = { kind, word, lines: new Set(), cooking: null, lid: null };
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
      if (onFood.has(clause.verb)) return null;
      const hasLines = lines.length > 0;
      const place = named(clause);
      const before = current;
      if (place) {
        const same = ['pan', 'frying pan'].includes(place.kind) && place.word === 'pan' && !place.another && before && ['pan', 'frying pan'].includes(before.kind) ? before : null;
        const panAgain = place.word === 'pan' && !place.another ? vessels.findLast((vessel) => vessel.kind === 'pan' || vessel.kind === 'frying pan') : undefined;
        const distinct = !place.another && ownKind.has(place.word) && !vessels.some((vessel) => vessel.word === place.word) && (latest(place.kind)?.lines.size ?? 0) > 0;
        if (distinct) {
          current = make(place.kind, place.word);
          return before;
        }
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
      const method = clause.entry?.method ?? null;
      const others = hasLines && current !== null && current.lines.size > 0 && !lines.some((id) => current?.lines.has(id));
      if ((inWater || alone.has(method)) && others) {
        current = make(homeOf(method), homeOf(method) === 'pan' ? 'water' : homeOf(method));
        return before;
      }
      // Fried in a pan of its own, not on top of what boils
      if (fryingMethods.has(method) && others && inWaterDone.has(current?.cooking ?? null)) {
        const pan = latest('frying pan');
        current = pan && pan !== current ? pan : make('frying pan', 'frying pan');
        return before;
      }
      if (hob.has(method) && others && current?.kind === 'oven dish') {
        current = vessels.findLast((vessel) => vessel.kind === 'pan' || vessel.kind === 'frying pan') ?? make('pan', 'pan');
        return before;
      }
      if (clause.entry?.heat === 'oven' && kind === 'cook' && hasLines && current?.kind !== 'oven dish') current = latest('oven dish') ?? make('oven dish', 'oven dish');
      else if (current === null && hasLines) {
        if (bowlVerbs.has(clause.verb)) current = make('bowl', 'bowl');
        else if (kind === 'cook' || kind === 'heat' || kind === 'add') current = make(homeOf(method), method === 'pressure-cooked' ? 'pressure cooker' : homeOf(method));
      } else if (kind === 'wait' && hasLines && clause.entry?.heat === 'none' && !lines.some((id) => vessels.some((vessel) => vessel.lines.has(id)))) {
        current = make('bowl', 'bowl');
        for (const id of lines) current.lines.add(id);
      } else if (current?.kind === 'bowl' && kind === 'cook' && !hasLines && clause.entry?.method !== 'microwaved' && clause.entry?.method !== 'soaked') {
        const bowl = current;
        current = make(homeOf(method), homeOf(method));
        for (const id of bowl.lines) current.lines.add(id);
        bowl.lines.clear();
      } else if (current?.kind === 'bowl' && kind === 'cook' && hasLines) current = vessels.findLast((vessel) => vessel.kind !== 'bowl') ?? make('pan', 'pan');
      else return null;
      return before === current ? null : before;
    },
    holds: (id) => vessels.some((vessel) => vessel.lines.has(id)),
    mixture() {
      const bowl = vessels.findLast((vessel) => (vessel.kind === 'bowl' || vessel.kind === 'blender') && vessel.lines.size > 0);
      return [...(bowl ?? current)?.lines ?? []];
    },
    take({ clause, lines, method, pronoun, moved }) {
      const kind = clause.entry?.kind ?? null;
      if (kind === 'prepare' && method === null && !['cover', 'uncover', 'turn'].includes(clause.verb)) return [];
      if (current === null) return kind === 'cook' || kind === 'add' || kind === 'heat' ? [...lines] : [];
      const { words } = clause.row;
      if (onFood.has(clause.verb) && lines.length > 0 && !(clause.verb === 'season' && words[words.indexOf('season') + 1] === 'with')) return lines.every((id) => current?.lines.has(id)) ? [...current.lines] : [...lines];
      if (words.includes('away') && kind === 'add') {
        const thrown = [...current.lines];
        current.lines.clear();
        return thrown;
      }
      if (kind === 'remove' && clause.verb !== 'drain' && !words.includes('heat')) {
        const out = lines.length > 0 ? lines : [...current.lines];
        const was = [...current.lines];
        if (words.some((word) => word === 'marinade' || word === 'brine')) for (const id of out) clinging.set(id, was.filter((other) => !out.includes(other)));
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
      // "pour over the lentils": what lies here goes to where they are
      const goal = pouring.has(clause.verb) && lines.length > 0 && !moved && words.some((word, at) => word === 'over' && words[at + 1] !== 'a' && at <= 2) ? vessels.find((vessel) => vessel !== current && lines.every((id) => vessel.lines.has(id))) : undefined;
      if (goal) {
        for (const id of current.lines) goal.lines.add(id);
        current.lines.clear();
        current = goal;
        return [...goal.lines];
      }
      // "stir the spinach into the lentils" happens where the lentils are; "mix into the oats" takes along what lies here
      const where = moved || kind !== 'add' ? -1 : words.findIndex((word) => word === 'into' || word === 'through' || word === 'to');
      const last = lines.findLast((id) => vessels.some((vessel) => vessel.lines.has(id)));
      const target = where < 0 || last === undefined || current.lines.has(last) ? undefined : vessels.find((vessel) => vessel.lines.has(last));
      if (target) {
        if (words[where - 1] === clause.verb) {
          for (const id of current.lines) target.lines.add(id);
          current.lines.clear();
        }
        current = target;
      }
      if (kind === 'move' || words.includes('return') || words.includes('back')) {
        for (const id of lines.length > 0 ? lines : aside) {
          current.lines.add(id);
          aside.delete(id);
        }
      }
      const turnedIn = clause.verb === 'turn' && lines.length > 0 && words.includes('in'); // "turn the chicken in it"
      if ((kind !== 'prepare' || turnedIn) && kind !== 'wait' && kind !== 'remove' && kind !== 'serve' && kind !== null) {
        const share = words.some((word) => partly.has(word));
        for (const id of lines) {
          if (!share) for (const vessel of vessels) if (vessel !== current) vessel.lines.delete(id);
          current.lines.add(id);
          for (const clung of clinging.get(id) ?? []) current.lines.add(clung);
        }
      }
      if (method !== null && method !== 'soaked') current.cooking = method;
      return [...current.lines];
    },
  };
}
