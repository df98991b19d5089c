import type { Food, FoodForm, FoodTable, KitchenEntry } from '../foods/index.ts';
import { likeness, makeUp, type MakeUp } from './swap-composition.ts';
import { ofMember, type DishRole, type KeptQuality, type SwapFamily, type SwapTables } from './swap-tables.ts';

/** The food of a line that may be swapped. */
export interface SwapSource {
  readonly entry: KitchenEntry | null;
  readonly form: FoodForm | null;
  readonly food: Food | null;
}

/** Why an alternative stands where it stands. */
export type SwapReason =
  | { readonly code: 'family'; readonly family: string; readonly roles: readonly DishRole[]; readonly tight: boolean }
  | { readonly code: 'near-kin'; readonly family: string }
  | { readonly code: 'other-form'; readonly form: FoodForm }
  | { readonly code: 'same-shelf' }
  | { readonly code: 'make-up'; readonly likeness: number }
  | { readonly code: 'amount'; readonly keeps: KeptQuality; readonly ratio: number }
  | { readonly code: 'time'; readonly before: number; readonly after: number };

export interface SwapOption {
  readonly entry: KitchenEntry;
  readonly form: FoodForm;
  readonly food: Food;
  readonly nearness: 'same' | 'near';
  readonly roles: readonly DishRole[];
  /** Grams of this food for a gram of the line's. */
  readonly ratio: number;
  /** Minutes of cooking before and after, where both are known. */
  readonly minutes: { readonly before: number; readonly after: number } | null;
  /** 0 to 1. */
  readonly score: number;
  readonly reasons: readonly SwapReason[];
}

/** Ranks alternatives; built once over the kitchen names, so that ranking a line is quick. */
export interface SwapRanker {
  rank(source: SwapSource, limit: number): readonly SwapOption[];
  /** The parts that a food can play, from its families. */
  roles(entry: KitchenEntry): readonly DishRole[];
}

/** Shares of the score; they add up to 1. */
const shares = { family: 0.42, kin: 0.33, makeUp: 0.25 } as const;
const looseFit = 0.55;
const otherFormFit = 0.72;
const shelfFit = 0.15;
/** Forms that a food is bought in, so that one can be bought for another; the rest are other foods in the hand, or what she does to it herself. */
const boughtAs = new Set<FoodForm>(['raw', 'frozen', 'canned', 'dried', 'smoked', 'salted', 'unsalted', 'wholemeal', 'low-fat', 'skimmed']);

interface Place {
  readonly family: SwapFamily;
  readonly group: number;
  readonly order: number;
}

interface Draft {
  option: SwapOption;
}

/** The form of an alternative: the line's own where the food has it, else its usual one. */
function formOf(entry: KitchenEntry, { form }: SwapSource): FoodForm {
  return form !== null && entry.forms[form]?.code ? form : entry.usual;
}

