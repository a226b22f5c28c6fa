import { gram, solve } from './linear.ts';

/**
 * Levenberg and Marquardt's damped least squares with derivatives by central differences, for a few dozen unknowns.
 *
 * @param residuals  of which the sum of squares is made smallest
 * @param from  a start that is near; what is returned is never worse
 * Source: Marquardt, SIAM J. Appl. Math. 11 (1963); damping as in Hartley and Zisserman, appendix 6.
 */
export function leastSquares(
  residuals: (unknowns: readonly number[]) => readonly number[],
  from: readonly number[],
): number[] {
  let best = [...from];
  let now = residuals(best);
  let error = sumOfSquares(now);
  let damping = 1e-6;
  for (let round = 0; round < 60 && error > 0; round += 1) {
    const columns = best.map((value, k) => {
      const step = 1e-6 * Math.max(1e-3, Math.abs(value));
      const up = residuals(best.with(k, value + step));
      const down = residuals(best.with(k, value - step));
      return up.map((r, i) => (r - (down[i] ?? 0)) / (2 * step));
    });
    const jacobian = now.map((_, i) => columns.map((column) => column[i] ?? 0));
    const normal = gram(jacobian);
    const slope = columns.map((column) => -column.reduce((sum, d, i) => sum + d * (now[i] ?? 0), 0));
    let gained = 0;
    while (damping < 1e12) {
      const damped = normal.map((row, i) => row.map((value, j) => (i === j ? value * (1 + damping) + 1e-300 : value)));
      const step = solve(damped, slope);
      const next = step === null ? null : best.map((value, k) => value + (step[k] ?? 0));
      const there = next === null ? null : residuals(next);
      const nextError = there === null ? Number.POSITIVE_INFINITY : sumOfSquares(there);
      if (next && there && nextError < error) {
        gained = (error - nextError) / error;
        best = next;
        now = there;
        error = nextError;
        damping /= 10;
        break;
      }
      damping *= 10;
    }
    if (gained < 1e-8) break;
  }
  return best;
}

function sumOfSquares(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}
