/** Something with cues (numbers) and its right choice, a number. */
export interface Example {
  readonly cues: Int32Array;
  readonly choice: number;
}

export interface ChoiceSettings {
  readonly epochs: number;
  /** Step of the adaptive gradient (J. Duchi et al., 2011). */
  readonly step: number;
  /** Pull of every moved weight to zero, so that cues that tell little weigh nothing (J. Duchi and Y. Singer, 2009). */
  readonly shrink: number;
  /** Share of cues left out at random while fitting, so that no single cue is trusted alone. */
  readonly leaveOut: number;
  readonly seed: number;
  /** The result is the mean of the weights after each of the last epochs: steadier than the last alone (B. Polyak and A. Juditsky, 1992). */
  readonly averaged: number;
}

/** Mulberry32: a small repeatable source of numbers in [0, 1). */
function seeded(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = a;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function shuffle(order: number[], random: () => number): void {
  for (let i = order.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
}

function chances(scores: Float64Array): Float64Array {
  const most = Math.max(...scores);
  const raised = scores.map((s) => Math.exp(s - most));
  const sum = raised.reduce((a, b) => a + b, 0);
  return raised.map((v) => v / sum);
}

// Below this a guess is right enough to leave the weights alone.
const leastMove = 1e-3;

/** Fits a multinomial logistic choice by stochastic gradient; `weights[cue * choices + choice]`. */
export function fitChoice(examples: readonly Example[], size: { readonly cues: number; readonly choices: number }, settings: ChoiceSettings): Float32Array {
  const K = size.choices;
  const weights = new Float32Array(size.cues * K);
  const steps = new Float32Array(size.cues * K).fill(1e-8);
  const sum = new Float32Array(size.cues * K);
  let summed = 0;
  const random = seeded(settings.seed);
  const order = examples.map((_, i) => i);
  // One step up the gradient, then a pull to zero that may reach it but not pass it.
  const move = (at: number, gradient: number, step: number): void => {
    const h = (steps[at]! += gradient * gradient);
    const rate = step / Math.sqrt(h);
    const w = weights[at]! + rate * gradient;
    const pull = rate * settings.shrink;
    weights[at] = w > pull ? w - pull : w < -pull ? w + pull : 0;
  };
  for (let epoch = 0; epoch < settings.epochs; epoch++) {
    shuffle(order, random);
    const step = settings.step / (1 + epoch * 0.15);
    for (const e of order) {
      const { cues: all, choice } = examples[e]!;
      const cues = all.filter(() => random() >= settings.leaveOut);
      const scores = new Float64Array(K);
      for (const c of cues) for (let k = 0; k < K; k++) scores[k]! += weights[c * K + k]!;
      const guess = chances(scores);
      for (let k = 0; k < K; k++) {
        const gradient = (k === choice ? 1 : 0) - guess[k]!;
        if (Math.abs(gradient) >= leastMove) for (const c of cues) move(c * K + k, gradient, step);
      }
    }
    if (epoch < settings.epochs - settings.averaged) continue;
    for (let k = 0; k < weights.length; k++) sum[k]! += weights[k]!;
    summed++;
  }
  return sum.map((w) => w / summed);
}
