// Bundles the faces and the library into dist/. The compiled tables are made by `npm run tables` before.
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { build as viteBuild } from 'vite';

const root = join(import.meta.dirname, '..');
await build({
  absWorkingDir: root,
  entryPoints: { cli: 'src/cli/main.ts', index: 'src/index.ts' },
  outdir: 'dist',
  bundle: true,
  splitting: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  packages: 'external',
  sourcemap: true,
  chunkNames: 'chunks/[name]-[hash]',
  logLevel: 'warning',
});
const types = spawnSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-p', 'tsconfig.types.json'], { cwd: root, stdio: 'inherit' });
if (types.status !== 0) process.exit(types.status ?? 1);
await viteBuild({ configFile: join(root, 'vite.config.ts'), logLevel: 'warn' });
writeFileSync(join(root, 'dist', 'built'), 'The newest build finished; scripts/ready.mjs looks at the age of this file.\n');
