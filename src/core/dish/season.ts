/** Months 1 to 12 in which a food is in season. */
export type SeasonMonths = ReadonlySet<number>;

export interface SeasonTable {
  readonly region: string;
  readonly name: string;
  readonly source: string;
  /** By kitchen name, as "6-9"; a food that is not here has no season told. */
  readonly foods: Readonly<Record<string, string>>;
}

export type SeasonState = 'in' | 'out' | 'all-year' | 'not-told';

/** Reads "6-9", "11-3" (over the new year), "1-12" or "4, 6-8"; null when it is none. */
export function readMonths(text: string): SeasonMonths | null {
  const months = new Set<number>();
  for (const part of text.split(',')) {
    const found = /^\s*(\d{1,2})(?:\s*[-–]\s*(\d{1,2}))?\s*$/.exec(part);
    if (!found) return null;
    const [from, to] = [Number(found[1]), Number(found[2] ?? found[1])];
    if (from < 1 || from > 12 || to < 1 || to > 12) return null;
    for (let month = from; ; month = (month % 12) + 1) {
      months.add(month);
      if (month === to) break;
    }
  }
  return months.size === 0 ? null : months;
}

/** Whether a food is in season; her own months go before the table's, and the fresh food only: frozen, dried and tinned food has none. */
export function seasonOf(name: string | null, form: string | null, at: { readonly table: SeasonTable; readonly own: Readonly<Record<string, string>>; readonly month: number }): SeasonState {
  if (name === null || (form !== null && form !== 'raw')) return 'not-told';
  const told = at.own[name] ?? at.table.foods[name];
  const months = told === undefined ? null : readMonths(told);
  if (months === null) return 'not-told';
  return months.size === 12 ? 'all-year' : months.has(at.month) ? 'in' : 'out';
}

/** Something she has at home; `useBy` YYYY-MM-DD where it will not keep. */
export interface PantryItem {
  readonly id: string;
  readonly food: string;
  /** In her words, "300 g", "half a bunch"; empty where she did not say. */
  readonly amount: string;
  readonly useBy: string | null;
}

export interface PantryFood {
  readonly item: PantryItem;
  readonly entryName: string | null;
  readonly code: string | null;
  readonly grams: number | null;
}

/** A dish for the pantry: which of her things it uses up. */
export interface UseUp {
  readonly dishId: string;
  readonly uses: readonly { readonly item: PantryItem; readonly lineId: string; readonly neededG: number | null; readonly enough: boolean | null }[];
  /** Lines that she would have to buy. */
  readonly toBuy: number;
  /** Days until the first used thing must be used; null where none says. */
  readonly firstUseBy: string | null;
}

/** Ranks dishes by what they use up: what spoils first, then the most things, then the least to buy. */
export function useUp(pantry: readonly PantryFood[], dishes: readonly { readonly dishId: string; readonly lines: readonly { readonly lineId: string; readonly entryName: string | null; readonly code: string | null; readonly grams: number | null; readonly free: boolean }[] }[]): readonly UseUp[] {
  const found = dishes.map(({ dishId, lines }): UseUp => {
    const uses = lines.flatMap((line) => {
      const have = pantry.find((p) => (p.entryName !== null && p.entryName === line.entryName) || (p.code !== null && p.code === line.code));
      return have && !line.free ? [{ item: have.item, lineId: line.lineId, neededG: line.grams, enough: have.grams === null || line.grams === null ? null : have.grams >= line.grams * 0.95 }] : [];
    });
    const dates = uses.map((u) => u.item.useBy).filter((d) => d !== null).sort();
    return { dishId, uses, toBuy: lines.filter((l) => !l.free).length - uses.length, firstUseBy: dates[0] ?? null };
  }).filter((d) => d.uses.length > 0);
  const late = '9999-12-31';
  return found.sort((a, b) => (a.firstUseBy ?? late).localeCompare(b.firstUseBy ?? late) || b.uses.length - a.uses.length || a.toBuy - b.toBuy || a.dishId.localeCompare(b.dishId));
}
