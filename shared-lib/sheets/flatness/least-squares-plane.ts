import { dot, minus, type Vector } from './vectors.ts';

export interface PlaneFit {
  /** Of length one, pointing up where the plane is not upright. */
  readonly normal: Vector;
  readonly through: Vector;
  /** Signed distances of the points, in their order. */
  readonly distances: readonly number[];
  /** Highest less lowest distance. */
  readonly peakToValley: number;
}

/**
 * The plane with the least sum of squared normal distances.
 *
 * @param points  three or more, not on one line; all in one unit
 * @returns  null for fewer points or points on a line
 * Source: the reference plane LSPL of ISO 12781-1; its peak-to-valley is never less than the minimum zone.
 */
export function leastSquaresPlane(points: readonly Vector[]): PlaneFit | null {
  if (points.length < 3) return null;
  const through = meanPoint(points);
  const centred = points.map((point) => minus(point, through));
  const moment = (i: 0 | 1 | 2, j: 0 | 1 | 2) => centred.reduce((total, point) => total + point[i] * point[j], 0);
  const { values, vectors } = eigen([
    [moment(0, 0), moment(0, 1), moment(0, 2)],
    [moment(0, 1), moment(1, 1), moment(1, 2)],
    [moment(0, 2), moment(1, 2), moment(2, 2)],
  ]);
  const order = [0, 1, 2].sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0));
  const [least = 0, middle = 1, most = 2] = order;
  if ((values[middle] ?? 0) <= 1e-18 * (values[most] ?? 0) || (values[most] ?? 0) === 0) return null;
  const column = (at: number): Vector => [vectors[0]?.[at] ?? 0, vectors[1]?.[at] ?? 0, vectors[2]?.[at] ?? 0];
  const found = column(least);
  const normal: Vector = found[2] < 0 ? [-found[0], -found[1], -found[2]] : found;
  const distances = centred.map((point) => dot(point, normal));
  return { normal, through, distances, peakToValley: Math.max(...distances) - Math.min(...distances) };
}

export function meanPoint(points: readonly Vector[]): Vector {
  const mean = (i: 0 | 1 | 2) => points.reduce((total, point) => total + point[i], 0) / points.length;
  return [mean(0), mean(1), mean(2)];
}

/** Eigenvalues and column vectors of a symmetric 3 × 3 matrix, by Jacobi's rotations. */
function eigen(matrix: readonly (readonly number[])[]): { values: number[]; vectors: number[][] } {
  const a = matrix.map((row) => [...row]);
  const v = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const at = (table: number[][], i: number, j: number): number => table[i]?.[j] ?? 0;
  const put = (table: number[][], i: number, j: number, value: number): void => {
    const row = table[i];
    if (row !== undefined) row[j] = value;
  };
  for (let sweep = 0; sweep < 60; sweep += 1) {
    for (const [p, q] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const) {
      const off = at(a, p, q);
      if (off === 0) continue;
      const theta = (at(a, q, q) - at(a, p, p)) / (2 * off);
      const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta ** 2 + 1));
      const c = 1 / Math.sqrt(t ** 2 + 1);
      const s = t * c;
      for (let k = 0; k < 3; k += 1) {
        const [kp, kq] = [at(a, k, p), at(a, k, q)];
        put(a, k, p, c * kp - s * kq);
        put(a, k, q, s * kp + c * kq);
      }
      for (let k = 0; k < 3; k += 1) {
        const [pk, qk] = [at(a, p, k), at(a, q, k)];
        put(a, p, k, c * pk - s * qk);
        put(a, q, k, s * pk + c * qk);
      }
      for (let k = 0; k < 3; k += 1) {
        const [kp, kq] = [at(v, k, p), at(v, k, q)];
        put(v, k, p, c * kp - s * kq);
        put(v, k, q, s * kp + c * kq);
      }
    }
  }
  return { values: [at(a, 0, 0), at(a, 1, 1), at(a, 2, 2)], vectors: v };
}
