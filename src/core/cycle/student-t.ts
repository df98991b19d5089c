/** Two-sided 95 % points of Student's t for 1 to 30 degrees of freedom (any table; checked in the tests against the closed forms for 1, 2 and 4). */
const points = [12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.16, 2.145, 2.131, 2.12, 2.11, 2.101, 2.093, 2.086, 2.08, 2.074, 2.069, 2.064, 2.06, 2.056, 2.052, 2.048, 2.045, 2.042];

/** The 95 % point for whole degrees of freedom, 1 and more; above 30 the normal's, a little raised. */
export function studentPoint(freedom: number): number {
  const f = Math.max(1, Math.floor(freedom));
  return points[f - 1] ?? 1.96 + 2.4 / f;
}
