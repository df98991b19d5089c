import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { reasonCodes } from '../../../src/messages/statements.ts';
import { loadRules } from './rules.ts';

const { rules } = loadRules();
const page = readFileSync(join(import.meta.dirname, '../../../docs/statements-clauses.md'), 'utf8');

describe('the page of clauses', () => {
  it('lists each clause and each condition of the data, covered or left out', () => {
    expect([...rules.clauses, ...rules.nutrition].filter((c) => !page.includes(c.clause)).map((c) => c.id)).toEqual([]);
  });
  it('gives a reason for each clause that is left out', () => {
    expect(rules.clauses.filter((c) => c.covered === 'left-out' && !page.includes(c.why ?? 'no reason')).map((c) => c.id)).toEqual([]);
  });
});

describe('the data of statements', () => {
  it('has words for everything that a rule wants told', () => {
    const tells = [...rules.nutrition, ...rules.health].map((r) => r.tell).filter((t) => t !== undefined);
    expect(tells.filter((t) => !reasonCodes.includes(`tell-${t}`))).toEqual([]);
  });
  it('has at least 80 evidence notes, each with a work and a mark of how far it was compared', () => {
    expect(rules.evidence.length).toBeGreaterThanOrEqual(80);
    expect(rules.evidence.filter((n) => n.citation.length < 8)).toEqual([]);
  });
  it('can only name nutrients in rewrites that it has a name for', () => {
    expect(rules.rewrites.prefer.filter((id) => rules.rewrites.names[id] === undefined)).toEqual([]);
  });
});
