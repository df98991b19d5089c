import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compileSources } from '../../../scripts/tables/sources.ts';
import { compileStatements } from '../../../scripts/tables/statements.ts';
import { judgeClaim, lawGround, type Claim, type LawId, type LawVerdict, type Plate } from '../../../src/core/statements/index.ts';
import { reasonWords } from '../../../src/messages/statements.ts';
import { plateWith } from './plates.ts';

const data = join(import.meta.dirname, '../../../data');
const rules = compileStatements(data, new Set(compileSources(data).map((s) => s.id)));
const here = plateWith({ fat: 4, 'trans-fat': 0, saturates: 1, sodium: 100, iron: 5, fibre: 4, energy: 100, cholesterol: 0 }, { title: 'Lentil stew' });
const there = plateWith({ fat: 8, 'trans-fat': 0, saturates: 3, sodium: 110, iron: 2, fibre: 2, energy: 150, cholesterol: 0 }, { title: 'Creamy chicken pot' });

/** A claim as it is read: the stretch of the sentence, its nutrient, and whether it compares. */
function judged(sentence: string, nutrient: string, more: { readonly other?: Plate | null; readonly law?: LawId; readonly span?: string; readonly class?: Claim['class'] } = {}): LawVerdict {
  const span = more.span ?? sentence;
  const claim: Claim = { class: more.class ?? (/\bthan\b/.test(sentence) ? 'comparison' : 'nutrient-content'), polarity: 'asserted', start: 0, end: span.length, span, nutrients: [nutrient], objects: [], foods: [], chance: null, people: [], because: [] };
  const ground = lawGround(more.law ?? 'eu', { plate: here, other: more.other === undefined ? there : more.other, rules, emphasis: { nutrients: [], topics: [] }, on: '2026-11-25' });
  return judgeClaim(claim, { ground, sentence, botanicals: [] });
}
const words = (verdict: LawVerdict): string => verdict.reasons.map(reasonWords).join(' ');

describe('a comparison with the dish that was chosen', () => {
  it('holds when the dish meets the condition, and asks for the other dish and the difference to be named', () => {
    const verdict = judged('Less fat than the creamy chicken pot', 'fat');
    expect(verdict.kind).toBe('say-with');
    expect(verdict.clauses).toEqual(['Reg. 1924/2006 Annex, reduced nutrient', 'eu-art-9']);
    expect(words(verdict)).toContain('Fat in 100 g as eaten: 4 g here, 8 g in “Creamy chicken pot”, 50 % less.');
    expect(words(verdict)).toContain('Name the dish');
  });
  it('fails when the difference is too small, and names how small it is', () => {
    const verdict = judged('Reduced salt', 'sodium');
    expect(verdict.kind).toBe('short');
    expect(words(verdict)).toContain('9 % less');
  });
  it('reads more as increased', () => {
    expect(judged('More iron than our usual pot', 'iron').kind).toBe('say-with');
    expect(judged('More fat than our usual pot', 'fat').kind).toBe('not-lawful');
  });
  it('refuses a stated difference that is greater than the true one', () => {
    expect(judged('50 % less fat than the creamy chicken pot', 'fat').kind).toBe('say-with');
    expect(judged('60 % less fat than the creamy chicken pot', 'fat').kind).toBe('short');
    expect(judged('Half the fat of our usual pot', 'fat', { class: 'comparison', span: 'Half the fat' }).kind).toBe('not-lawful');
    expect(judged('Half the fat compared with the chicken pot', 'fat', { class: 'comparison', span: 'Half the fat' }).kind).toBe('say-with');
    expect(judged('Twice the iron compared with the chicken pot', 'iron', { class: 'comparison', span: 'Twice the iron' }).kind).toBe('say-with');
  });
  it('is not known without a dish to compare with, and says how to mend it', () => {
    const verdict = judged('Reduced fat', 'fat', { other: null });
    expect(verdict.kind).toBe('unknown');
    expect(words(verdict)).toContain('Choose the dish that it is compared with');
    expect(judged('Light in fat', 'fat', { other: null }).kind).toBe('unknown');
  });
  it('is not known when a value is missing in either dish', () => {
    expect(judged('Reduced fat', 'fat', { other: plateWith({}, { title: 'A pot of which nothing is known' }) }).kind).toBe('unknown');
  });
  it('does not take a comparison with another food for one with the dish', () => {
    expect(judged('More iron than steak', 'iron').kind).toBe('not-lawful');
    expect(judged('More iron than steak', 'iron', { law: 'us' }).kind).toBe('proof');
  });
  it.each([['gb', 'gb-art-9'], ['us', 'us-101-13-j'], ['codex', 'codex-cxg23-6']] as const)('%s names its own clause on comparisons', (law, clause) => {
    const verdict = judged('Less fat than the creamy chicken pot', 'fat', { law });
    expect(verdict.kind).toBe('say-with');
    expect(verdict.clauses).toContain(clause);
  });
  it('keeps low apart from less', () => {
    expect(judged('Low in salt', 'sodium', { other: null }).kind).toBe('say');
  });
});
