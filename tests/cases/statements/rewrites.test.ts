import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkerFor, sentencesOf, type LawId } from '../../../src/core/statements/index.ts';
import { loadRules, plates, sayInput } from './rules.ts';
import { readRows } from './score.ts';

const { rules, vocabulary } = loadRules();
const texts = readdirSync(import.meta.dirname).filter((name) => /^(dev|held-out)-.*\.yaml$/.test(name)).flatMap((name) => readRows(join(import.meta.dirname, name)).map((row) => row.text));

describe('what is offered instead', () => {
  const sets: (readonly LawId[])[] = [['eu'], ['gb'], ['us'], ['codex'], ['eu', 'gb', 'us', 'codex']];
  it.each(Object.entries(plates).flatMap(([name, plate]) => sets.map((laws) => [name, laws.join(' and '), plate, laws] as const)))('never holds a claim that the checker would not pass: %s, %s', (_name, _laws, plate, laws) => {
    const checker = checkerFor(sayInput(plate, laws), rules, vocabulary);
    // A checker of its own reads the offers, so that nothing it remembers can vouch for itself.
    const second = checkerFor(sayInput(plate, laws), rules, vocabulary);
    let offers = 0;
    const bad: string[] = [];
    for (const text of texts) {
      for (const sentence of sentencesOf(text)) {
        for (const claim of checker.sentence(sentence).claims) {
          for (const rewrite of claim.rewrites) {
            offers++;
            if (!sentencesOf(rewrite).every((s) => second.sentence(s).sayable)) bad.push(`${text} → ${rewrite}`);
          }
        }
      }
    }
    expect(bad).toEqual([]);
    expect(offers).toBeGreaterThan(100);
  });

  it('offers something for every claim that may not be said', () => {
    const checker = checkerFor(sayInput(plates.unknown), rules, vocabulary);
    const without = texts.flatMap((text) => sentencesOf(text)).flatMap((s) => checker.sentence(s).claims).filter((c) => c.verdicts.some((v) => !['say', 'say-with', 'free'].includes(v.kind)) && c.rewrites.length === 0);
    expect(without.map((c) => c.claim.span)).toEqual([]);
  });
});
