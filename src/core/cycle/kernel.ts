/** Distribution function of Student's t with 4 degrees of freedom (closed form, Hill 1970). */
export function studentFourCdf(t: number): number {
  const q = 1 + (t * t) / 4;
  return 0.5 + (0.375 * t * (1 - (t * t) / (12 * q))) / Math.sqrt(q);
}

/** Distribution function of the standard normal (West 2005, after Hart 1968). */
export function normalCdf(x: number): number {
  const z = Math.abs(x);
  if (z > 37) return x > 0 ? 1 : 0;
  const e = Math.exp((-z * z) / 2);
  let tail: number;
  if (z < 7.07106781186547) {
    const top = ((((((0.0352624965998911 * z + 0.700383064443688) * z + 6.37396220353165) * z + 33.912866078383) * z + 112.079291497871) * z + 221.213596169931) * z + 220.206867912376) * e;
    const bottom = (((((((0.0883883476483184 * z + 1.75566716318264) * z + 16.064177579207) * z + 86.7807322029461) * z + 296.564248779674) * z + 637.333633378831) * z + 793.826512519948) * z + 440.413735824752);
    tail = top / bottom;
  } else {
    tail = e / (z + 1 / (z + 2 / (z + 3 / (z + 4 / (z + 0.65))))) / 2.506628274631;
  }
  return x > 0 ? 1 - tail : tail;
}

export interface KernelShape {
  /** Ratio of the spread to the right of the centre to that to the left (Fernández & Steel 1998, γ²). */
  readonly rightToLeft: number;
  /** Share of heavy-tailed (Student t, 4 degrees of freedom) cycles; the rest are normal. */
  readonly heavyShare: number;
}

/** Distribution function at x of a two-piece kernel with the given centre (its mode) and standard scale. */
function twoPieceCdf(x: number, centre: number, scale: number, shape: KernelShape): number {
  const gamma = Math.sqrt(shape.rightToLeft);
  const left = scale / gamma;
  const right = scale * gamma;
  const piece = (z: number): number => shape.heavyShare * studentFourCdf(z) + (1 - shape.heavyShare) * normalCdf(z);
  const weightLeft = left / (left + right);
  if (x <= centre) return 2 * weightLeft * piece((x - centre) / left);
  return weightLeft + (1 - weightLeft) * (2 * piece((x - centre) / right) - 1);
}

/**
 * Chances of the whole numbers 1 to `longest` under a two-piece kernel cut into days
 * (n − ½ to n + ½) and scaled to one. Index 0 is never used.
 */
export function dayKernel(centre: number, scale: number, longest: number, shape: KernelShape): Float64Array {
  const mass = new Float64Array(longest + 1);
  let before = twoPieceCdf(0.5, centre, scale, shape);
  let total = 0;
  for (let n = 1; n <= longest; n += 1) {
    const upto = twoPieceCdf(n + 0.5, centre, scale, shape);
    const m = Math.max(0, upto - before);
    mass[n] = m;
    total += m;
    before = upto;
  }
  for (let n = 1; n <= longest; n += 1) mass[n] = mass[n]! / total;
  return mass;
}

/** Chances of the sum of two independent counts, both indexed from 0, cut at `longest`. */
export function convolve(a: Float64Array, b: Float64Array, longest: number): Float64Array {
  const sum = new Float64Array(longest + 1);
  for (let i = 0; i < a.length; i += 1) {
    const p = a[i]!;
    if (p < 1e-12) continue;
    const end = Math.min(b.length - 1, longest - i);
    for (let j = 0; j <= end; j += 1) sum[i + j]! += p * b[j]!;
  }
  return sum;
}
