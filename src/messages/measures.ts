import type { MeasureSystem } from '../core/quantity/index.ts';

const words: Readonly<Record<MeasureSystem, string>> = {
  uk: 'Britain (tablespoon 15 ml, pint 568 ml)',
  us: 'the United States (cup 237 ml, pint 473 ml)',
  'us-label': 'United States labels (cup 240 ml)',
  au: 'Australia (tablespoon 20 ml, cup 250 ml)',
  metric: 'metric cooks (cup 250 ml, tablespoon 15 ml)',
};

/** Whose cups and spoons, in words. */
export function measureSystemText(system: MeasureSystem): string {
  return words[system];
}
