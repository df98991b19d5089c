import { graver, type SubstanceState, type SubstanceStates } from './allergen-state.ts';
import type { AllergenList, AllergenListItem, AllergenTables, Substance, SubstanceId } from './allergen-tables.ts';
import { AppError } from '../../errors.ts';

/** One entry of a legal list, told for a dish. `found` are the members that are more than absent. */
export interface ListedAllergen extends SubstanceState {
  readonly item: AllergenListItem;
  readonly found: readonly { readonly substance: SubstanceId; readonly state: SubstanceState['state'] }[];
}

/** The list with that id; throws `unknown-allergen-list`. */
export function allergenList(tables: AllergenTables, id: string): AllergenList {
  const list = tables.lists.find((l) => l.id === id);
  if (!list) throw new AppError('bad-input', { what: `There is no allergen list “${id}”. Choose one of: ${tables.lists.map((l) => l.id).join(', ')}.` });
  return list;
}

/** A legal list told for a dish: each entry has the gravest state of its members. */
export function listedAllergens(list: AllergenList, states: SubstanceStates): readonly ListedAllergen[] {
  return list.items.map((item) => {
    const members = item.members.map((substance) => ({ substance, told: states.get(substance) ?? ({ state: 'unknown', reasons: [] } satisfies SubstanceState) }));
    const whole = members.reduce<SubstanceState>((all, { told }) => graver(all, told), { state: 'not', reasons: [] });
    return { item, ...whole, found: members.filter(({ told }) => told.state !== 'not').map(({ substance, told }) => ({ substance, state: told.state })) };
  });
}

/** What is told although the list does not name it: coconut, pine nut, chestnut and the like, where they are or may be in. */
export function saidAnyway(tables: AllergenTables, list: AllergenList, states: SubstanceStates): readonly { readonly substance: Substance; readonly told: SubstanceState }[] {
  const named = new Set(list.items.flatMap((item) => item.members));
  return tables.saidAnyway.filter((id) => !named.has(id)).flatMap((id) => {
    const substance = tables.substances.find((s) => s.id === id);
    const told = states.get(id);
    return substance && told && (told.state === 'contains' || told.state === 'may') ? [{ substance, told }] : [];
  });
}
