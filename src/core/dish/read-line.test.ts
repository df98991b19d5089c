import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { shortLine } from '../../../tests/reader-shorthand.ts';
import { testVocabulary } from '../../../tests/reader-vocabulary.ts';
import { readIngredientLine, type ReadLine } from './read-line.ts';

const cases = parse(readFileSync(join(import.meta.dirname, '../../../tests/cases/reader/lines.yaml'), 'utf8')) as { line: string; reads: string[] }[];
const read = (line: string): ReadLine[] => readIngredientLine(line, { start: 0, end: line.length }, testVocabulary);

describe('an ingredient line', () => {
  it('has at least 200 written cases', () => expect(cases.length).toBeGreaterThanOrEqual(200));

  it.each(cases)('reads "$line"', ({ line, reads }) => {
    expect(read(line).map(shortLine)).toEqual(reads);
  });

  it('reads the same in the middle of a text, with spans that point at its words', () => {
    for (const { line, reads } of cases) {
      const text = `Soup\n${line}\nMethod`;
      const lines = readIngredientLine(text, { start: 5, end: 5 + line.length }, testVocabulary);
      expect(lines.map(shortLine)).toEqual(reads);
      for (const { span, text: own } of lines) expect(text.slice(span.start, span.end)).toBe(own);
    }
  });

  it('loses no food word: every word of two letters or more of the name stands in the line', () => {
    for (const { line } of cases.filter((one) => one.line !== 's&p')) for (const { food } of read(line)) for (const word of food.name.split(/[^\p{L}]+/u)) if (word.length > 1 && !/^(?:egg|yolks?|whites?)$/.test(word)) expect(line.toLowerCase()).toContain(word.toLowerCase());
  });

  it('reads white space, non-breaking spaces and capitals alike', () => {
    for (const { line } of cases.filter(({ line }) => !/\d [/⁄]|\b[TtC]\b/.test(line))) {
      expect(read(line.replaceAll(' ', ' \u00a0')).map(shortLine), line).toEqual(read(line).map(shortLine));
    }
  });

  it('reads any number of grams, written any way, as itself', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9_999 }), fc.constantFrom('g', ' g', ' grams', 'gm', ' gramme'), (n, unit) => {
        const [line] = read(`${n}${unit} flour`);
        expect(line?.amount).toMatchObject({ unit: 'g', quantity: { low: n, value: n, high: n } });
        expect(line?.food.name).toBe('flour');
      }),
    );
  });

  it('reads a range as its ends and middle, whichever end comes first', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 1, max: 99 }), fc.constantFrom('-', '–', ' to ', ' - ', ' or '), (a, b, joiner) => {
        const [line] = read(`${a}${joiner}${b} tbsp oil`);
        expect(line?.amount?.quantity).toEqual({ low: Math.min(a, b), value: (a + b) / 2, high: Math.max(a, b) });
      }),
    );
  });

  it('is sure of a plain line and unsure of one in letters it does not know', () => {
    expect(read('200 g flour')[0]!.confidence).toBe(1);
    expect(read('мука 200 г')[0]!.confidence).toBeLessThan(0.3);
  });

  it('asks about an amount that no kitchen holds, and about nothing less', () => {
    const codes = (line: string): string[] => read(line).flatMap(({ problems }) => problems.map(({ code }) => code));
    expect(codes('100 kg nutmeg')).toContain('very-large-amount');
    expect(codes('20 x 2 kg bags flour')).toContain('very-large-amount');
    expect(codes('25 kg rice')).toEqual([]);
    expect(codes('0 g sugar')).toContain('zero-amount');
  });
});
