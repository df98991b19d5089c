import { dishAllergens } from '../core/dish/index.ts';
import { allergenList, listedAllergens, saidAnyway, toldDiets, type AllergenReason } from '../core/foods/index.ts';
import { allergenCaution, allergenReasonText, allergenStateText, dietVerdictText, fodmapCaution } from '../messages/allergens.ts';
import { listed } from '../messages/numbers.ts';
import type { AllergenReport } from './change-report.ts';
import type { ChangeContext } from './change-tables.ts';
import { sourceText } from './dish-tables.ts';
import type { WorkedDish } from './work-out-dish.ts';

const reasonsTold = 6;

/** What a dish holds by the list of her settings, with reasons, diets and FODMAP notes. */
export function reportAllergens(dish: WorkedDish, context: ChangeContext): AllergenReport {
  const { change, reader, settings, tables } = context;
  const list = allergenList(change.allergens, settings.allergenList);
  const { lines, states } = dishAllergens(dish.lines.map((l) => ({ line: l.line, match: l.match, food: l.food })), dish.recipe, reader);
  const textOf = new Map(dish.lines.map((l) => [l.line.id, l.line.text]));
  const nameOf = new Map(change.allergens.substances.map((s) => [s.id, s.name]));
  const name = (id: string): string => nameOf.get(id) ?? id;
  const reason = (r: AllergenReason): string => allergenReasonText(r, r.lineId === null ? null : (textOf.get(r.lineId) ?? null));
  const told = (reasons: readonly AllergenReason[]): string[] => {
    const all = [...new Set(reasons.map(reason))];
    return all.length <= reasonsTold ? all : [...all.slice(0, reasonsTold), `and ${all.length - reasonsTold} more.`];
  };
  return {
    list: { id: list.id, name: list.name, note: list.note, source: sourceText(tables, list.source, null) ?? list.source, checked: list.checked },
    items: listedAllergens(list, states).map(({ item, state, reasons, found }) => ({
      id: item.id, name: item.name, clause: item.clause, state, words: allergenStateText(state), remark: item.remark,
      members: item.members.length === 1 || (state !== 'contains' && state !== 'may') ? [] : found.filter((f) => f.state === state).map((f) => name(f.substance)),
      reasons: told(reasons),
    })),
    saidAnyway: saidAnyway(change.allergens, list, states).map(({ substance, told: { state } }) => ({ name: substance.name, state, words: allergenStateText(state) })),
    diets: toldDiets(change.allergens, states).map(({ diet, verdict, by }) => ({
      id: diet.id, name: diet.name, verdict, words: dietVerdictText(verdict),
      because: verdict === 'fits' ? '' : listed([...new Set(by.map((b) => name(b.substance)))]) + (by[0]?.reasons[0] ? `. ${reason(by[0].reasons[0])}` : ''),
    })),
    fodmap: {
      caution: fodmapCaution,
      source: sourceText(tables, change.allergens.fodmap.source, change.allergens.fodmap.locator) ?? '',
      lines: lines.filter((l) => l.fodmap.length > 0).map((l) => ({ lineId: l.lineId, text: textOf.get(l.lineId) ?? '', kinds: l.fodmap })),
    },
    lines: lines.map((l) => {
      const of = (state: string): string[] => [...l.states].filter(([id, s]) => s.state === state && change.allergens.substances.some((x) => x.id === id && x.kind === 'allergen')).map(([id]) => name(id));
      return { lineId: l.lineId, text: textOf.get(l.lineId) ?? '', contains: of('contains'), may: of('may'), unknown: of('unknown').length > 0 };
    }),
    caution: allergenCaution,
  };
}
