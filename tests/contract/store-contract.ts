import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { usualChoices } from '../../src/app/dish-choices.ts';
import type { Clock, Ids, Store } from '../../src/app/ports.ts';

/** A clock that moves one second on each look, and ids that count. */
export function steppingClock(): Clock {
  let seconds = 0;
  return { now: () => new Date(Date.UTC(2026, 0, 5, 9, 0, seconds++)).toISOString(), today: () => '2026-01-05' };
}

export function countingIds(): Ids {
  let count = 0;
  return { fresh: () => `id-${++count}` };
}

/** What every Store must do, whatever database is behind it. */
export function storeContract(name: string, open: () => Promise<Store>): void {
  describe(`the store on ${name}`, () => {
    let store: Store;
    beforeEach(async () => {
      store = await open();
    });
    afterEach(() => store.close());
    const stew = { name: 'Bean stew', text: '2 tins beans', choices: usualChoices };

    it('keeps a dish and gives it back', async () => {
      const dish = await store.dishes.create(stew);
      expect(await store.dishes.get(dish.id)).toEqual(dish);
      expect(dish).toMatchObject({ name: 'Bean stew', text: '2 tins beans', version: 1, deletedAt: null, choices: usualChoices });
    });

    it('refuses a second live dish of the same name, and takes it once the first is in the bin', async () => {
      const first = await store.dishes.create(stew);
      await expect(store.dishes.create(stew)).rejects.toMatchObject({ code: 'name-taken' });
      await store.dishes.remove(first.id);
      const second = await store.dishes.create(stew);
      expect(second.id).not.toBe(first.id);
      await expect(store.dishes.bringBack(first.id)).rejects.toMatchObject({ code: 'name-taken' });
    });

    it('says so when a dish is not there', async () => {
      for (const act of [store.dishes.get('x'), store.dishes.rename('x', 'y'), store.dishes.remove('x'), store.dishes.versions('x'), store.dishes.restore('x', 1)]) {
        await expect(act).rejects.toMatchObject({ code: 'unknown-dish' });
      }
    });

    it('keeps every changed state as a version and no version for no change', async () => {
      const dish = await store.dishes.create(stew);
      await store.dishes.save(dish.id, { text: '3 tins beans', choices: usualChoices }, 'more beans');
      const same = await store.dishes.save(dish.id, { text: '3 tins beans', choices: usualChoices }, null);
      expect(same.version).toBe(2);
      const versions = await store.dishes.versions(dish.id);
      expect(versions.map((v) => [v.version, v.label, v.text])).toEqual([[2, 'more beans', '3 tins beans'], [1, null, '2 tins beans']]);
      const restored = await store.dishes.restore(dish.id, 1);
      expect(restored).toMatchObject({ version: 3, text: '2 tins beans' });
    });

    it('finds by words in the name or the text, treats signs as themselves, and shows the bin apart', async () => {
      const bean = await store.dishes.create(stew);
      await store.dishes.create({ name: 'Kale soup', text: '100 % kale', choices: usualChoices });
      const names = async (words: string, deleted = false): Promise<string[]> => (await store.dishes.list({ words, deleted })).map((d) => d.name);
      expect(await names('')).toEqual(['Kale soup', 'Bean stew']);
      expect(await names('BEANS tin')).toEqual(['Bean stew']);
      expect(await names('%')).toEqual(['Kale soup']);
      expect(await names('_')).toEqual([]);
      await store.dishes.remove(bean.id);
      expect(await names('')).toEqual(['Kale soup']);
      expect(await names('', true)).toEqual(['Bean stew']);
      await store.dishes.bringBack(bean.id);
      expect(await names('bean')).toEqual(['Bean stew']);
    });

    it('renames and duplicates', async () => {
      const dish = await store.dishes.create(stew);
      expect((await store.dishes.rename(dish.id, 'Stew of beans')).name).toBe('Stew of beans');
      const copy = await store.dishes.duplicate(dish.id, 'Stew again');
      expect(copy).toMatchObject({ name: 'Stew again', text: stew.text, version: 1 });
      expect((await store.dishes.list({})).length).toBe(2);
    });

    it('keeps foods of her own, replaces by id, and removes', async () => {
      const bar = { id: 'bar', name: 'Oat bar', basis: { kind: 'per-100g' as const }, printed: { energy: 400 }, source: 'invented label', date: '2026-01-02' };
      await store.ownFoods.put(bar);
      await store.ownFoods.put({ ...bar, printed: { energy: 410 } });
      expect(await store.ownFoods.list()).toEqual([{ ...bar, printed: { energy: 410 } }]);
      await store.ownFoods.remove('bar');
      expect(await store.ownFoods.list()).toEqual([]);
    });

    it('keeps small values by name, and gives null for none', async () => {
      expect(await store.values.get('settings')).toBeNull();
      await store.values.put('settings', { measures: 'us' });
      await store.values.put('settings', { measures: 'au' });
      expect(await store.values.get('settings')).toEqual({ measures: 'au' });
      await store.values.remove('settings');
      expect(await store.values.get('settings')).toBeNull();
    });
  });
}