export function swapRanker(tables: SwapTables, entries: readonly KitchenEntry[], foods: FoodTable): SwapRanker {
  const byName = new Map(entries.map((entry) => [entry.name, entry]));
  const byArea = new Map<string, KitchenEntry[]>();
  for (const entry of entries) byArea.set(entry.area, [...(byArea.get(entry.area) ?? []), entry]);
  const places = new Map<string, Place[]>();
  for (const family of tables.families) {
    family.groups.forEach((names, group) => names.forEach((name, order) => places.set(name, [...(places.get(name) ?? []), { family, group, order }])));
  }
  const makeUps = new Map<string, MakeUp>();
  const made = (food: Food): MakeUp => {
    const known = makeUps.get(food.code) ?? makeUp(food);
    makeUps.set(food.code, known);
    return known;
  };

  function option(source: SwapSource, entry: KitchenEntry, at: { form: FoodForm; fit: number; kin: number; reasons: readonly SwapReason[]; family: SwapFamily | null }): SwapOption | null {
    const kitchen = entry.forms[at.form];
    const food = kitchen?.code ? foods.find(kitchen.code) : null;
    if (!food || !kitchen || kitchen.nearness === 'none') return null;
    const own = source.entry;
    const strengths = at.family?.strength ?? {};
    const before = (own && ofMember(strengths, own.name, source.form)) ?? 1;
    const after = ofMember(strengths, entry.name, at.form) ?? 1;
    const ratio = before / after;
    const alike = source.food ? likeness(made(source.food), made(food), ratio) : 0.5;
    const minutesBefore = own && at.family ? ofMember(at.family.minutes, own.name, source.form) : null;
    const minutesAfter = at.family ? ofMember(at.family.minutes, entry.name, at.form) : null;
    const minutes = minutesBefore !== null && minutesAfter !== null ? { before: minutesBefore, after: minutesAfter } : null;
    const reasons: SwapReason[] = [...at.reasons, { code: 'make-up', likeness: alike }];
    if (at.family && Math.abs(ratio - 1) > 0.02) reasons.push({ code: 'amount', keeps: at.family.keeps, ratio });
    if (minutes && minutes.before !== minutes.after) reasons.push({ code: 'time', ...minutes });
    return {
      entry, form: at.form, food, nearness: kitchen.nearness, ratio, minutes, reasons,
      roles: at.family?.roles ?? [],
      score: shares.family * at.fit + shares.kin * at.kin + shares.makeUp * alike - (kitchen.nearness === 'near' ? 0.02 : 0),
    };
  }

  function rank(source: SwapSource, limit: number): readonly SwapOption[] {
    const best = new Map<string, Draft>();
    const offer = (found: SwapOption | null): void => {
      if (!found || (found.entry.name === source.entry?.name && found.food.code === source.food?.code)) return;
      const key = `${found.entry.name} ${found.form === found.entry.usual ? '' : found.form}`;
      const before = best.get(key);
      if (!before || before.option.score < found.score) best.set(key, { option: found });
    };
    const { entry } = source;
    for (const own of entry ? (places.get(entry.name) ?? []) : []) {
      own.family.groups.forEach((names, group) => names.forEach((name, order) => {
        const other = byName.get(name);
        if (!other || name === entry?.name) return;
        const near = group === own.group;
        const kin = near ? 1 - 0.045 * Math.min(8, Math.abs(order - own.order)) - 0.01 * Math.min(8, order) : 0.12;
        const reasons: SwapReason[] = [{ code: 'family', family: own.family.id, roles: own.family.roles, tight: own.family.tight }, ...(near ? [{ code: 'near-kin' as const, family: own.family.id }] : [])];
        offer(option(source, other, { form: formOf(other, source), fit: own.family.tight ? 1 : looseFit, kin, reasons, family: own.family }));
      }));
    }
    if (entry) {
      const family = places.get(entry.name)?.[0]?.family ?? null;
      for (const form of Object.keys(entry.forms) as FoodForm[]) {
        if (form === source.form || !boughtAs.has(form) || (source.form !== null && !boughtAs.has(source.form))) continue;
        offer(option(source, entry, { form, fit: otherFormFit, kin: 0.7, reasons: [{ code: 'other-form', form }], family }));
      }
    }
    const shelf = entry ? (byArea.get(entry.area) ?? []) : [...byArea.values()].flat();
    if (best.size < limit) {
      for (const other of shelf) {
        if (other === entry || best.has(`${other.name} `)) continue;
        offer(option(source, other, { form: formOf(other, source), fit: entry ? shelfFit : 0, kin: 0, reasons: [{ code: 'same-shelf' }], family: null }));
      }
    }
    return [...best.values()].map((d) => d.option).sort((a, b) => b.score - a.score || a.entry.name.localeCompare(b.entry.name)).slice(0, limit);
  }

  return { rank, roles: (entry) => [...new Set((places.get(entry.name) ?? []).flatMap((p) => p.family.roles))] };
}
