import type { XY } from '../geometry/spaces.ts';
import { solve, symmetricEigen } from './linear.ts';

export interface Ellipse {
  readonly centre: XY;
  readonly semiMajor: number;
  readonly semiMinor: number;
  /** Of the major axis from x, radians, -pi/2 to pi/2. */
  readonly angle: number;
}

/**
 * Direct least-squares fit of an ellipse in its numerically stable form.
 *
 * @param points  five or more
 * @returns null where the points lie on no ellipse (a line, a hyperbola, too few)
 * Source: Halir and Flusser, Numerically stable direct least squares fitting of ellipses (WSCG 1998).
 */
export function fitEllipse(points: readonly XY[]): Ellipse | null {
  if (points.length < 5) return null;
  const count = points.length;
  const middle = { x: 0, y: 0 };
  for (const { x, y } of points) {
    middle.x += x / count;
    middle.y += y / count;
  }
  const size = points.reduce((sum, { x, y }) => sum + Math.hypot(x - middle.x, y - middle.y), 0) / count;
  if (!(size > 0)) return null;
  const conic = fitConic(points.map(({ x, y }) => ({ x: (x - middle.x) / size, y: (y - middle.y) / size })));
  const ellipse = conic && ellipseOf(conic);
  return (
    ellipse && {
      centre: { x: middle.x + size * ellipse.centre.x, y: middle.y + size * ellipse.centre.y },
      semiMajor: size * ellipse.semiMajor,
      semiMinor: size * ellipse.semiMinor,
      angle: ellipse.angle,
    }
  );
}

type Conic = readonly [number, number, number, number, number, number];

function fitConic(points: readonly XY[]): Conic | null {
  const s1 = zeros();
  const s2 = zeros();
  const s3 = zeros();
  for (const { x, y } of points) {
    const square = [x * x, x * y, y * y];
    const line = [x, y, 1];
    for (let i = 0; i < 3; i += 1) {
      for (let j = 0; j < 3; j += 1) {
        add(s1, i, j, (square[i] ?? 0) * (square[j] ?? 0));
        add(s2, i, j, (square[i] ?? 0) * (line[j] ?? 0));
        add(s3, i, j, (line[i] ?? 0) * (line[j] ?? 0));
      }
    }
  }
  // T = -S3^-1 S2^T, column by column.
  const columns = [0, 1, 2].map((k) =>
    solve(
      s3,
      (s2[k] ?? []).map((value) => -value),
    ),
  );
  const [t0, t1, t2] = columns;
  if (!t0 || !t1 || !t2) return null;
  const t = [t0, t1, t2];
  const m = s1.map((row, i) =>
    row.map((value, j) => value + (s2[i] ?? []).reduce((sum, s, k) => sum + s * (t[j]?.[k] ?? 0), 0)),
  );
  const quadratic = smallestEllipse(m);
  if (!quadratic) return null;
  const rest = [0, 1, 2].map((k) => t.reduce((sum, column, j) => sum + (column[k] ?? 0) * (quadratic[j] ?? 0), 0));
  return [...quadratic, ...rest] as unknown as Conic;
}

/**
 * Of all (a, b, c) with 4ac - b^2 = 1 the one with the least v^T M v. With M = L L^T this is the symmetric problem
 * L^-1 C L^-T u = mu u, whose largest mu is the one positive eigenvalue.
 */
function smallestEllipse(m: readonly (readonly number[])[]): readonly number[] | null {
  const trace = (m[0]?.[0] ?? 0) + (m[1]?.[1] ?? 0) + (m[2]?.[2] ?? 0);
  // Points that lie exactly on an ellipse leave M singular: the smallest share keeps its root real and moves nothing.
  const lower = cholesky(m.map((row, i) => row.map((value, j) => (i === j ? value + 1e-15 * trace : value))));
  if (!lower) return null;
  const constraint = [
    [0, 0, 2],
    [0, -1, 0],
    [2, 0, 0],
  ];
  const half = [0, 1, 2].map((k) =>
    forward(
      lower,
      constraint.map((row) => row[k] ?? 0),
    ),
  );
  // half[k] is column k of L^-1 C; rows of it are solved again for L^-1 C L^-T.
  const whole = [0, 1, 2].map((i) =>
    forward(
      lower,
      half.map((column) => column[i] ?? 0),
    ),
  );
  const { values, vectors } = symmetricEigen(
    whole.map((row, i) => row.map((value, j) => (value + (whole[j]?.[i] ?? 0)) / 2)),
  );
  const u = vectors[2];
  if (!u || !((values[2] ?? 0) > 0)) return null;
  return backward(lower, u);
}

function cholesky(m: readonly (readonly number[])[]): number[][] | null {
  const lower = zeros();
  for (let i = 0; i < 3; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let rest = m[i]?.[j] ?? 0;
      for (let k = 0; k < j; k += 1) rest -= (lower[i]?.[k] ?? 0) * (lower[j]?.[k] ?? 0);
      if (i === j && !(rest > 0)) return null;
      (lower[i] as number[])[j] = i === j ? Math.sqrt(rest) : rest / (lower[j]?.[j] ?? 1);
    }
  }
  return lower;
}

function forward(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  const x = [0, 0, 0];
  for (let i = 0; i < 3; i += 1) {
    let rest = b[i] ?? 0;
    for (let k = 0; k < i; k += 1) rest -= (lower[i]?.[k] ?? 0) * (x[k] ?? 0);
    x[i] = rest / (lower[i]?.[i] ?? 1);
  }
  return x;
}

function backward(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  const x = [0, 0, 0];
  for (let i = 2; i >= 0; i -= 1) {
    let rest = b[i] ?? 0;
    for (let k = i + 1; k < 3; k += 1) rest -= (lower[k]?.[i] ?? 0) * (x[k] ?? 0);
    x[i] = rest / (lower[i]?.[i] ?? 1);
  }
  return x;
}

function ellipseOf([a, b, c, d, e, f]: Conic): Ellipse | null {
  const discriminant = 4 * a * c - b * b;
  if (!(discriminant > 0)) return null;
  const centre = { x: (b * e - 2 * c * d) / discriminant, y: (b * d - 2 * a * e) / discriminant };
  const constant = f + (d * centre.x + e * centre.y) / 2;
  const { values, vectors } = symmetricEigen([
    [a, b / 2],
    [b / 2, c],
  ]);
  const squares = values.map((value) => -constant / value);
  const [p = 0, q = 0] = squares;
  const major = p >= q ? 0 : 1;
  const axis = vectors[major];
  if (!(p > 0) || !(q > 0) || !axis) return null;
  const angle = Math.atan((axis[1] ?? 0) / (axis[0] ?? 0));
  return { centre, semiMajor: Math.sqrt(Math.max(p, q)), semiMinor: Math.sqrt(Math.min(p, q)), angle };
}

function zeros(): number[][] {
  return [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
}

function add(m: number[][], i: number, j: number, value: number): void {
  const row = m[i];
  if (row) row[j] = (row[j] ?? 0) + value;
}
