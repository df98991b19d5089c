import { AppError } from '../../errors.ts';

/** A pan or tin by its inside measures, centimetres; `depthCm` null where only the area is compared. */
export type Pan =
  | { readonly shape: 'round'; readonly acrossCm: number; readonly depthCm: number | null }
  | { readonly shape: 'square'; readonly sideCm: number; readonly depthCm: number | null }
  | { readonly shape: 'oblong'; readonly lengthCm: number; readonly widthCm: number; readonly depthCm: number | null };

function checked(value: number, what: string): number {
  if (!(value > 0) || value > 500) throw new AppError('bad-input', { what: `The ${what} of a pan must be between 0 and 500 cm.` });
  return value;
}

/** The bottom of a pan, square centimetres. Throws `bad-input` for a size that is none. */
export function panArea(pan: Pan): number {
  switch (pan.shape) {
    case 'round': return (Math.PI / 4) * checked(pan.acrossCm, 'width') ** 2;
    case 'square': return checked(pan.sideCm, 'side') ** 2;
    case 'oblong': return checked(pan.lengthCm, 'length') * checked(pan.widthCm, 'width');
  }
}

/** Volume in millilitres (1 ml = 1 cm³), null without a depth. */
export function panVolume(pan: Pan): number | null {
  return pan.depthCm === null ? null : panArea(pan) * checked(pan.depthCm, 'depth');
}

/** By how much food grows from one pan to another: by volume where both depths are known, else by area, so that it lies as deep as before. */
export function panFactor(from: Pan, to: Pan): { readonly factor: number; readonly by: 'volume' | 'area' } {
  const [before, after] = [panVolume(from), panVolume(to)];
  return before !== null && after !== null ? { factor: after / before, by: 'volume' } : { factor: panArea(to) / panArea(from), by: 'area' };
}
