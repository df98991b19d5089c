import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { polarities, statementVocabulary, tagNames } from '../../src/core/statements/index.ts';
import { markedRow } from '../../tests/cases/statements/marked-rows.ts';
import { compileStatementWords } from '../tables/statement-words.ts';
import { prepareRow, type PreparedSentence } from './claim-rows.ts';

const vocabulary = statementVocabulary(compileStatementWords(join(import.meta.dirname, '../../data')), { senses: new Map(), fitted: null });
const prepared = (line: string): PreparedSentence[] => prepareRow(markedRow(line, 'test:1'), vocabulary);
const marked = (sentence: PreparedSentence | undefined): string[] => (sentence?.tags ?? []).map((tag, i) => `${sentence?.words[i] ?? ''}: ${tagNames[tag] ?? ''}`);

describe('a marked row made ready for fitting', () => {
  it('begins a claim at its first word and goes on to its last', () => {
    const [sentence, ...more] = prepared('This soup [eases cramps|disease] at lunch.');
    expect(more).toEqual([]);
    expect(marked(sentence)).toEqual(['this: none', 'soup: none', 'eases: begin disease', 'cramps: in disease', 'at: none', 'lunch: none', '.: none']);
  });
  it('begins two claims that follow each other directly', () => {
    expect(marked(prepared('It is [rich in iron|nutrient-content] [and calming|function].')[0]).slice(2)).toEqual(['rich: begin nutrient-content', 'in: in nutrient-content', 'iron: in nutrient-content', 'and: begin function', 'calming: in function', '.: none']);
  });
  it('leaves out a mark that a claim does not take in, and keeps one that it does', () => {
    expect(marked(prepared('[Calm, happy hormones|cycle-hormone]!')[0])).toEqual(['calm: begin cycle-hormone', ',: in cycle-hormone', 'happy: in cycle-hormone', 'hormones: in cycle-hormone', '!: none']);
  });
  it('marks a claim over two sentences in both', () => {
    const sentences = prepared('Beans tonight. [No more cramps. Ever again|absolute], I say.');
    expect(sentences.map((s) => s.tags.map((tag) => tagNames[tag]).filter((name) => name !== 'none').length)).toEqual([0, 4, 2]);
    expect(sentences.map((s) => s.claims.length)).toEqual([0, 1, 1]);
    expect(marked(sentences[2])[0]).toBe('ever: begin absolute');
  });
  it('gives every word its signs, and every claim its polarity with cues', () => {
    const [sentence] = prepared('[Does it calm you|function,question]?');
    expect(sentence?.signs.length).toBe(sentence?.words.length);
    expect(sentence?.signs.at(-1)).toContain('is mark');
    expect(sentence?.claims.map((c) => polarities[c.polarity])).toEqual(['question']);
    expect(sentence?.claims[0]?.cues).toContain('in calm');
  });
});
