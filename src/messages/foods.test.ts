import { describe, expect, it } from 'vitest';
import { matchNoteCodes, type FoodMatch } from '../core/foods/index.ts';
import { matchNoteText, matchReasons } from './foods.ts';

describe('the words of a match', () => {
  it('stand for every reason, as a whole sentence', () => {
    for (const code of matchNoteCodes) expect(matchNoteText({ code, data: { name: 'kale', text: 'A note.', word: 'green', words: 'x', typed: 'kael', read: 'kale', asked: 'frozen', used: 'raw', form: 'raw', other: 'chard', table: 'Kale, raw' } }), code).toMatch(/^[A-Z“].*[.?]$/);
  });

  it('never say that an unknown food gives nothing', () => {
    expect(matchNoteText({ code: 'no-food', data: { name: 'xyzzy' } })).toBe('No food was found for “xyzzy”. What it gives is not known, which is not the same as nothing. Choose a food or leave it so.');
    expect(matchNoteText({ code: 'no-table-food', data: { name: 'sumac', text: '' } })).toBe('The tables have no sumac: what it gives is not known.');
  });

  it('leave out the plain reading', () => {
    const match: FoodMatch = { via: 'kitchen-name', entry: null, form: 'raw', code: null, nearness: 'same', note: null, confidence: 1, reasons: [{ code: 'name', data: { name: 'kale' } }, { code: 'form-asked', data: { form: 'frozen' } }], alternatives: [] };
    expect(matchReasons(match)).toEqual(['Taken as frozen.']);
  });
});
