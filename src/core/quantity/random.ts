/** A seeded source of chance: the core draws from nothing else. */
export interface RandomSource {
  /** Uniform on [0, 1). */
  uniform(): number;
  /** Standard normal, by Marsaglia's polar method (Marsaglia & Bray 1964). */
  normal(): number;
}

/**
 * The xoshiro128** generator of Blackman and Vigna (2018), seeded through SplitMix32.
 * The same seed gives the same stream on every machine.
 */
export function seededRandom(seed: number): RandomSource {
  let mix = seed >>> 0;
  const next32 = (): number => {
    mix = (mix + 0x9e3779b9) >>> 0;
    let z = mix;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return (z ^ (z >>> 15)) >>> 0;
  };
  let a = next32();
  let b = next32();
  let c = next32();
  let d = next32();
  const rotate = (x: number, k: number): number => ((x << k) | (x >>> (32 - k))) >>> 0;
  const draw = (): number => {
    const result = Math.imul(rotate(Math.imul(b, 5) >>> 0, 7), 9) >>> 0;
    const t = (b << 9) >>> 0;
    c = (c ^ a) >>> 0;
    d = (d ^ b) >>> 0;
    b = (b ^ c) >>> 0;
    a = (a ^ d) >>> 0;
    c = (c ^ t) >>> 0;
    d = rotate(d, 11);
    return result;
  };
  const uniform = (): number => ((draw() >>> 5) * 67108864 + (draw() >>> 6)) / 9007199254740992;
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const s = u * u + v * v;
      if (s > 0 && s < 1) {
        const scale = Math.sqrt((-2 * Math.log(s)) / s);
        spare = v * scale;
        return u * scale;
      }
    }
  };
  return { uniform, normal };
}
