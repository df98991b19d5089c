import { longestCycle } from './model.ts';
import type { Posterior } from './posterior.ts';
import { convolve } from './kernel.ts';

/** Chance that a recorded gap holds one start or more that was never written down. */
export function unrecordedInGap(of: Posterior, gap: number): number {
  const { model, missedChance } = of;
  const width = longestCycle + 1;
  let one = 0;
  let more = 0;
  of.cells.forEach((cell, i) => {
    const w = of.weights[i]!;
    if (w < 1e-3) return;
    const row = model.length.subarray(cell * width, (cell + 1) * width);
    const two = convolve(row, row, gap);
    one += w * (row[gap] ?? 0);
    more += w * missedChance * (two[gap]! + missedChance * convolve(two, row, gap)[gap]!);
  });
  return one + more > 0 ? more / (one + more) : 0.5;
}
