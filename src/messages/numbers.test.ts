import { describe, expect, it } from 'vitest';
import { dayShare, figure, gramsText, listed, percent } from './numbers.ts';

describe('numbers as words', () => {
  it('shows no figure that means nothing', () => {
    const table: [number, string][] = [[1234.4, '1,234'], [999.6, '1000'], [84.04, '84'], [8.44, '8.44'], [8.4, '8.4'], [0.842, '0.84'], [0.08, '0.08'], [0.001, 'under 0.01'], [0, '0'], [100, '100'], [20, '20'], [10, '10']];
    for (const [value, text] of table) expect(figure(value)).toBe(text);
  });

  it('tells shares of a day by the nearest everyday fraction and says on which side', () => {
    expect(dayShare(0.333)).toBe('a third of a day’s');
    expect(dayShare(0.31)).toBe('nearly a third of a day’s');
    expect(dayShare(1.2)).toBe('a little over a whole day’s');
    expect(dayShare(0.5)).toBe('half a day’s');
    expect(dayShare(7.9)).toBe('more than 7 days’');
  });

  it('writes grams, percent and lists as a cook reads them', () => {
    expect([gramsText(0.42), gramsText(7), gramsText(240.4), gramsText(1500)]).toEqual(['0.4 g', '7 g', '240 g', '1.5 kg']);
    expect([percent(0.002), percent(0.124), percent(0)]).toEqual(['under 1 %', '12 %', '0 %']);
    expect([listed([]), listed(['a']), listed(['a', 'b', 'c'])]).toEqual(['', 'a', 'a, b and c']);
  });
});
