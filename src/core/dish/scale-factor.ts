import { AppError } from '../../errors.ts';
import { panFactor, type Pan } from './scale-pan.ts';

/** What the dish is scaled to. */
export type ScaleAim =
  | { readonly kind: 'factor'; readonly factor: number }
  | { readonly kind: 'portions'; readonly count: number }
  /** This much of one line is at hand, grams as bought. */
  | { readonly kind: 'at-hand'; readonly lineId: string; readonly grams: number }
  /** A portion shall give this much; the number of portions stays. */
  | { readonly kind: 'nutrient'; readonly nutrient: string; readonly portionAmount: number }
  | { readonly kind: 'pan'; readonly from: Pan; readonly to: Pan }
  | { readonly kind: 'volume'; readonly fromMl: number; readonly toMl: number };

/** What the dish gives as it is. */
export interface ScaleBasis {
  readonly servings: number;
  gramsOf(lineId: string): number | null;
  /** Known amount in a portion, null when unknown. */
  portionOf(nutrient: string): number | null;
}

const largest = 1000;

function fair(factor: number, what: string): number {
  if (!(factor > 0) || !Number.isFinite(factor)) throw new AppError('bad-input', { what: `${what} must be more than nothing.` });
  if (factor > largest || factor < 1 / largest) throw new AppError('bad-input', { what: `${what} would make the dish ${factor > 1 ? 'more than a thousand times larger' : 'more than a thousand times smaller'}. Is the number right?` });
  return factor;
}

/** The factor that reaches an aim; throws `bad-input` that says what to mend. */
export function scaleFactor(aim: ScaleAim, basis: ScaleBasis): number {
  switch (aim.kind) {
    case 'factor': return fair(aim.factor, 'The factor');
    case 'portions': return fair(aim.count / basis.servings, 'The number of portions');
    case 'at-hand': {
      const grams = basis.gramsOf(aim.lineId);
      if (grams === null || grams <= 0) throw new AppError('bad-input', { what: 'The weight of that line is not known, so nothing can be scaled to it. Type its grams first.' });
      return fair(aim.grams / grams, 'The amount at hand');
    }
    case 'nutrient': {
      const now = basis.portionOf(aim.nutrient);
      if (now === null || now <= 0) throw new AppError('bad-input', { what: 'The dish gives none of that nutrient that is known, so it cannot be scaled to it.' });
      return fair(aim.portionAmount / now, 'The target');
    }
    case 'pan': return fair(panFactor(aim.from, aim.to).factor, 'The pan');
    case 'volume': return fair(aim.toMl / aim.fromMl, 'The size of the pot');
  }
}
