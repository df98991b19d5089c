import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { spawnSync } from 'node:child_process';
import { ESLint } from 'eslint';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const config = join(root, '.dependency-cruiser.cjs');
interface Rule { name: string; from: { path?: string }; to: { path?: string } }
const { forbidden } = createRequire(import.meta.url)(config) as { forbidden: Rule[] };

const breach = (file: string, imports: string) => ({ file, imports });
// One planted breach a rule: this file may not import that one.
const planted: Record<string, { file: string; imports: string }> = {
  'quantity-stands-alone': breach('src/core/quantity/planted.ts', '../foods/index.ts'),
  'calendar-on-quantity': breach('src/core/calendar/planted.ts', '../foods/index.ts'),
  'foods-on-quantity': breach('src/core/foods/planted.ts', '../dish/index.ts'),
  'middle-rooms-look-down': breach('src/core/dish/planted.ts', '../cooking/index.ts'),
  'scheme-looks-down': breach('src/core/scheme/planted.ts', '../statements/index.ts'),
  'siblings-by-index-only': breach('src/core/cycle/planted.ts', '../foods/food.ts'),
  'core-knows-no-edge': breach('src/core/people/planted.ts', '../../adapters/store/index.ts'),
  'core-does-no-io': breach('src/core/statements/planted.ts', 'node:fs'),
  'app-knows-no-edge': breach('src/app/planted.ts', '../server/page.ts'),
  'adapters-know-no-face': breach('src/adapters/print/planted.ts', '../../cli/page.ts'),
  'web-reads-no-disk': breach('src/web/planted.ts', '../adapters/tables/index.ts'),
  'only-the-store-speaks-sql': breach('src/app/planted-sql.ts', 'kysely'),
  'no-circles': breach('src/core/cooking/planted.ts', './round.ts'),
};

/** Runs the boundary check over a made-up tree; gives "rule file" for each breach. */
function breaches(files: Record<string, string>): string[] {
  const folder = mkdtempSync(join(tmpdir(), 'truepot-guard-'));
  try {
    symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
    writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify({ compilerOptions: { module: 'ESNext', moduleResolution: 'Bundler', allowImportingTsExtensions: true, noEmit: true } }));
    for (const [name, text] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), text);
    }
    const cli = join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
    const { stdout } = spawnSync(process.execPath, [cli, '--config', config, '--output-type', 'json', 'src'], { cwd: folder, encoding: 'utf8' });
    const { summary } = JSON.parse(stdout) as { summary: { violations: { from: string; rule: { name: string } }[]; totalCruised: number } };
    expect(summary.totalCruised).toBeGreaterThan(1);
    return summary.violations.map((v) => `${v.rule.name} ${v.from}`);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

describe('the import boundaries', () => {
  it('catch a planted breach of every rule', () => {
    expect(Object.keys(planted).sort()).toEqual(forbidden.map((rule) => rule.name).sort());
    const files: Record<string, string> = { 'src/core/cooking/round.ts': "import { y } from './planted.ts';\nexport const x = y;\n" };
    for (const { file, imports } of Object.values(planted)) {
      files[file] = `import * as x from '${imports}';\nexport const y = x;\n`;
      if (imports.startsWith('.')) files[join(dirname(file), imports)] ??= 'export const x = 1;\n';
    }
    const found = breaches(files);
    for (const [rule, { file }] of Object.entries(planted)) expect(found).toContain(`${rule} ${file}`);
  });

  it('let proper imports pass', () => {
    expect(breaches({
      'src/core/dish/proper.ts': "import { x } from '../foods/index.ts';\nexport const y = x;\n",
      'src/core/foods/index.ts': 'export const x = 1;\n',
    })).toEqual([]);
  });

  it('name only rooms that exist', () => {
    const rooms = readdirSync(join(root, 'src/core'));
    for (const rule of forbidden) {
      for (const path of [rule.from.path, rule.to.path]) {
        const named = /^\^src\/core\/\(([\w|]+)\)\/$/.exec(path ?? '')?.[1]?.split('|') ?? [];
        for (const room of named) expect(rooms, rule.name).toContain(room);
        const face = /^\^src\/([a-z]+)\/$/.exec(path ?? '')?.[1];
        if (face) expect(existsSync(join(root, 'src', face)), rule.name).toBe(true);
      }
    }
  });
});

describe('the purity of the core', () => {
  it('is kept by lint: no clock and no chance', async () => {
    // With CI set, the parser would read the file on the disk instead of the text that it is given.
    const eslint = new ESLint({ cwd: root, overrideConfig: { languageOptions: { parserOptions: { disallowAutomaticSingleRunInference: true } } } });
    const file = join(root, 'src/core/quantity/interval.ts');
    for (const text of ['export const t = Date.now();\n', 'export const d = new Date(0);\n', 'export const r = Math.random();\n']) {
      const [result] = await eslint.lintText(text, { filePath: file });
      expect(result!.messages.map((m) => m.ruleId), text).toContain('no-restricted-syntax');
    }
  }, 90_000);
});
