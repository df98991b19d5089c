import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { seriousViolations } from './axe.ts';
import { openDeskUnderTest, type DeskUnderTest } from './desk-under-test.ts';

let desk: DeskUnderTest;
let page: Page;
const errors: string[] = [];

beforeAll(async () => {
  desk = await openDeskUnderTest();
  page = await desk.newPage();
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
});
afterAll(() => desk.close());

const recipe = 'Kale and chickpea pan\nServes 2\n\n200 g curly kale\n1 tin chickpeas (400 g), drained\n1 tbsp olive oil\n20 g dragon scales\n\nFry the kale in the oil for 5 minutes. Add the chickpeas and warm through for 3 minutes.';
const number = async (name: string): Promise<number> => {
  const text = await page.getByRole('row', { name: new RegExp(`^${name}`) }).getByRole('button').first().innerText();
  return Number(/[\d.,]+/.exec(text)![0].replace(/,/g, ''));
};
const settled = async (): Promise<void> => {
  await page.waitForTimeout(500);
  await page.waitForFunction(() => !document.querySelector('.dish[data-working]'));
};

describe('the pot', () => {
  it('shows a demo dish worked out on the first page', async () => {
    await page.goto(desk.address);
    await page.getByRole('heading', { level: 1, name: /bean/i }).waitFor();
    expect(await page.locator('.line').count()).toBeGreaterThan(10);
    expect(await page.locator('.reading li').count()).toBeGreaterThan(2);
  });

  it('works out what is pasted', async () => {
    await page.getByRole('textbox', { name: 'Recipe' }).fill(recipe);
    await page.getByRole('heading', { level: 1, name: 'Kale and chickpea pan' }).waitFor();
    await settled();
    expect(await page.locator('.line').count()).toBe(4);
    expect(await page.locator('.line', { hasText: 'curly kale' }).innerText()).toContain('Kale, raw');
    expect(await page.locator('.line', { hasText: 'dragon scales' }).innerText()).toContain('no data');
    expect(await number('Vitamin C')).toBeGreaterThan(20);
  });

  it('lets a line be put right with the keyboard alone', async () => {
    const before = await number('Vitamin C');
    const line = page.locator('.line', { hasText: 'curly kale' });
    await line.locator('button.line-face').focus();
    await page.keyboard.press('Enter');
    const grams = page.getByRole('textbox', { name: /Grams into the pot/ });
    await grams.focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('100');
    await page.keyboard.press('Tab');
    await settled();
    expect(await line.innerText()).toContain('put right by you');
    expect(await number('Vitamin C')).toBeLessThan(before);

    const food = page.getByRole('combobox', { name: 'Food' });
    await food.focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('savoy cabbage');
    await page.getByRole('option', { name: /savoy cabbage/i }).first().waitFor();
    await page.waitForTimeout(300);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await settled();
    expect(await line.innerText()).toMatch(/Cabbage, savoy/i);
    await food.focus();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByRole('combobox', { name: 'Food' }).count()).toBe(0);
  });

  it('keeps a correction when another line is edited', async () => {
    await page.getByRole('textbox', { name: 'Recipe' }).fill(`Big ${recipe}`.replace('1 tbsp', '2 tbsp'));
    await settled();
    expect(await page.locator('.line', { hasText: 'curly kale' }).innerText()).toMatch(/Cabbage, savoy/i);
    await page.getByRole('textbox', { name: 'Recipe' }).fill(recipe);
    await settled();
  });

  it('explains any number down to food, grams, figure and source', async () => {
    await page.getByRole('row', { name: /^Magnesium/ }).getByRole('button').first().click();
    const path = page.getByRole('dialog');
    await path.getByText('Magnesium in one portion').waitFor();
    const words = await path.innerText();
    expect(words).toContain('Chickpeas');
    expect(words).toContain('USDA National Nutrient Database');
    expect(words).toMatch(/÷ 2 portions/);
    expect(await seriousViolations(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
  });

  it('saves a dish, finds it again after a restart, and brings it back from the bin', async () => {
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByRole('textbox', { name: 'Name' }).fill('Test pan');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Test pan' }).waitFor();
    await desk.restart();
    await page.goto(`${desk.address}#/saved`);
    await page.getByRole('searchbox').fill('kale chickpea');
    await page.getByRole('link', { name: 'Test pan' }).click();
    await page.getByRole('heading', { level: 1, name: 'Test pan' }).waitFor();
    await settled();
    expect(await page.locator('.line', { hasText: 'curly kale' }).innerText()).toMatch(/Cabbage, savoy/i);
    await page.goto(`${desk.address}#/saved`);
    await page.getByRole('button', { name: 'To the bin: Test pan' }).click();
    await page.getByText('Nothing is saved yet').waitFor();
    await page.getByRole('button', { name: 'Show the bin' }).click();
    await page.getByRole('button', { name: 'Bring back' }).click();
    await page.getByText('The bin is empty').waitFor();
  });

  it('takes a food of her own and uses it in the next recipe', async () => {
    await page.goto(`${desk.address}#/own-foods`);
    await page.getByRole('button', { name: 'Add a food from its pack' }).click();
    await page.getByRole('textbox', { name: /Name, as your recipes/ }).fill('dragon scales');
    await page.getByRole('textbox', { name: /Where the figures stand/ }).fill('invented pack');
    await page.getByRole('textbox', { name: 'Protein, g' }).fill('40');
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: 'Keep this food' }).click();
    await page.getByText('invented pack').waitFor();
    await page.goto(desk.address);
    await page.getByRole('textbox', { name: 'Recipe' }).fill(recipe);
    await settled();
    expect(await page.locator('.line', { hasText: 'dragon scales' }).innerText()).not.toContain('no data');
  });

  it('prints the dish on paper with portion, method and cautions', async () => {
    await page.emulateMedia({ media: 'print' });
    const card = page.locator('.card-print');
    expect(await card.isVisible()).toBe(true);
    expect(await page.locator('.dish').isVisible()).toBe(false);
    expect(await card.innerText()).toContain('Education, not medical advice');
    expect((await page.pdf({ format: 'A4' })).byteLength).toBeGreaterThan(5_000);
    await page.emulateMedia({ media: 'screen' });
  });

  it('says plainly what is wrong with noise and stays usable', async () => {
    for (const noise of ['', '🙂🙃🙂', 'x'.repeat(300_000), '{"@type":"Recipe", broken', 'Πατάτες 1 κιλό']) {
      await page.getByRole('textbox', { name: 'Recipe' }).fill(noise);
      await settled();
    }
    await page.getByRole('textbox', { name: 'Recipe' }).fill(recipe);
    await page.getByRole('heading', { level: 1, name: 'Kale and chickpea pan' }).waitFor();
  });

  it.each([[1440, 900], [390, 844]])('has no serious fault for assistive technology at %d px, and nothing runs off the page', async (width, height) => {
    const at = await desk.newPage(width, height);
    for (const place of ['', '#/change', '#/say', '#/cook', '#/cycle', '#/saved', '#/own-foods', '#/larder', '#/settings']) {
      await at.goto(`${desk.address}${place}`);
      await at.locator('main h1, main h2').first().waitFor();
      await at.waitForTimeout(600);
      expect(await seriousViolations(at), place).toEqual([]);
      expect(await at.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth), place).toBeLessThanOrEqual(0);
    }
    await at.close();
  });

  it('caused no error in the browser', () => {
    expect(errors.filter((text) => !/ERR_CONNECTION|Failed to fetch/.test(text))).toEqual([]);
  });
});
