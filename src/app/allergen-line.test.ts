import { describe, expect, it } from 'vitest';
import { allergenLineText } from '../messages/allergen-line.ts';

describe('the allergen line', () => {
  it('tells what is contained, what may be, and what is not known', () => {
    expect(allergenLineText({ contains: ['milk', 'celery'], may: ['mustard'], unknown: ['sesame'] })).toBe('Allergens: contains milk and celery. May contain mustard. Not known: sesame. Look at your packets.');
  });

  it('never says that a dish is free from anything', () => {
    const none = allergenLineText({ contains: [], may: [], unknown: [] });
    expect(none).toContain('Look at your packets');
    expect(none).not.toMatch(/free|none of/i);
  });
});
