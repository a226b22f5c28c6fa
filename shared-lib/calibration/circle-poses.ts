import type { XY } from '../geometry/spaces.ts';
import type { Ellipse } from './ellipse.ts';
import { symmetricEigen } from './linear.ts';

/** Unit vector square to a plane, in the camera's axes (x right, y down, z away), turned away from the camera. */
export type Normal = readonly [number, number, number];

/**
 * The two planes in which a circle may lie that is seen as this ellipse: the cone of rays through it is cut in circles by
 * two directions of plane and no others, and nothing in one ellipse says which of them it is.
 *
 * @param sight  where the camera's axis meets the photo, px
 * @returns one and the same twice where the circle is seen squarely
 * Source: Kanatani and Liu, 3D interpretation of conics and orthogonality, CVGIP: Image Understanding 58 (1993).
 */
export function circlePoses(ellipse: Ellipse, sight: XY, focalPx: number): readonly [Normal, Normal] {
  const { values, vectors } = symmetricEigen(coneOf(ellipse, sight, focalPx));
  // One eigenvalue of a cone is below 0, along its axis.
  const [axial = 0, small = 0, large = 0] = values;
  const [axis = [], , across = []] = vectors;
  const along = Math.sqrt((small - axial) / (large - axial));
  const aside = Math.sqrt(Math.max(0, large - small) / (large - axial));
  return [aside, -aside].map((by) => {
    const normal = [0, 1, 2].map((k) => along * (axis[k] ?? 0) + by * (across[k] ?? 0));
    return normal.map((value) => value * Math.sign(normal[2] ?? 1));
  }) as unknown as readonly [Normal, Normal];
}

/** The quadratic form that is 0 for every ray to the ellipse. */
function coneOf({ centre, semiMajor, semiMinor, angle }: Ellipse, sight: XY, focalPx: number): number[][] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [p, q] = [(focalPx / semiMajor) ** 2, (focalPx / semiMinor) ** 2];
  const [xx, xy, yy] = [p * c * c + q * s * s, (p - q) * c * s, p * s * s + q * c * c];
  const [x, y] = [(centre.x - sight.x) / focalPx, (centre.y - sight.y) / focalPx];
  const [ax, ay] = [xx * x + xy * y, xy * x + yy * y];
  return [
    [xx, xy, -ax],
    [xy, yy, -ay],
    [-ax, -ay, ax * x + ay * y - 1],
  ];
}
