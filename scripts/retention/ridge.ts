import type { Coefficients, Terms } from '../../src/core/dish/retention-model.ts';

export interface RidgeTask {
  readonly rows: readonly Terms[];
  readonly targets: readonly number[];
  readonly weights: readonly number[];
  /** Penalty on the square of a term's coefficient: a prior precision, the larger the closer to 0. */
  readonly penalty: (term: string) => number;
  /** Residuals (in logs) beyond this count by their size, not their square (Huber). */
  readonly robust: number;
}

function cholesky(a: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= a[i * n + k]! * a[j * n + k]!;
      a[i * n + j] = i === j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / a[j * n + j]!;
    }
  }
}

function solve(a: Float64Array, b: Float64Array, n: number): Float64Array {
  cholesky(a, n);
  const x = Float64Array.from(b);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] = x[i]! - a[i * n + k]! * x[k]!;
    x[i] = x[i]! / a[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] = x[i]! - a[k * n + i]! * x[k]!;
    x[i] = x[i]! / a[i * n + i]!;
  }
  return x;
}

const rounds = 6;

/** Ridge regression with Huber weights, iterated: the shrinkage model of every factor. No chance in it, so the same rows give the same figures. */
export function ridge(task: RidgeTask): Coefficients {
  const index = new Map<string, number>();
  const sparse = task.rows.map((row) => row.filter(([, value]) => value !== 0).map(([term, value]): [number, number] => {
    let at = index.get(term);
    if (at === undefined) index.set(term, (at = index.size));
    return [at, value];
  }));
  const n = index.size;
  const penalties = new Float64Array(n);
  for (const [term, at] of index) penalties[at] = task.penalty(term);
  let weights = Float64Array.from(task.weights);
  let beta = new Float64Array(n);
  for (let round = 0; round < rounds; round++) {
    const a = new Float64Array(n * n);
    const b = new Float64Array(n);
    sparse.forEach((row, r) => {
      const w = weights[r]!;
      const y = task.targets[r]!;
      for (const [i, x] of row) {
        b[i] = b[i]! + w * x * y;
        for (const [j, z] of row) if (j <= i) a[i * n + j] = a[i * n + j]! + w * x * z;
      }
    });
    for (let i = 0; i < n; i++) a[i * n + i] = a[i * n + i]! + penalties[i]!;
    beta = solve(a, b, n) as Float64Array<ArrayBuffer>;
    weights = Float64Array.from(sparse, (row, r) => {
      const residual = Math.abs(task.targets[r]! - row.reduce((sum, [i, x]) => sum + beta[i]! * x, 0));
      return task.weights[r]! * (task.robust / Math.max(residual, task.robust));
    });
  }
  return Object.fromEntries([...index].map(([term, at]) => [term, beta[at]!]));
}
