import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { countingIds, steppingClock, storeContract } from '../../../tests/contract/store-contract.ts';
import { usualChoices } from '../../app/dish-choices.ts';
import { openEmbeddedStore } from './embedded.ts';

const migrations = join(import.meta.dirname, '../../../migrations');

storeContract('the embedded database', () => openEmbeddedStore({ file: ':memory:', migrations }, steppingClock(), countingIds()));

describe('the database file', () => {
  it('holds what was saved when it is opened again', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'truepot-'));
    const place = { file: join(folder, 'deep', 'truepot.db'), migrations };
    const first = await openEmbeddedStore(place, steppingClock(), countingIds());
    const dish = await first.dishes.create({ name: 'Soup', text: '1 leek', choices: usualChoices });
    await first.close();
    const second = await openEmbeddedStore(place, steppingClock(), countingIds());
    expect((await second.dishes.get(dish.id)).name).toBe('Soup');
    await second.close();
    rmSync(folder, { recursive: true });
  });

  it('is refused in words when it is no database, and is left as it was', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'truepot-'));
    const file = join(folder, 'truepot.db');
    writeFileSync(file, 'shopping: leeks\n'.repeat(100));
    await expect(openEmbeddedStore({ file, migrations }, steppingClock(), countingIds())).rejects.toMatchObject({ code: 'store-unreadable' });
    rmSync(folder, { recursive: true });
  });
});
