import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rules } from './kitchen.fixture.ts';
import { dishFromLines, looksTyped } from './steps-from-lines.ts';

const read = (line: string) => dishFromLines(`Dish\n${line}`, 'd', rules);
const only = (line: string) => read(line).dish.steps[0]!;

describe('steps typed one a line', () => {
  it.each([
    ['chop: 5 min, hands', { low: 5, value: 5, high: 5 }],
    ['roast: 45-60 min, oven 200', { low: 45, value: 52.5, high: 60 }],
    ['roast: 45 to 60 minutes, oven 200', { low: 45, value: 52.5, high: 60 }],
    ['stew: 1 h 30, ring', { low: 90, value: 90, high: 90 }],
    ['stew: 1.5 h, ring', { low: 90, value: 90, high: 90 }],
    ['stew: about 2 hours, ring', { low: 120, value: 120, high: 120 }],
  ])('reads the time of “%s”', (line, minutes) => {
    expect(only(line).minutes).toEqual(minutes);
    expect(read(line).troubles).toEqual([]);
  });

  it.each([
    ['x: 5 min', { kind: 'hands' }],
    ['x: 5 min, stir, ring', { kind: 'stir' }],
    ['x: 5 min, ring', { kind: 'glance', everyMinutes: 5 }],
    ['x: 50 min, oven 180', { kind: 'glance', everyMinutes: 15 }],
    ['x: 5 min, ring, look every 2 min', { kind: 'glance', everyMinutes: 2 }],
    ['x: 5 min, alone', { kind: 'none' }],
  ])('reads the attention of “%s”', (line, attention) => {
    expect(only(line).attention).toEqual(attention);
  });

  it('reads places, pans, oven and limits', () => {
    expect(only('bake: 30 min, oven 180 exactly, 2 shelves, large pan, burns')).toMatchObject({ oven: { celsius: 180, shelves: 2, exact: true }, pan: { size: 'large' }, burns: true });
    expect(only('whizz: 2 min, hands, blender')).toMatchObject({ places: ['blender'], talk: false });
    expect(only('soak: 5 min, hands, ahead 8-12 h')).toMatchObject({ ahead: { least: 480, most: 720 } });
  });

  it('lets each step follow the one before unless it says otherwise', () => {
    const { dish } = dishFromLines('D\na: 1 min\nb: 2 min, any time\nc: 3 min, after 1 and 2, within 5 min\nd: 1 min, wait 10 min', 'd', rules);
    expect(dish.steps.map((step) => step.after.map((link) => [link.step, link.wait, link.within]))).toEqual([[], [], [['d/1', 0, 5], ['d/2', 0, 5]], [['d/3', 10, null]]]);
    expect(dishFromLines('D\na: 1 min\nb: 1 min\nc: 1 min\nd: 1 min, after 1, 2, 3', 'd', rules).dish.steps[3]!.after).toHaveLength(3);
  });

  it('reads what holds for the whole dish', () => {
    expect(dishFromLines('Salad\ncold\nhold 1 h\nserve 20 min later\ntoss: 2 min', 'd', rules).dish).toMatchObject({ name: 'Salad', hot: false, hold: 60, servedAfter: 20 });
    expect(dishFromLines('Salad\ncold\ntoss: 2 min', 'd', rules).dish.hold).toBe(rules.holdCold);
  });

  it.each([
    ['chop the onion: hands', 'no-minutes'],
    ['chop the onion: 5 min, with joy', 'not-understood'],
    ['chop the onion: 5 min, after 7', 'unknown-step'],
    ['chop the onion for a while', 'not-understood'],
    ['wait: 3000 min, alone', 'too-long'],
  ])('says what it could not use in “%s” and where', (line, code) => {
    expect(read(line).troubles).toContainEqual(expect.objectContaining({ line: 2, code }));
  });

  it('never throws, whatever is typed', () => {
    fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => void dishFromLines(text, 'd', rules)));
    fc.assert(fc.property(fc.array(fc.constantFrom('a: 5 min', ':', 'after 9', 'oven', 'x: , ;', 'hold', 'b: 9 h 5, within', '// note'), { maxLength: 8 }), (lines) => void dishFromLines(lines.join('\n'), 'd', rules)));
  });

  it('knows typed steps from a written recipe', () => {
    expect(looksTyped('Soup\nchop: 5 min, hands\nboil: 20 min, ring')).toBe(true);
    expect(looksTyped('Soup\n\nServes 4\n1 onion\n2 carrots\n\nMethod\nChop the onion. Boil everything for 20 minutes.')).toBe(false);
  });
});
