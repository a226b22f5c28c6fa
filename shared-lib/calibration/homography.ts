import { AppError } from '../contract/errors.ts';
import type { XY } from '../geometry/spaces.ts';
import { leastSquares } from './least-squares.ts';
import { gram, symmetricEigen } from './linear.ts';

/** A 3 x 3 matrix row by row, h33 = 1 where it can be. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

export interface PointPair {
  readonly from: XY;
  readonly to: XY;
}

/** Below this, the second smallest eigenvalue of the normalised equations says that points lie on a line. */
const leastEigenvalue = 1e-4;

/** @returns the point, or null at or beyond the horizon of the plane */
export function project(h: Homography, { x, y }: XY): XY | null {
  const w = h[6] * x + h[7] * y + h[8];
  // The matrix is scaled so that the points it was made from have w above 0.
  return w > 1e-12 ? { x: (h[0] * x + h[1] * y + h[2]) / w, y: (h[3] * x + h[4] * y + h[5]) / w } : null;
}

/** Where a point goes whatever side of the horizon it is on; for fitting only. */
function projectAnyway(h: readonly number[], { x, y }: XY): XY {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, i = 0, k = 1] = h;
  const w = g * x + i * y + k;
  return { x: (a * x + b * y + c) / w, y: (d * x + e * y + f) / w };
}

/**
 * Plane to plane mapping by the normalised direct linear transform.
 *
 * @param pairs  four or more, no three of any four on one line
 * @throws AppError 'calibration-too-few-points', 'calibration-points-collinear'
 * Source: Hartley and Zisserman, Multiple View Geometry, 2nd ed., algorithm 4.2.
 */
export function directHomography(pairs: readonly PointPair[]): Homography {
  if (pairs.length < 4) throw new AppError('calibration-too-few-points', { fewest: 4, given: pairs.length });
  const from = normaliser(pairs.map((pair) => pair.from));
  const to = normaliser(pairs.map((pair) => pair.to));
  if (!from || !to) throw new AppError('calibration-points-collinear', {});
  const rows = pairs.flatMap((pair) => {
    const { x, y } = from.apply(pair.from);
    const { x: u, y: v } = to.apply(pair.to);
    return [
      [0, 0, 0, -x, -y, -1, v * x, v * y, v],
      [x, y, 1, 0, 0, 0, -u * x, -u * y, -u],
    ];
  });
  const { values, vectors } = symmetricEigen(gram(rows));
  const vector = vectors[0];
  if (!vector || (values[1] ?? 0) < leastEigenvalue) throw new AppError('calibration-points-collinear', {});
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = vector;
  // T_to^-1 * H * T_from, written out: both normalisers only scale and shift.
  const { scale: s, middle: m } = from;
  const { scale: t, middle: n } = to;
  const rowsOut = [
    [a / t + n.x * g, b / t + n.x * h, c / t + n.x * i],
    [d / t + n.y * g, e / t + n.y * h, f / t + n.y * i],
    [g, h, i],
  ].map(([p = 0, q = 0, r = 0]) => [p * s, q * s, r - s * (p * m.x + q * m.y)]);
  return scaled(rowsOut.flat(), pairs[0]?.from ?? { x: 0, y: 0 });
}

/** h33 = 1, unless the origin lies beyond the horizon of the points. */
function scaled(h: readonly number[], point: XY): Homography {
  const w = (h[6] ?? 0) * point.x + (h[7] ?? 0) * point.y + (h[8] ?? 0);
  const last = h[8] ?? 0;
  const by = last !== 0 && last / w > 1e-9 ? last : w;
  return h.map((value) => value / by) as unknown as Homography;
}

function normaliser(points: readonly XY[]): { scale: number; middle: XY; apply: (p: XY) => XY } | null {
  const count = points.length;
  const middle = {
    x: points.reduce((sum, { x }) => sum + x, 0) / count,
    y: points.reduce((sum, { y }) => sum + y, 0) / count,
  };
  const mean = points.reduce((sum, { x, y }) => sum + Math.hypot(x - middle.x, y - middle.y), 0) / count;
  if (!(mean > 0)) return null;
  const scale = Math.SQRT2 / mean;
  return { scale, middle, apply: ({ x, y }) => ({ x: (x - middle.x) * scale, y: (y - middle.y) * scale }) };
}

/**
 * The mapping that is likeliest where the `from` points carry equal noise: the direct one refined so that the `to` points,
 * mapped back, lie as near as can be to the `from` points (Levenberg-Marquardt).
 */
export function fitHomography(pairs: readonly PointPair[]): Homography {
  const direct = directHomography(pairs);
  if (pairs.length === 4) return direct;
  const back = directHomography(pairs.map(({ from, to }) => ({ from: to, to: from })));
  const unknowns = leastSquares(
    (eight) =>
      pairs.flatMap(({ from, to }) => {
        const { x, y } = projectAnyway([...eight, back[8]], to);
        return [x - from.x, y - from.y];
      }),
    back.slice(0, 8),
  );
  const inverse = invert([...unknowns, back[8]] as unknown as Homography);
  return inverse === null ? direct : scaled(inverse, pairs[0]?.from ?? { x: 0, y: 0 });
}

/** @returns null for a mapping that flattens the plane */
export function invert(m: Homography): Homography | null {
  const [a, b, c, d, e, f, g, h, i] = m;
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (!Number.isFinite(1 / determinant)) return null;
  const k = 1 / determinant;
  const whole = [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
  return whole.map((value) => value * k) as unknown as Homography;
}

/**
 * Whether the points of both planes go round the same way: every three that are a proper triangle turn alike, or every
 * three turn oppositely. Otherwise two were clicked in the wrong order.
 */
export function turnAlike(pairs: readonly PointPair[]): boolean {
  let alike = 0;
  let opposite = 0;
  for (let i = 0; i < pairs.length; i += 1) {
    for (let j = i + 1; j < pairs.length; j += 1) {
      for (let k = j + 1; k < pairs.length; k += 1) {
        const [p, q, r] = [pairs[i], pairs[j], pairs[k]];
        if (!p || !q || !r) continue;
        const turn = slant(p.from, q.from, r.from) * slant(p.to, q.to, r.to);
        if (Math.abs(slant(p.from, q.from, r.from)) < 0.02 || Math.abs(slant(p.to, q.to, r.to)) < 0.02) continue;
        if (turn > 0) alike += 1;
        else opposite += 1;
      }
    }
  }
  return alike === 0 || opposite === 0;
}

/** Twice a triangle's area against the square of its longest side, signed by the way it turns. */
function slant(a: XY, b: XY, c: XY): number {
  const longest = Math.max(
    (b.x - a.x) ** 2 + (b.y - a.y) ** 2,
    (c.x - a.x) ** 2 + (c.y - a.y) ** 2,
    (c.x - b.x) ** 2 + (c.y - b.y) ** 2,
  );
  return longest === 0 ? 0 : ((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / longest;
}
