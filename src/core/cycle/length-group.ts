import { longestCycle, longestLuteal } from './model.ts';
import type { Posterior } from './posterior.ts';

/** Cycles of a length group as the model sees them: their share of all, and mean days before (and with) and after ovulation. */
export interface LengthGroup {
  readonly share: number;
  readonly meanLength: number;
  readonly follicular: number;
  readonly luteal: number;
}

const width = longestCycle + 1;

/** What the model expects of cycles from `low` to `high` days long. */
export function lengthGroup(of: Posterior, low: number, high: number): LengthGroup {
  const { model } = of;
  const nL = model.luteals.length;
  const nS = model.spreads.length;
  let share = 0;
  let lengths = 0;
  let ovulations = 0;
  of.cells.forEach((cell, i) => {
    const t = Math.floor(cell / nS);
    const s = cell % nS;
    for (let l = 0; l < nL; l += 1) {
      const w = of.weights[i]! * (of.luteal ? of.luteal[i * nL + l]! : model.lutealPrior[t * nL + l]!);
      if (w < 1e-9) continue;
      for (let o = 1; o <= high; o += 1) {
        const p = w * model.ovulation[(cell * nL + l) * width + o]!;
        for (let k = Math.max(1, low - o); k <= longestLuteal && o + k <= high; k += 1) {
          const both = p * model.lutealLength[(s * nL + l) * (longestLuteal + 1) + k]!;
          share += both;
          lengths += both * (o + k);
          ovulations += both * o;
        }
      }
    }
  });
  return { share, meanLength: lengths / share, follicular: ovulations / share, luteal: (lengths - ovulations) / share };
}
