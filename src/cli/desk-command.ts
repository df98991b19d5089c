import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import { Command, InvalidArgumentError } from 'commander';
import { packageFolder } from '../adapters/tables/folder.ts';
import { AppError } from '../errors.ts';
import { deskApp } from '../server/desk-app.ts';
import { dataFile } from './data-folder.ts';
import { deskParts, openStoredDesk } from './wire.ts';

function portNumber(text: string): number {
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0 || port > 65535) throw new InvalidArgumentError('It must be a whole number from 0 to 65535.');
  return port;
}

function openInBrowser(address: string): void {
  const command = process.platform === 'darwin' ? 'open' : process.platform === 'win32' ? 'explorer' : 'xdg-open';
  const child = spawn(command, [address], { stdio: 'ignore', detached: true });
  child.on('error', () => undefined); // No browser here: the address stands in the terminal.
  child.unref();
}

/** `truepot desk`: serves the desk on loopback until it is stopped. */
export function deskCommand(): Command {
  return new Command('desk')
    .description('Open the desk in the browser; it is served on this machine only')
    .option('--port <number>', 'port to listen on; 0 takes a free one', portNumber, 8765)
    .option('--data <file>', 'file for saved dishes, foods and settings (usual: the data folder of this user)')
    .option('--no-open', 'do not open a browser')
    .action(async (options: { port: number; data?: string; open: boolean }) => {
      const file = options.data ?? dataFile();
      const desk = await openStoredDesk(file);
      const app = deskApp(deskParts(desk, join(packageFolder(), 'dist', 'web')));
      const server = serve({ fetch: app.fetch, port: options.port, hostname: '127.0.0.1' }, ({ port }) => {
        const address = `http://127.0.0.1:${port}/`;
        console.log(`Truepot is at ${address}\nSaved dishes are in ${file}\nStop it with Ctrl+C.`);
        if (options.open) openInBrowser(address);
      });
      server.on('error', (cause: NodeJS.ErrnoException) => {
        const busy = cause.code === 'EADDRINUSE';
        console.error(busy ? `Port ${options.port} is taken, perhaps by another Truepot. Open http://127.0.0.1:${options.port}/ or choose another port with --port.` : String(new AppError('bad-input', { what: cause.message }, cause)));
        process.exit(2);
      });
      for (const signal of ['SIGINT', 'SIGTERM'] as const) {
        process.once(signal, () => {
          server.close();
          void desk.store.close().finally(() => process.exit(0));
        });
      }
    });
}
