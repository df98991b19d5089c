import { allergenWordFinder, hasPhrase, type AllergenWordFinder } from './allergen-words.ts';
import { graver, type AllergenReason, type SubstanceState, type SubstanceStates } from './allergen-state.ts';
import type { AllergenTables, Composition, SubstanceId } from './allergen-tables.ts';
import type { Food, FoodCode } from './food.ts';
import type { FoodForm, KitchenEntry } from './kitchen-name.ts';
import type { FoodMatch } from './food-match.ts';

/** A food as its words and its match tell it. */
export interface FoodAsked {
  readonly entry: KitchenEntry | null;
  readonly form: FoodForm | null;
  readonly food: Food | null;
  /** The food's words in the line: a word here that names a substance counts as contained. */
  readonly name: string;
  /** Everything that the line says: a word here that names a substance counts as "may". */
  readonly text: string;
  readonly lineId: string | null;
  /** Words of the name that nobody could read ("scotch" eggs), or that were taken for a slip: the food may be another, so its composition rules nothing out. */
  readonly unread?: string | null;
}

/** Infers what foods hold; built once over the tables. */
export interface AllergenReader {
  readonly tables: AllergenTables;
  readonly ids: readonly SubstanceId[];
  readonly words: AllergenWordFinder;
  /** What the tables say of the food itself, null when they say nothing. */
  composition(asked: Pick<FoodAsked, 'entry' | 'form' | 'food'>): Composition | null;
  states(asked: FoodAsked): SubstanceStates;
}

function joined(compositions: readonly Composition[]): Composition | null {
  const [first, ...rest] = compositions;
  if (!first) return null;
  return rest.reduce((a, b) => ({
    basis: a.basis === 'ready' || b.basis === 'ready' ? 'ready' : a.basis === 'made' || b.basis === 'made' ? 'made' : 'single',
    // Names of one table food that disagree: what only one of them holds may be in it.
    contains: a.contains.filter((id) => b.contains.includes(id)),
    may: [...new Set([...a.may, ...b.may, ...a.contains.filter((id) => !b.contains.includes(id)), ...b.contains.filter((id) => !a.contains.includes(id))])],
    cross: [...new Set([...a.cross, ...b.cross])],
    why: a.why ?? b.why,
  }), first);
}

/** Compositions of table foods through the kitchen names that are the same food. */
function compositionsByCode(tables: AllergenTables, entries: readonly KitchenEntry[]): ReadonlyMap<FoodCode, Composition> {
  const byCode = new Map<FoodCode, (Composition | null)[]>();
  for (const entry of entries) {
    for (const form of Object.values(entry.forms)) {
      if (form.code === null || form.nearness !== 'same') continue;
      byCode.set(form.code, [...(byCode.get(form.code) ?? []), tables.entries[entry.name] ?? null]);
    }
  }
  return new Map([...byCode].flatMap(([code, found]) => {
    const known = found.filter((c) => c !== null);
    const whole = known.length === found.length ? joined(known) : null;
    return whole ? [[code, whole] as const] : [];
  }));
}

function withForm(base: Composition, entry: KitchenEntry, form: FoodForm | null, tables: AllergenTables): Composition {
  const rules = tables.forms.filter((rule) => form !== null && rule.forms.includes(form) && (rule.areas.length === 0 || rule.areas.includes(entry.area)));
  return rules.reduce((now, rule) => ({
    basis: rule.basis ?? now.basis,
    contains: [...new Set([...now.contains, ...(rule.contains ?? [])])],
    may: [...new Set([...now.may, ...(rule.may ?? [])])],
    cross: now.cross,
    why: now.why ?? rule.why,
  }), base);
}

/** `pork` is meat too, whatever the row says. */
const implied: Readonly<Record<SubstanceId, readonly SubstanceId[]>> = { pork: ['meat'] };

