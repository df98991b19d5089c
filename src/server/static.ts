import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';
import type { Hono } from 'hono';

const types: Record<string, string> = { '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8', '.svg': 'image/svg+xml', '.woff2': 'font/woff2', '.png': 'image/png' };

/** Serves the built pages under `folder`; any path that names no file gives the first page, whose own addresses are read in the browser. */
export function serveStatic(app: Hono, folder: string): void {
  app.get('*', async (context) => {
    const wanted = normalize(join(folder, decodeURIComponent(context.req.path)));
    const inside = wanted.startsWith(folder + sep) && types[extname(wanted)] !== undefined;
    const file = inside ? wanted : join(folder, 'index.html');
    try {
      const body = await readFile(file);
      const cache = /-[\w-]{8}\.\w+$/.test(file) ? 'max-age=31536000, immutable' : 'no-cache';
      return context.body(new Uint8Array(body), 200, { 'content-type': types[extname(file)] ?? 'application/octet-stream', 'cache-control': cache });
    } catch {
      return context.text('Not found', 404);
    }
  });
}
