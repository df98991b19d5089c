import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compileSources } from '../../../scripts/tables/sources.ts';
import { compileStatements } from '../../../scripts/tables/statements.ts';
import { judgeClaim, lawGround, type Claim, type ClaimClass, type LawId, type LawVerdict, type Plate } from '../../../src/core/statements/index.ts';
import { clauseWords, disclosureStatement, reasonWords } from '../../../src/messages/statements.ts';
import { plateWith } from './plates.ts';

// Claims are given as read, so that these tests hold the law alone. 21 CFR 101.13(h), 101.14(a)(4) and 101.65(d) as in data/parameters/statements.
const data = join(import.meta.dirname, '../../../data');
const rules = compileStatements(data, new Set(compileSources(data).map((s) => s.id)));

function judged(span: string, kind: ClaimClass, plate: Plate, more: { readonly law?: LawId; readonly nutrients?: readonly string[]; readonly polarity?: Claim['polarity'] } = {}): LawVerdict {
  const claim: Claim = { class: kind, polarity: more.polarity ?? 'asserted', start: 0, end: span.length, span, nutrients: more.nutrients ?? [], objects: [], foods: [], chance: null, people: [], because: [] };
  const ground = lawGround(more.law ?? 'us', { plate, other: null, rules, emphasis: { nutrients: [], topics: [] }, on: '2026-11-25' });
  return judgeClaim(claim, { ground, sentence: `This dish is ${span}.`, botanicals: [] });
}
const lean = { fat: 2, saturates: 0.5, cholesterol: 0, sodium: 90, iron: 6, energy: 200 } as const;

describe('21 CFR 101.13(h): the disclosure statement beside a nutrient content claim', () => {
  const iron = (change: object, more: Parameters<typeof judged>[3] = {}): LawVerdict => judged('rich in iron', 'nutrient-content', plateWith({ ...lean, ...change }), { nutrients: ['iron'], ...more });

  it('is not asked of a dish that stays below every level', () => {
    expect(iron({})).toMatchObject({ kind: 'say', disclose: [] });
  });
  it('names each nutrient that is above its level, in the words of the clause', () => {
    const verdict = iron({ fat: 13.1, sodium: 481 });
    expect(verdict).toMatchObject({ kind: 'say-with', disclose: ['fat', 'sodium'] });
    expect(disclosureStatement(verdict.disclose)).toBe('See nutrition information for fat and sodium content.');
    expect(verdict.clauses.map((id) => clauseWords(id, rules.clauses))).toContain('21 CFR 101.13(h)(1) to (3) (from memory, to be verified)');
    expect(verdict.reasons.map(reasonWords).join(' ')).toContain('above 13 g');
  });
  it('says saturated fat, the name that the label law uses', () => {
    expect(disclosureStatement(iron({ saturates: 4.1 }).disclose)).toBe('See nutrition information for saturated fat content.');
  });
  it('is asked too where the range reaches above the level or values are missing', () => {
    expect(iron({ fat: { low: 9, value: 12, high: 14 } }).disclose).toEqual(['fat']);
    expect(judged('rich in iron', 'nutrient-content', plateWith({ iron: 6, fat: 2, saturates: 1, sodium: 10 }), { nutrients: ['iron'] })).toMatchObject({ kind: 'say-with', disclose: ['cholesterol'] });
  });
  it('does not lift a claim that the plate does not bear, and is not asked of a denial', () => {
    expect(iron({ iron: 0.1, fat: 30 })).toMatchObject({ kind: 'short', disclose: [] });
    expect(iron({ fat: 30 }, { polarity: 'negated' })).toMatchObject({ kind: 'free', disclose: [] });
  });
  it.each(['eu', 'gb', 'codex'] as const)('is not asked under the law %s', (law) => {
    expect(iron({ fat: 30 }, { law }).disclose).toEqual([]);
  });
});

describe('21 CFR 101.14(a)(4): levels that rule out a health claim', () => {
  it('are told beside the refusal of a disease statement when the dish is above one', () => {
    const over = judged('protects against heart disease', 'disease', plateWith({ ...lean, saturates: 4.1 }));
    expect(over.kind).toBe('not-lawful');
    expect(over.clauses).toContain('us-101-14-a-4');
    expect(over.reasons.map((r) => r.code)).toContain('disqualified');
    const under = judged('protects against heart disease', 'disease', plateWith({ ...lean, saturates: 4 }));
    expect(under).toMatchObject({ kind: 'not-lawful' });
    expect(under.clauses).not.toContain('us-101-14-a-4');
  });
});

describe('21 CFR 101.65(d): healthy is an implied claim with conditions that are not worked out', () => {
  it.each(['healthy', 'the healthiest lunch', 'so nutritious', 'a wholesome bowl', 'nourishing', 'so good for you'])('“%s” gets the reason and the clause, and is not let through', (span) => {
    const verdict = judged(span, 'well-being', plateWith(lean));
    expect(verdict).toMatchObject({ kind: 'unknown', clauses: ['us-101-65'] });
    expect(verdict.reasons.map(reasonWords).join(' ')).toContain('Truepot does not work them out');
    expect(clauseWords('us-101-65', rules.clauses)).toContain('21 CFR 101.65(d)');
  });
  it('other words on general health keep the verdict of the table, and other laws their own', () => {
    expect(judged('you will feel amazing', 'well-being', plateWith(lean))).toMatchObject({ kind: 'proof' });
    expect(judged('healthy', 'well-being', plateWith(lean), { law: 'eu' }).reasons.map((r) => r.code)).toEqual(['well-being']);
  });
});
