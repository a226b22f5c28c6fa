/** Small dense matrices, row by row. */
export type Matrix = readonly (readonly number[])[];

/** Product of a matrix's transpose with itself. */
export function gram(rows: Matrix): number[][] {
  const size = rows[0]?.length ?? 0;
  const product = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (const row of rows) {
    for (let i = 0; i < size; i += 1) {
      const line = product[i];
      if (!line) continue;
      for (let j = 0; j < size; j += 1) line[j] = (line[j] ?? 0) + (row[i] ?? 0) * (row[j] ?? 0);
    }
  }
  return product;
}

/**
 * Solves A x = b by Gaussian elimination with partial pivoting.
 *
 * @returns null where A is singular to working precision
 */
export function solve(a: Matrix, b: readonly number[]): number[] | null {
  const size = b.length;
  const rows = a.map((row, i) => [...row, b[i] ?? 0]);
  for (let column = 0; column < size; column += 1) {
    let pivot = column;
    for (let i = column + 1; i < size; i += 1) {
      if (Math.abs(rows[i]?.[column] ?? 0) > Math.abs(rows[pivot]?.[column] ?? 0)) pivot = i;
    }
    const top = rows[pivot];
    const other = rows[column];
    if (!top || !other || Math.abs(top[column] ?? 0) < 1e-300) return null;
    rows[pivot] = other;
    rows[column] = top;
    for (let i = column + 1; i < size; i += 1) {
      const row = rows[i];
      if (!row) continue;
      const factor = (row[column] ?? 0) / (top[column] ?? 1);
      for (let j = column; j <= size; j += 1) row[j] = (row[j] ?? 0) - factor * (top[j] ?? 0);
    }
  }
  const x = new Array<number>(size).fill(0);
  for (let i = size - 1; i >= 0; i -= 1) {
    let rest = rows[i]?.[size] ?? 0;
    for (let j = i + 1; j < size; j += 1) rest -= (rows[i]?.[j] ?? 0) * (x[j] ?? 0);
    x[i] = rest / (rows[i]?.[i] ?? 1);
  }
  return x.every(Number.isFinite) ? x : null;
}

export interface Eigen {
  /** Rising. */
  readonly values: readonly number[];
  /** Unit vectors, in the values' order. */
  readonly vectors: Matrix;
}

/** Eigenvalues and vectors of a symmetric matrix by cyclic Jacobi rotations. Source: Golub and Van Loan, 8.5. */
export function symmetricEigen(matrix: Matrix): Eigen {
  const size = matrix.length;
  const a = Float64Array.from(matrix.flat());
  const v = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) v[i * size + i] = 1;
  for (let sweep = 0; sweep < 60 && !isDiagonal(a, size); sweep += 1) {
    for (let p = 0; p < size; p += 1) {
      for (let q = p + 1; q < size; q += 1) {
        const mixed = a[p * size + q] as number;
        if (mixed === 0) continue;
        const theta = ((a[q * size + q] as number) - (a[p * size + p] as number)) / (2 * mixed);
        const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        const c = 1 / Math.sqrt(t * t + 1);
        // Columns, then rows, then the columns of the vectors.
        turn(a, p, q, size, size, c, t * c);
        turn(a, p * size, q * size, 1, size, c, t * c);
        turn(v, p, q, size, size, c, t * c);
      }
    }
  }
  const order = Array.from({ length: size }, (_, i) => i).sort(
    (i, j) => (a[i * size + i] as number) - (a[j * size + j] as number),
  );
  return {
    values: order.map((i) => a[i * size + i] as number),
    vectors: order.map((i) => Array.from({ length: size }, (_, k) => v[k * size + i] as number)),
  };
}

function isDiagonal(a: Float64Array, size: number): boolean {
  let off = 0;
  let all = 0;
  for (let i = 0; i < a.length; i += 1) {
    const square = (a[i] as number) ** 2;
    all += square;
    if (i % (size + 1) !== 0) off += square;
  }
  return off <= 1e-32 * all;
}

/** Turns two rows or columns into each other, `step` apart from entry to entry. */
function turn(m: Float64Array, p: number, q: number, step: number, size: number, c: number, s: number): void {
  for (let k = 0; k < size; k += 1) {
    const x = m[p + k * step] as number;
    const y = m[q + k * step] as number;
    m[p + k * step] = c * x - s * y;
    m[q + k * step] = s * x + c * y;
  }
}
