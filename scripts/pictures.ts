import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { openDeskUnderTest } from '../tests/e2e/desk-under-test.ts';

/** Makes the pictures of README and docs/ from the built desk, wide and phone-wide. Run `npm run build` before. */
const folder = join(import.meta.dirname, '../docs/pictures');
mkdirSync(folder, { recursive: true });
const desk = await openDeskUnderTest();
const sizes = [[1440, 900], [390, 844]] as const;

async function picture(name: string, place: string, act: (page: Page) => Promise<void> = async () => undefined): Promise<void> {
  for (const [width, height] of sizes) {
    const page = await desk.newPage(width, height);
    await page.goto(`${desk.address}${place}`);
    await page.waitForTimeout(900);
    await act(page);
    await page.waitForTimeout(500);
    await page.screenshot({ path: join(folder, `${name}-${width}.png`) });
    await page.close();
  }
}

await picture('pot', '');
await picture('line', '', async (page) => {
  await page.locator('.line', { hasText: 'parsley' }).locator('button.line-face').click();
  await page.locator('.line[data-open]').scrollIntoViewIfNeeded();
});
await picture('path', '', (page) => page.getByRole('row', { name: /^Magnesium/ }).getByRole('button').first().click());
await picture('change', '#/change', (page) => page.getByRole('button', { name: /cannellini/ }).first().click());
await picture('say', '#/say', async (page) => {
  await page.getByRole('textbox').first().fill('This stew is packed with iron. A whole day’s vitamin K in one bowl! It keeps your blood pressure down. Honestly, I could eat this every day.');
  await page.waitForTimeout(1500);
});
await picture('cycle', '#/cycle', async (page) => {
  await page.getByRole('textbox').first().fill('2026-07-03\n2026-08-01\n2026-08-27\n2026-09-29\n2026-10-25\nage: 31');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page.waitForTimeout(2000);
});
await picture('cook', '#/cook');
await picture('larder', '#/larder');
await picture('saved', '#/saved');
await picture('own-foods', '#/own-foods', (page) => page.getByRole('button', { name: 'Add a food from its pack' }).click());
await picture('settings', '#/settings');

const page = await desk.newPage(794, 1123);
await page.goto(desk.address);
await page.waitForTimeout(900);
await page.emulateMedia({ media: 'print' });
await page.screenshot({ path: join(folder, 'card-print.png'), fullPage: true });
await desk.close();
console.log(`Pictures are in ${folder}.`);
