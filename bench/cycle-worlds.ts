import { seededRandom, type RandomSource } from '../src/core/quantity/index.ts';

/** One simulated or real woman: true cycles, and what her record shows. */
export interface Woman {
  readonly id: string;
  /** True lengths in days, oldest first, and the day of ovulation in each (null: not known). */
  readonly lengths: readonly number[];
  readonly ovulations: readonly (number | null)[];
  /** Whether the start that ends cycle i was written down. */
  readonly written: readonly boolean[];
}

export interface World {
  readonly name: string;
  readonly about: string;
  readonly women: readonly Woman[];
}

/** Gamma variate (Marsaglia & Tsang 2000), shape ≥ 1. */
function gamma(random: RandomSource, shape: number): number {
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = random.normal();
    const v = (1 + c * x) ** 3;
    if (v <= 0) continue;
    if (Math.log(1 - random.uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** Skewed noise with mean 0 and deviation 1. */
const gammaNoise = (random: RandomSource, shape: number): number => (gamma(random, shape) - shape) / Math.sqrt(shape);

interface Habit {
  readonly mean: number;
  readonly spread: number;
  readonly luteal: number;
}

interface Recipe {
  readonly habit: (random: RandomSource) => Habit;
  readonly noise: (random: RandomSource) => number;
  /** Extra days in a few cycles. */
  readonly delay: (random: RandomSource) => number;
  /** Step of the slow wander of her mean, days a cycle. */
  readonly wander: number;
  readonly missed: (random: RandomSource) => number;
}

function woman(id: string, recipe: Recipe, random: RandomSource): Woman {
  const habit = recipe.habit(random);
  const missed = recipe.missed(random);
  const lutealSpread = Math.min(2.2, 0.68 * habit.spread);
  const follicularSpread = Math.sqrt(Math.max(0.2, habit.spread ** 2 - lutealSpread ** 2));
  let mean = habit.mean;
  const lengths: number[] = [];
  const ovulations: number[] = [];
  const written: boolean[] = [];
  const count = 3 + Math.floor(random.uniform() * 14);
  while (lengths.length < count) {
    mean += recipe.wander * random.normal();
    const luteal = Math.max(5, Math.round(habit.luteal + lutealSpread * random.normal()));
    const follicular = Math.max(6, Math.round(mean - habit.luteal + follicularSpread * recipe.noise(random) + recipe.delay(random)));
    lengths.push(follicular + luteal);
    ovulations.push(follicular);
    written.push(random.uniform() >= missed);
  }
  return { id, lengths, ovulations, written };
}

function world(options: { name: string; about: string; recipe: Recipe; seed: number; count: number }): World {
  const random = seededRandom(options.seed);
  const women = Array.from({ length: options.count }, (_, i) => woman(`${options.name}-${i + 1}`, options.recipe, random));
  return { name: options.name, about: options.about, women };
}

const never = (): number => 0;
const ordinary = (random: RandomSource): Habit => ({ mean: 29.2 + 2.5 * gammaNoise(random, 7), spread: 0.7 + 0.58 * gamma(random, 3), luteal: 12.9 + 1.6 * random.normal() });

/** Four invented worlds whose shapes are not the model's: skewed gamma noise, wandering means, delays, forgotten entries, a mixed clinic. */
export function simulatedWorlds(count: number): World[] {
  return [
    world({
      name: 'ordinary', seed: 11, count, about: 'gamma noise; own spread 0.9 to 5 d; within 2.8, between 2.5 d',
      recipe: { habit: ordinary, noise: (r) => gammaNoise(r, 5), delay: never, wander: 0, missed: never },
    }),
    world({
      name: 'unsettled', seed: 12, count, about: 'means wander 0.4 d a cycle; 4 % of cycles delayed by 9 d on average; log-normal own spread',
      recipe: {
        habit: (r) => ({ mean: 28.3 + 2.6 * (r.uniform() + r.uniform() + r.uniform() - 1.5) * 2 + 0.6, spread: 1.9 * Math.exp(0.45 * r.normal()), luteal: 12 + 3.4 * (r.uniform() - 0.3) }),
        noise: (r) => (r.uniform() + r.uniform() + r.uniform() + r.uniform() - 2) * Math.sqrt(3),
        delay: (r) => (r.uniform() < 0.04 ? -9 * Math.log(1 - r.uniform()) : 0),
        wander: 0.4, missed: never,
      },
    }),
    world({
      name: 'forgetful', seed: 13, count, about: 'as ordinary, but half the women leave out 8 % of their starts',
      recipe: { habit: ordinary, noise: (r) => gammaNoise(r, 5), delay: never, wander: 0.1, missed: (r) => (r.uniform() < 0.5 ? 0.08 : 0) },
    }),
    world({
      name: 'clinic', seed: 14, count, about: 'one in five irregular (mean 36, own spread 4 to 9 d), the rest ordinary or very steady; 2 % left out',
      recipe: {
        habit: (r) => {
          const u = r.uniform();
          if (u < 0.2) return { mean: 36 + 5 * r.normal(), spread: 4 + 5 * r.uniform(), luteal: 12 + 1.5 * r.normal() };
          if (u < 0.4) return { mean: 28 + 1.5 * r.normal(), spread: 0.8 + 0.5 * r.uniform(), luteal: 13 + r.normal() };
          return ordinary(r);
        },
        noise: (r) => (r.uniform() < 0.5 ? gammaNoise(r, 3) : r.normal()), delay: never, wander: 0.15, missed: () => 0.02,
      },
    }),
  ];
}
