import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..', '..');
const folder = mkdtempSync(join(tmpdir(), 'truepot-cook-'));
const database = join(folder, 'desk.db');
let server: ChildProcess;
let browser: Browser;
let page: Page;
let port: number;

async function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const { port: found } = probe.address() as { port: number };
      probe.close(() => resolve(found));
    });
  });
}

async function start(): Promise<ChildProcess> {
  const child = spawn(process.execPath, ['--import', 'tsx', join(root, 'tests/e2e/cook/serve.ts'), String(port), database], { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
  await new Promise<void>((resolve, reject) => {
    child.stdout?.on('data', (data: Buffer) => data.toString().includes('ready') && resolve());
    child.on('exit', (code) => reject(new Error(`server ended with ${code}`)));
  });
  return child;
}

/** As when the power goes: no goodbye, nothing flushed by hand. */
async function powerCut(child: ChildProcess): Promise<void> {
  await new Promise<void>((resolve) => {
    child.on('exit', () => resolve());
    child.kill('SIGKILL');
  });
}

const soup = `Barley soup
chop the leeks: 6 min, hands, board
soften the leeks: 8-10 min, ring, large pan, look every 3 min, catches
simmer the barley: 30 min, ring, large pan, look every 10 min, within 3 min`;
const toast = `Almond toasts
toast the almonds: 3 min, stir, ring, wide pan
toast the bread: 4 min, grill, look every 2 min, any time
spread the toasts: 3 min, hands, after 1 and 2, within 10 min`;

async function accessibility(): Promise<string[]> {
  await page.evaluate(axe.source);
  const result = await page.evaluate(async () => {
    const run = (globalThis as unknown as { axe: { run: (what: Document, how: unknown) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }).axe;
    return (await run.run(document, { rules: { region: { enabled: false } } })).violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.html).join(' ')}`);
  });
  return result;
}

const shot = async (name: string): Promise<void> => {
  const to = process.env['TRUEPOT_SHOTS'];
  if (to) await page.screenshot({ path: join(to, `${name}.png`), fullPage: true });
};

beforeAll(async () => {
  port = await freePort();
  server = await start();
  browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
  const context = await browser.newContext({ timezoneId: 'Europe/London', viewport: { width: 1440, height: 900 } });
  page = await context.newPage();
  await page.clock.install({ time: new Date('2026-11-25T18:00:00Z') });
});

afterAll(async () => {
  await browser?.close();
  server?.kill();
  rmSync(folder, { recursive: true, force: true });
});

describe('live cooking in the browser with a clock of its own', () => {
  it('plans two dishes and shows sheet, picture and table', async () => {
    await page.goto(`http://127.0.0.1:${port}/`);
    await page.getByRole('textbox', { name: /Recipe with its method/ }).fill(soup);
    await page.getByRole('button', { name: 'Add a dish' }).click();
    await page.getByRole('textbox', { name: /Recipe with its method/ }).nth(1).fill(toast);
    await page.getByText('What you want to say while you cook').click();
    await page.getByRole('textbox', { name: /Paragraphs with an empty line/ }).fill('[while the barley simmers] Barley takes its time, and it takes up a good deal of stock while it does.\n\n[at serving] Come to the table.');
    await page.getByRole('button', { name: 'Make the plan' }).click();
    await page.getByRole('heading', { name: /on the table at 19:30/ }).waitFor();
    const sheet = page.getByRole('table', { name: 'Running sheet' });
    expect(await sheet.textContent()).toContain('simmer the barley');
    expect(await sheet.textContent()).toContain('Barley takes its time');
    expect(await page.getByRole('img', { name: /Who and what is busy/ }).count()).toBe(1);
    expect(await accessibility()).toEqual([]);
    await shot('cook-plan-1440');
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await shot('cook-plan-390');
    await page.setViewportSize({ width: 1440, height: 900 });
  });

  it('says what clashes when there is no ring', async () => {
    await page.getByRole('spinbutton', { name: 'Rings' }).fill('0');
    await page.getByRole('button', { name: 'Make the plan' }).click();
    await page.getByRole('heading', { name: 'These wishes cannot all be kept together' }).waitFor();
    expect(await page.getByRole('alert').textContent()).toContain('there is no ring');
    await page.getByRole('spinbutton', { name: 'Rings' }).fill('4');
    await page.getByRole('button', { name: 'Make the plan' }).click();
    await page.getByRole('heading', { name: /on the table at 19:30/ }).waitFor();
  });

  it('begins with the clock, takes taps, and plans the rest anew after a delay', async () => {
    await page.getByRole('button', { name: 'Cook it now, step by step' }).click();
    await page.getByText('Your hands are free.').waitFor();
    for (let i = 0; i < 60 && (await page.getByRole('button', { name: 'Done: chop the leeks' }).count()) === 0; i += 1) await page.clock.runFor(60_000);
    const simmerBefore = await page.getByRole('listitem').filter({ hasText: 'simmer the barley' }).locator('strong').first().textContent();
    await page.getByRole('button', { name: 'Needs 3 more min: chop the leeks' }).click();
    await page.getByRole('button', { name: 'Needs 3 more min: chop the leeks' }).click();
    await page.getByRole('button', { name: 'Needs 3 more min: chop the leeks' }).click();
    await page.getByRole('status').getByText(/The table moves from 19:3\d to 19:3\d/).first().waitFor();
    const simmerAfter = await page.getByRole('listitem').filter({ hasText: 'simmer the barley' }).locator('strong').first().textContent();
    expect(simmerAfter! > simmerBefore!).toBe(true);
    expect(await accessibility()).toEqual([]);
    await shot('cook-live-1440');
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await shot('cook-live-390');
  });

  it('is still there after a reload', async () => {
    await page.getByRole('button', { name: 'Done: chop the leeks' }).click();
    await page.getByText('Done: 1 of 6').waitFor();
    await page.reload();
    await page.getByText('Done: 1 of 6').waitFor();
    for (let i = 0; i < 40 && (await page.getByRole('button', { name: 'Done: soften the leeks' }).count()) === 0; i += 1) {
      await page.clock.runFor(60_000);
      await page.waitForTimeout(80);
    }
    await page.getByRole('button', { name: 'Done: soften the leeks' }).waitFor();
  });

  it('loses nothing when the power goes in the middle, not even a tap made while nobody answers', async () => {
    await powerCut(server);
    await page.getByRole('button', { name: 'Done: soften the leeks' }).click();
    await page.getByRole('alert').getByText(/does not answer/).waitFor();
    server = await start();
    await page.clock.runFor(61_000);
    await page.getByText('Done: 2 of 6').waitFor();
    await powerCut(server);
    server = await start();
    await page.reload();
    await page.getByText('Done: 2 of 6').waitFor();
    expect(await page.getByRole('alert').count()).toBe(0);
  });

  it('goes on to the end', async () => {
    for (let minute = 0; minute < 120 && (await page.getByText('Everything is done').count()) === 0; minute += 1) {
      await page.clock.runFor(60_000);
      await page.waitForTimeout(60);
      const over = page.locator('.cook-step[data-over]').getByRole('button', { name: /^Done:/ });
      if ((await over.count()) > 0) {
        await over.first().click();
        await page.waitForTimeout(120);
      }
    }
    await page.getByText('Everything is done').waitFor();
    await page.getByText('Done: 6 of 6').waitFor();
    await shot('cook-finished-390');
    await page.getByRole('button', { name: 'Close this cooking' }).click();
    await page.getByText('No cooking is on').waitFor();
  });
});
