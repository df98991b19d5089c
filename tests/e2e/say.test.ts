import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import { seriousViolations } from './axe.ts';
import { openDeskUnderTest, type DeskUnderTest } from './desk-under-test.ts';

let desk: DeskUnderTest;
const errors: string[] = [];
beforeAll(async () => {
  desk = await openDeskUnderTest();
});
afterAll(() => desk.close());

const script = 'This pot is packed with fibre. It cures cramps! Soak the beans the night before.';

describe.each([[1440, 900], [390, 844]])('the page “Say it” at %d px', (width, height) => {
  let page: Page;
  const marks = (): Locator => page.locator('.claim-mark');
  const card = (): Locator => page.locator('.claim-card');
  const box = (): Locator => page.getByRole('textbox', { name: 'Script, caption or voice-over' });
  const markOf = (words: RegExp): Locator => page.locator('.marked').getByRole('button', { name: words });
  const fits = async (): Promise<void> => {
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
    expect(await seriousViolations(page)).toEqual([]);
  };

  beforeAll(async () => {
    page = await desk.newPage(width, height);
    page.on('pageerror', (error) => errors.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    await page.goto(desk.address);
    await page.evaluate(() => localStorage.clear());
    await page.goto(`${desk.address}#/say`);
  });
  afterAll(() => page.close());

  it('marks what is claimed with a verdict in words and a sign of its own', async () => {
    await box().fill(script);
    await markOf(/cures cramps.*: Leave it out/i).waitFor();
    expect(await marks().count()).toBeGreaterThanOrEqual(2);
    expect(await markOf(/cures cramps/i).locator('sup').innerText()).toBe('✕');
    expect(await page.getByRole('list', { name: 'What the signs mean' }).innerText()).toContain('Leave it out');
    expect(await page.locator('.marked').innerText()).toContain('Soak the beans');
    await fits();
  });

  it('opens the reason of a mark: clause, and the words by which it was read', async () => {
    await markOf(/cures cramps/i).click();
    await expect.poll(() => card().innerText()).toContain('cures cramps');
    const words = await card().innerText();
    expect(words).toContain('Of no food may it be said that it prevents, treats, eases or cures');
    expect(words).toContain('Reg. 1169/2011 Art. 7(3)');
    expect(words).toMatch(/Read as a statement on illness by/);
    expect(await markOf(/cures cramps/i).getAttribute('aria-pressed')).toBe('true');
    await fits();
  });

  it('puts a rewrite into the script at one press and checks it again', async () => {
    const offer = card().locator('.offers li').first();
    const words = await offer.locator('span').first().innerText();
    await offer.getByRole('button', { name: 'Use it' }).click();
    await expect.poll(() => box().inputValue()).toContain(words);
    expect(await box().inputValue()).toContain('Soak the beans the night before.');
    expect(await box().inputValue()).not.toContain('cramps');
    await expect.poll(() => markOf(/cures cramps/i).count()).toBe(0);
    expect(await page.getByText('The sentence was changed and is checked again.').count()).toBe(1);
    const plain = (text: string): string => text.replace(/[^\p{L}\p{N} ]+/gu, '');
    await expect.poll(async () => plain(await page.locator('.marked').innerText())).toContain(plain(words));
    expect(await page.locator('.marked [data-kind="not-lawful"]').count()).toBe(0);
  });

  it('holds “less” against the dish that is chosen, and says which two and in what amount', async () => {
    await box().fill('It has reduced fat.');
    await markOf(/Not known/).waitFor();
    expect(await card().innerText()).toContain('Choose the dish that it is compared with');
    const choice = page.getByLabel(/compare with/);
    await choice.selectOption({ index: 1 });
    await page.getByText(/is compared with .*in 100 g of each as eaten/).waitFor();
    await expect.poll(() => card().innerText()).toMatch(/Fat in 100 g as eaten: .* here, .* in “/);
    await choice.selectOption('');
    await markOf(/Not known/).waitFor();
  });

  it('takes an evidence note of hers, tells what is wrong with one, changes and removes it', async () => {
    await box().fill('Parsnip helps you sleep.');
    await page.getByRole('button', { name: 'Add a note' }).click();
    const form = page.getByRole('form', { name: 'A new evidence note' });
    await form.getByRole('textbox', { name: /What people say/ }).fill('Parsnips and sleep');
    await form.getByRole('textbox', { name: /Food or nutrient/ }).fill('parsnip');
    await form.getByRole('textbox', { name: /Subject/ }).fill('sleep, rest');
    await form.getByRole('textbox', { name: /What was found/ }).fill('An invented finding.');
    await form.getByRole('button', { name: 'Keep this note' }).click();
    await form.getByText(/The work: name author, title and year/).waitFor();
    expect(await form.getByRole('textbox', { name: /What was found/ }).inputValue()).toBe('An invented finding.');
    await fits();
    await form.getByRole('textbox', { name: /The work/ }).fill('Own notes, 2026');
    await form.getByRole('button', { name: 'Keep this note' }).click();
    await page.locator('.own-notes li', { hasText: 'Parsnips and sleep' }).waitFor();
    await expect.poll(() => card().innerText()).toContain('An invented finding.');
    expect(await card().innerText()).toContain('your own note');

    await page.getByRole('button', { name: 'Change the note on Parsnips and sleep' }).click();
    await page.getByRole('textbox', { name: /What was found/ }).fill('An invented finding, changed.');
    await page.getByRole('button', { name: 'Keep this note' }).click();
    await expect.poll(() => card().innerText()).toContain('An invented finding, changed.');
    await page.getByRole('button', { name: 'Remove the note on Parsnips and sleep' }).click();
    await expect.poll(() => page.locator('.own-notes li').count()).toBe(0);
    await expect.poll(() => card().innerText()).not.toContain('An invented finding');
  });

  it('tells plainly when nothing was checked', async () => {
    await box().fill('Dieser Eintopf ist reich an Eisen und gut für die Nerven.');
    await page.getByText(/nothing was checked/).waitFor();
    expect(await marks().count()).toBe(0);
    await fits();
  });
});

it('caused no error in the browser', () => {
  // A refused note answers 400, which the browser writes down as a failed resource.
  expect(errors.filter((text) => !/status of 400/.test(text))).toEqual([]);
});
