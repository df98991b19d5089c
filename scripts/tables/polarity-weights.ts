import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { polarities } from '../../src/core/statements/index.ts';

const file = 'statements/polarity-cues.txt';

/** What each cue weighs for each polarity, as scripts/fit-claims.ts wrote it: a cue, a tab, and pairs of number:hundredths. */
export function compilePolarityWeights(data: string): [string, number[]][] {
  return readFileSync(join(data, file), 'utf8').split('\n').filter((line) => line !== '' && !line.startsWith('# ')).map((line) => {
    const [cue = '', pairs = ''] = line.split('\t');
    const weights = polarities.map(() => 0);
    for (const pair of pairs.split(' ')) {
      const [number = -1, hundredths = Number.NaN] = pair.split(':').map(Number);
      if (!(number in weights) || !Number.isInteger(hundredths)) throw new Error(`data/${file}: "${line}" should be a cue, a tab and pairs of number:hundredths`);
      weights[number] = hundredths / 100;
    }
    return [cue, weights];
  });
}
