import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { shortAction, shortAmount } from '../../../tests/reader-shorthand.ts';
import { testVocabulary } from '../../../tests/reader-vocabulary.ts';
import { readRecipe } from './read-recipe.ts';

interface Case {
  readonly text: string;
  readonly title: string | null;
  readonly servings: string | null;
  readonly lines: string[];
  readonly steps: string[][];
  readonly findings: string[];
}
const cases = parse(readFileSync(join(import.meta.dirname, '../../../tests/cases/reader/recipes.yaml'), 'utf8')) as Case[];
const read = (text: string): ReturnType<typeof readRecipe> => readRecipe(text, testVocabulary);
const foods = (text: string): string[] => read(text).lines.map(({ food }) => food.name);

function inShort(text: string): Omit<Case, 'text'> {
  const { title, servings, lines, steps, findings } = read(text);
  return {
    title,
    servings: servings ? `${servings.count.low}..${servings.count.high} ${servings.of ?? 'people'}` : null,
    lines: lines.map(({ section, amount, food }) => `${section === null ? '' : `${section}: `}${shortAmount(amount)} ${food.name}`),
    steps: steps.map(({ actions }) => actions.map((action) => shortAction(action, lines))),
    findings: findings.map(({ code }) => code),
  };
}

describe('a recipe read from text', () => {
  it.each(cases)('reads the recipe that begins "$text"', ({ text, ...expected }) => expect(inShort(text)).toEqual(expected));

  it('reads the same with any kind of line end', () => {
    for (const { text } of cases) for (const end of ['\r\n', '\r', '\u2028', '\n\n\n']) {
      if (end === '\n\n\n' && /[a-z]\n[a-z]/.test(text)) continue; // a wrapped sentence is one only while no blank line parts it
      const other = inShort(text.replaceAll('\n', end));
      expect(other.lines).toEqual(inShort(text).lines);
      expect(other.steps).toEqual(inShort(text).steps);
    }
  });

  it('reads the lines of a list whatever their order', () => {
    const lines = ['200 g rice', '2 onions, chopped', 'salt', '1 tin (400 g) tomatoes', 'juice of 1 lemon', '1 tbsp oil, for frying'];
    fc.assert(fc.property(fc.shuffledSubarray(lines, { minLength: 2 }), (chosen) => {
      expect(foods(`Ingredients\n${chosen.join('\n')}`)).toEqual(chosen.flatMap((line) => foods(`Ingredients\n${line}`)));
    }));
  });

  it.each([
    ['Serves 4', 4, 4, null], ['serves: 4-6', 4, 6, null], ['SERVES 4 TO 6', 4, 6, null], ['4 portions', 4, 4, null], ['For 2–3 people', 2, 3, null], ['Makes 12', 12, 12, null], ['Makes about 24 biscuits', 24, 24, 'biscuits'],
    ['Yield: 1 loaf', 1, 1, 'loaf'], ['Yields 6 servings', 6, 6, null], ['Servings: 2', 2, 2, null], ['Feeds a family of 4', 4, 4, null], ['Enough for 3', 3, 3, null], ['Serves four', 4, 4, null], ['Serves 4 as a starter', 4, 4, null], ['Serves: 6 people', 6, 6, null],
    ['Serves 4 | Prep 10 min | Cook 20 min', 4, 4, null], ['Prep: 10 min · Serves 2', 2, 2, null], ['Makes 1 large pizza', 1, 1, 'large pizza'], ['Portions: 8', 8, 8, null], ['Makes: 10–12 pancakes', 10, 12, 'pancakes'],
  ] as const)('takes "%s" for the servings', (line, low, high, of) => {
    const { servings } = read(`Soup\n${line}\n200 g rice\n2 onions`);
    expect(servings).toMatchObject({ count: { low, high }, of });
  });

  it.each([
    ['marinade: 3 tbsp tamari', 'marinade', 'tamari'], ['Garnish: a handful of coriander', 'Garnish', 'coriander'], ['For the dressing: 2 tbsp olive oil', 'For the dressing', 'olive oil'], ['salad: 1 cucumber, sliced', 'salad', 'cucumber'], ['oats: 200 g', null, 'oats'],
  ])('takes what stands before the colon of "%s" for a part of the dish only when it names one', (line, section, food) => {
    const [read] = readRecipe(`Ingredients\n200 g rice\n${line}`, testVocabulary).lines.slice(1);
    expect([read?.section, read?.food.name]).toEqual([section, food]);
  });

  it('takes servings out of the title', () => {
    for (const title of ['Leek soup (serves 4)', 'Leek soup – serves 4', 'Leek soup, serves 4', 'Leek soup for 4 people']) {
      const recipe = read(`${title}\n2 leeks\n1 onion`);
      expect([recipe.title, recipe.servings?.count.value], title).toEqual(['Leek soup', 4]);
    }
  });

  it('tells ingredients from method by heading, by number and by the words', () => {
    for (const text of ['2 leeks\n1 onion\n1. Fry the leeks.\n2. Add the onion.', 'Ingredients\n2 leeks\n1 onion\nMethod\nFry the leeks.\nAdd the onion.', '2 leeks\n1 onion\n\nFry the leeks for a while.\nAdd the onion and stir.', 'Ingredients: 2 leeks, 1 onion\nMethod: Fry the leeks.\nAdd the onion.']) {
      const recipe = read(text);
      expect(recipe.lines.map(({ food }) => food.name), text).toEqual(['leeks', 'onion']);
      expect(recipe.steps, text).toHaveLength(2);
    }
  });

  it('strips bullets, boxes, numbers, emojis and marks of emphasis', () => {
    for (const mark of ['- ', '* ', '• ', '· ', '– ', '[ ] ', '[x] ', '☐ ', '✓ ', '🌶️ ', '👩🏽‍🍳 ', '1. ', '1) ', '**', '\u00a0', '-', '–', '•']) {
      const [line] = read(`Ingredients\n${mark}200 g rice\n${mark}2 onions`).lines;
      expect([line?.amount?.quantity.value, line?.amount?.unit, line?.food.name], mark).toEqual([200, 'g', 'rice']);
    }
  });

  it('asks about a negative amount and takes no number from it', () => {
    const recipe = read('Ingredients\n-200 g rice\n2 onions');
    expect(recipe.lines[0]!.amount).toBeNull();
    expect(recipe.findings).toContainEqual(expect.objectContaining({ code: 'negative-amount', lineId: 'l1', severity: 'question' }));
  });

  it('keeps lines in other alphabets, unsure and with a question', () => {
    const recipe = read('Ingredients\n200 г муки\n米 200g\nद 2 प्याज\n2 onions');
    expect(recipe.lines).toHaveLength(4);
    expect(recipe.findings.filter(({ code }) => code === 'other-alphabet').map(({ lineId }) => lineId)).toEqual(['l1', 'l2', 'l3']);
  });

  it('reads 300 lines, and stops at its limits with a finding instead of a wait', () => {
    expect(read(`Ingredients\n${'2 onions\n'.repeat(300)}`).lines).toHaveLength(300);
    expect(read(`Ingredients\n${'2 onions\n'.repeat(1_500)}`).findings.map(({ code }) => code)).toContain('too-many-lines');
    for (const noise of ['x'.repeat(1_000_000), '1 '.repeat(500_000), '('.repeat(1_000_000), 'a, '.repeat(330_000), '1 g plus '.repeat(110_000), '½/'.repeat(500_000), '- \n'.repeat(330_000), 'and or '.repeat(140_000), '.'.repeat(1_000_000)]) {
      expect(read(noise).findings.map(({ code }) => code)).toContain('text-cut');
    }
  });

  it('warns when there are two lists of ingredients, whose lines all count', () => {
    const recipe = read('Soup\nIngredients\n2 leeks\nMethod\nFry the leeks.\nBread\nIngredients\n500 g flour\nMethod\nBake the flour for 1 hour.');
    expect(recipe.lines.map(({ food }) => food.name)).toEqual(['leeks', 'flour']);
    expect(recipe.findings.map(({ code }) => code)).toContain('several-recipes');
  });

  it('says what is missing: no ingredients, no servings', () => {
    expect(read('').findings.map(({ code }) => code)).toEqual(['no-ingredients', 'no-servings']);
    expect(read('Serves 4\n2 onions').findings).toEqual([]);
  });

  it('never throws, whatever the text, and every span lies inside it', () => {
    const words = fc.constantFrom('2', '1/2', '½', '400g', '-', '–', 'x', 'tin', 'cups', 'of', 'onion', ',', '(', ')', 'and', 'or', 'juice', 'half', 'a', 'to taste', 'fry', 'until', '\n', '\r\n', ':', 'Serves', 'Method', 'min', '°C', 'plus', '🌶', 'мука', '.', '/');
    const texts = fc.oneof(fc.string({ unit: 'binary', maxLength: 300 }), fc.string({ unit: 'grapheme', maxLength: 300 }), fc.array(words, { maxLength: 60 }).map((parts) => parts.join(' ')));
    fc.assert(
      fc.property(texts, (text) => {
        const recipe = readRecipe(text, testVocabulary);
        const spans = [...recipe.lines, ...recipe.steps, ...recipe.steps.flatMap((step) => step.actions)].map(({ span }) => span);
        for (const { start, end } of spans) {
          expect(start).toBeGreaterThanOrEqual(0);
          expect(end).toBeGreaterThanOrEqual(start);
          expect(end).toBeLessThanOrEqual(text.length);
        }
        for (const line of recipe.lines) expect(text.slice(line.span.start, line.span.end)).toBe(line.text);
        expect(new Set(recipe.lines.map(({ id }) => id)).size).toBe(recipe.lines.length);
      }),
      { numRuns: 500 },
    );
  });
});
