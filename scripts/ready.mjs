// Makes a clone ready to run: installs the packages when they are not there or not those of
// the lock file, and builds when anything that goes into dist/ is newer than the last build.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');
const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Truepot needs Node 20.19 or newer; this is ${process.versions.node}. Install a newer Node and run the same command again.`);
  process.exit(1);
}

function run(command, args) {
  const shell = process.platform === 'win32';
  const { status } = spawnSync(command, args, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'], shell });
  if (status !== 0) {
    console.error(`\n"${command} ${args.join(' ')}" did not finish. Mend what it says above and run the same command again.`);
    process.exit(status ?? 1);
  }
}

const changed = (path) => (existsSync(path) ? statSync(path).mtimeMs : 0);

function newest(path) {
  const stat = statSync(path);
  if (!stat.isDirectory()) return /\.test\.tsx?$/.test(path) ? 0 : stat.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))));
}

if (changed(join(root, 'node_modules', '.package-lock.json')) < changed(join(root, 'package-lock.json'))) {
  console.log('Getting the packages (once) …');
  run('npm', ['ci', '--no-fund', '--no-audit']);
}
const inputs = ['src', 'data', 'migrations', 'scripts', 'package-lock.json', 'vite.config.ts', 'tsconfig.base.json'];
if (changed(join(root, 'dist', 'built')) < Math.max(...inputs.map((name) => newest(join(root, name))))) {
  console.log('Building (a minute at most) …');
  run('npm', ['run', '--silent', 'build']);
}
