import { describe, expect, it } from 'vitest';
import { disclosureStatement, readAsWords, unsureWords } from './statements.ts';

describe('how a claim was read', () => {
  it('is told with the words that spoke for it', () => {
    expect(readAsWords('disease', ['eases', 'cramps'], { nutrients: ['magnesium'], foods: ['dish', 'beans'], people: ['teenagers'] })).toBe('Read as a statement on illness by: eases, cramps. Of: magnesium, beans. For: teenagers.');
    expect(readAsWords('function', [], { nutrients: [], foods: ['bowl'], people: [] })).toBe('Read as a statement on the body by its turn of phrase.');
  });
  it('is told as not sure below 0.7, and only then', () => {
    expect(unsureWords(0.69)).toContain('69 in 100');
    expect(unsureWords(0.69)).toContain('judge for yourself');
    expect(unsureWords(0.7)).toBeNull();
    expect(unsureWords(null)).toBeNull();
  });
});

it('lists the nutrients of a disclosure statement as the label law names them', () => {
  expect(disclosureStatement(['saturates'])).toBe('See nutrition information for saturated fat content.');
  expect(disclosureStatement(['fat', 'cholesterol', 'sodium'])).toBe('See nutrition information for fat, cholesterol and sodium content.');
});
