import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserContext, type Page } from 'playwright-core';

const root = join(import.meta.dirname, '../..');
const chromiumPath = ['/usr/bin/chromium', '/usr/bin/chromium-browser'].find((path) => existsSync(path));

/** The built desk on a free port with a data folder of its own, and a browser in front of it. */
export interface DeskUnderTest {
  readonly address: string;
  readonly context: BrowserContext;
  newPage(width?: number, height?: number): Promise<Page>;
  /** Ends the server as a power cut would and starts it again on the same data and port. */
  restart(): Promise<void>;
  close(): Promise<void>;
}

function start(data: string, port: number): Promise<{ child: ChildProcess; address: string }> {
  const child = spawn(process.execPath, [join(root, 'dist/cli.js'), 'desk', '--no-open', '--port', String(port), '--data', data], { stdio: ['ignore', 'pipe', 'pipe'] });
  return new Promise((resolve, reject) => {
    let said = '';
    const listen = (part: Buffer): void => {
      said += part.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(said)?.[0];
      if (address) resolve({ child, address });
    };
    child.stdout.on('data', listen);
    child.stderr.on('data', listen);
    child.once('exit', (code) => reject(new Error(`the desk ended with ${code}: ${said}`)));
  });
}

export async function openDeskUnderTest(): Promise<DeskUnderTest> {
  if (chromiumPath === undefined) throw new Error('Chromium is not installed; .ci/run installs it.');
  const folder = mkdtempSync(join(tmpdir(), 'truepot-e2e-'));
  const data = join(folder, 'truepot.db');
  let running = await start(data, 0);
  const context = await chromium.launchPersistentContext(join(folder, 'browser'), {
    executablePath: chromiumPath,
    viewport: null,
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });
  const stop = (child: ChildProcess, signal: NodeJS.Signals): Promise<void> =>
    new Promise((resolve) => {
      child.once('exit', () => resolve());
      child.kill(signal);
    });
  return {
    get address() {
      return running.address;
    },
    context,
    async newPage(width = 1440, height = 900) {
      const page = await context.newPage();
      await page.setViewportSize({ width, height });
      return page;
    },
    async restart() {
      const port = Number(new URL(running.address).port);
      await stop(running.child, 'SIGKILL');
      running = await start(data, port);
    },
    async close() {
      await context.close();
      await stop(running.child, 'SIGTERM');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
