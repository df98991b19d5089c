import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findingText } from './findings.ts';

const folders = ['../core/dish', '../adapters/exchange'].map((folder) => join(import.meta.dirname, folder));

/** Every finding code written down anywhere in the reader, the weigher and the exchange. */
function writtenCodes(): string[] {
  const codes = folders.flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => /^(read|weigh|page)/.test(name) && name.endsWith('.ts') && !name.includes('.test.'))
      .flatMap((name) => [...readFileSync(join(folder, name), 'utf8').matchAll(/code: '([a-z-]+)',(?=[^}]*severity)|code: '([a-z-]+)', (?:lineId|data)/g)].map((m) => (m[1] ?? m[2])!)),
  );
  return [...new Set(codes)].sort();
}

describe('findings', () => {
  it('all have words for people', () => {
    const codes = writtenCodes();
    expect(codes.length).toBeGreaterThan(10);
    const wordless = codes.filter((code) => findingText({ code, lineId: null, data: {}, severity: 'note' }) === code);
    expect(wordless).toEqual([]);
  });
});