/** Builds the reader; `entries` are the kitchen names, so that a table food can be told by them. */
export function allergenReader(tables: AllergenTables, entries: readonly KitchenEntry[]): AllergenReader {
  const ids = tables.substances.map((s) => s.id);
  const words = allergenWordFinder(tables);
  const byCode = compositionsByCode(tables, entries);
  const rules = tables.tableFoods.map((rule) => ({ rule, group: new RegExp(rule.group, 'i'), name: rule.name === null ? null : new RegExp(rule.name, 'i') }));

  function composition(asked: Pick<FoodAsked, 'entry' | 'form' | 'food'>): Composition | null {
    const { entry, form, food } = asked;
    if (entry) {
      const base = tables.entries[entry.name];
      return base ? withForm(base, entry, form, tables) : null;
    }
    if (!food || food.table === 'own') return null;
    return byCode.get(food.code) ?? rules.find(({ rule, group, name }) => rule.table === food.table && group.test(food.group) && (name === null || name.test(food.name)))?.rule ?? null;
  }

  function states(asked: FoodAsked): SubstanceStates {
    const { entry, food, name, text, lineId } = asked;
    const known = composition(asked);
    const treatments = tables.treatments.filter((t) => t.words.some((word) => hasPhrase(text, word)));
    const made = (code: AllergenReason['code'], of: string, why: string | null): AllergenReason => ({ code, of, why, lineId });
    const called = entry?.name ?? food?.name ?? name;
    const ready = known?.basis === 'ready' || treatments.some((t) => t.basis === 'ready');
    const unread = asked.unread ?? null;
    const rest: SubstanceState = unread !== null
      ? { state: 'unknown', reasons: [made('words-not-read', unread, null)] }
      : known === null
      ? { state: 'unknown', reasons: [made('no-composition', called, null)] }
      : ready ? { state: 'unknown', reasons: [made('ready-made', called, null)] } : { state: 'not', reasons: [] };
    const out = new Map<SubstanceId, SubstanceState>(ids.map((id) => [id, rest]));
    const put = (id: SubstanceId, state: SubstanceState): void => {
      for (const one of [id, ...(implied[id] ?? [])]) out.set(one, graver(out.get(one) ?? rest, state));
    };
    for (const id of known?.contains ?? []) put(id, { state: 'contains', reasons: [made('composition', called, null)] });
    for (const id of known?.may ?? []) put(id, { state: 'may', reasons: [made('some-recipes', called, known?.why ?? null)] });
    for (const id of known?.cross ?? []) put(id, { state: 'may', reasons: [made('cross-contact', called, known?.why ?? null)] });
    for (const t of treatments) {
      for (const id of t.contains) put(id, { state: 'contains', reasons: [made('treatment', t.words[0] ?? '', t.why)] });
      for (const id of t.may) put(id, { state: 'may', reasons: [made('treatment', t.words[0] ?? '', t.why)] });
    }
    const told = known !== null && entry ? [entry.name, ...entry.also] : [];
    const named = words.find(food && !entry ? `${name} ${food.name}` : name, told);
    for (const { substance, word } of named) put(substance, { state: 'contains', reasons: [made('words', word, null)] });
    for (const { substance, word } of words.find(text, [...told, name])) put(substance, { state: 'may', reasons: [made('words', word, null)] });
    for (const claim of tables.claims) {
      const word = claim.words.find((w) => hasPhrase(text, w));
      if (word === undefined) continue;
      for (const id of claim.lowers) {
        if (out.get(id)?.state === 'contains') out.set(id, { state: 'may', reasons: [made('claim', word, null)] });
      }
    }
    return out;
  }
  return { tables, ids, words, composition, states };
}

/** What a match tells of the food, for the reader. */
export function askedFood(match: FoodMatch, food: Food | null, line: { readonly id: string | null; readonly name: string; readonly text: string }): FoodAsked {
  const doubt = [...match.reasons, ...(match.note ? [match.note] : [])].find((note) => note.code === 'unknown-words' || note.code === 'second-food' || note.code === 'slip-read');
  return { unread: doubt ? Object.values(doubt.data).join(' ') : null, entry: match.entry, form: match.form, food, name: line.name, text: line.text, lineId: line.id };
}
