import { describe, expect, it } from 'vitest';
import { eatenCodes, weighStepKinds, type Eaten, type Finding, type WeighStep } from '../core/dish/index.ts';
import { eatenText, weighFindingText, weighStepText } from './weighing.ts';

const step = (kind: WeighStep['kind'], factor: number, data: WeighStep['data'] = {}, unit = 'g'): WeighStep => ({ kind, data, factor, unit, spread: 0, source: null, locator: null });

describe('the words of a weight', () => {
  it('stand for every step, as a whole sentence', () => {
    for (const kind of weighStepKinds) expect(weighStepText(step(kind, 0.5, { text: '1 cup', unit: 'cup', size: 'small', name: 'kale', food: 'lemon', grams: 16, fill: 'heaped', reason: 'left-on', what: 'Peel', state: 'chopped' })), kind).toMatch(/^[A-Z“0-9].*\.$/);
  });

  it('tell numbers as a cook reads them', () => {
    expect(weighStepText(step('refuse', 0.9, { percent: 10, what: 'Stem ends' }))).toBe('10 % is thrown away (stem ends).');
    expect(weighStepText(step('table-piece', 110, { text: '1 medium', grams: 110 }))).toBe('The table weighs “1 medium” at 110 g.');
    expect(weighStepText(step('stated-weight', 300, { text: '300g', unit: 'g' }, 'g'))).toBe('300 g, as the line says.');
    expect(weighStepText(step('unit-size', 15, { unit: 'tbsp' }, 'ml'))).toBe('One tbsp is 15 ml.');
  });

  it('ask for what is missing and never call it nothing', () => {
    const finding = (code: string, data: Finding['data']): Finding => ({ code, lineId: 'l1', data, severity: 'warning' });
    expect(weighFindingText(finding('no-amount', { name: 'parsley' }))).toBe('How much parsley? Without an amount it cannot be counted; it is not taken as nothing.');
    expect(weighFindingText(finding('absurd-amount', { name: 'nutmeg', grams: 100000, servings: 4 }))).toBe('100 kg of nutmeg for 4 looks like a lot. It is counted as written; is the amount right?');
    expect(weighFindingText(finding('of-another-area', {}))).toBeNull();
  });
});

describe('the words of what is eaten', () => {
  const eaten = (code: Eaten['code'], value: number, note: Eaten['note'] = null): Eaten => ({ share: { low: 0, value, high: 1 }, code, note, source: 'x', locator: 'x' });

  it('stand for every reason, with the share where some of it counts', () => {
    for (const code of eatenCodes) if (code !== 'all') expect(eatenText(eaten(code, 0.2)), code).toMatch(/\. 20 % is counted\.$/);
    expect(eatenText(eaten('taken-out', 0))).toBe('Taken out before serving, so not counted.');
  });

  it('are silent when all is eaten and nothing was decided', () => {
    expect(eatenText(eaten('all', 1))).toBeNull();
    expect(eatenText(eaten('all', 1, 'optional-counted'))).toBe('Optional, and counted.');
  });
});
