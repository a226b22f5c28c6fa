import type { Homography, PointPair } from '../calibration/homography.ts';

/**
 * Shift, turn and one scale for both directions, by least squares. For two or three matched points, where a perspective
 * can't be told.
 *
 * @returns null where the `from` points lie on one spot
 * Source: the closed form of Umeyama (1991) in the plane, written with complex numbers; mirroring is left out.
 */
export function fitSimilarity(pairs: readonly PointPair[]): Homography | null {
  const count = pairs.length;
  const mean = (pick: (pair: PointPair) => number): number => pairs.reduce((sum, pair) => sum + pick(pair), 0) / count;
  const [fx, fy, tx, ty] = [
    mean(({ from }) => from.x),
    mean(({ from }) => from.y),
    mean(({ to }) => to.x),
    mean(({ to }) => to.y),
  ];
  let real = 0;
  let imaginary = 0;
  let size = 0;
  for (const { from, to } of pairs) {
    const [x, y, u, v] = [from.x - fx, from.y - fy, to.x - tx, to.y - ty];
    real += x * u + y * v;
    imaginary += x * v - y * u;
    size += x * x + y * y;
  }
  if (!(size > 0)) return null;
  const [a, b] = [real / size, imaginary / size];
  return [a, -b, tx - a * fx + b * fy, b, a, ty - b * fx - a * fy, 0, 0, 1];
}
