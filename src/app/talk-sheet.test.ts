import { describe, expect, it } from 'vitest';
import type { SayClaim, SaySentence } from './say-report.ts';
import { talkSheet } from './talk-sheet.ts';

// Invented sentences with the parts that the sheet looks at.
const pointer = 'See nutrition information for sodium content.';
const claim = (more: Partial<SayClaim>): SayClaim => ({ span: 'rich in iron', readAs: 'Read as a statement on what it contains by: rich.', unsure: null, laws: [], rewrites: [], ...more }) as unknown as SayClaim;
const law = (beside: readonly string[]): SayClaim['laws'][number] => ({ beside, figures: [], clauses: [] }) as unknown as SayClaim['laws'][number];
const sentence = (text: string, more: Partial<SaySentence>): SaySentence => ({ text, start: 0, end: text.length, sayable: true, claims: [], instead: null, evidence: [], cautions: [], ...more });
const about = { title: 'An invented stew', cautions: [], allergens: null, nutrition: ['sodium 900 mg'] };

describe('the talk sheet', () => {
  it('puts the words that must stand beside a claim after it, once, and tells what they point to', () => {
    const bound = claim({ laws: [law([pointer])] });
    const sheet = talkSheet([sentence('Rich in iron.', { claims: [bound] }), sentence('Rich in fibre.', { claims: [bound] })], about);
    expect(sheet.lines.map((line) => line.beside)).toEqual([[pointer], [pointer]]);
    expect(sheet.description).toContain(`Rich in iron. ${pointer} Rich in fibre.`);
    expect(sheet.description.split(pointer)).toHaveLength(2);
    expect(sheet.description).toContain('Nutrition information, one portion: sodium 900 mg.');
  });
  it('says a sentence in place of one that cannot stand, with the words that belong to it', () => {
    const sheet = talkSheet([sentence('It cures all.', { sayable: false, claims: [claim({})], instead: { text: 'It is a source of iron.', beside: [pointer] } })], about);
    expect(sheet.lines[0]).toMatchObject({ text: 'It is a source of iron.', changedFrom: 'It cures all.', beside: [pointer] });
  });
  it('leaves out what cannot stand and has nothing in its place', () => {
    expect(talkSheet([sentence('It cures all.', { sayable: false, claims: [claim({})] })], about).lines).toEqual([]);
  });
  it('tells on each line how its claims were read and where the reading is not sure, but not in the text for publication', () => {
    const sheet = talkSheet([sentence('Rich in iron.', { claims: [claim({ unsure: 'This reading is not sure.' })] })], { ...about, nutrition: [] });
    expect(sheet.lines[0]?.reading).toEqual(['“rich in iron”: Read as a statement on what it contains by: rich. This reading is not sure.']);
    expect(sheet.description).not.toContain('Read as');
  });
});
