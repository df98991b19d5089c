import { polarities, type Polarity } from './claim.ts';

/** What each cue weighs for each polarity, in the order of `polarities`. */
export type PolarityWeights = ReadonlyMap<string, readonly number[]>;

/** The polarity that the cues of a claim speak for most. */
export function weighedPolarity(cues: readonly string[], weights: PolarityWeights): Polarity {
  const scores = polarities.map(() => 0);
  for (const cue of cues) weights.get(cue)?.forEach((weight, k) => (scores[k] = (scores[k] ?? 0) + weight));
  return polarities[scores.indexOf(Math.max(...scores))] ?? 'asserted';
}
