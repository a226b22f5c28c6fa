import { studentT } from './student-t.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A straight line through points by least squares, with what its residuals say about it. */
export interface Line {
  readonly count: number;
  readonly slope: number;
  readonly intercept: number;
  readonly meanX: number;
  readonly meanY: number;
  /** Sum of squares of x about its mean. */
  readonly squaresX: number;
  /** Null with two points: a line through both leaves no residuals to judge it by. */
  readonly residualSd: number | null;
  readonly residualSquares: number;
  readonly slopeSd: number | null;
  readonly interceptSd: number | null;
}

/**
 * Least squares y on x, with sums about the means.
 *
 * @returns  null below two points or when all x are one
 * Source: any text on linear regression; the certified figures of NIST StRD (Norris) come out to more than nine digits.
 */
export function fitLine(points: readonly Point[]): Line | null {
  const count = points.length;
  if (count < 2 || !points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))) return null;
  const meanX = mean(points.map(({ x }) => x));
  const meanY = mean(points.map(({ y }) => y));
  const squaresX = sum(points.map(({ x }) => (x - meanX) ** 2));
  if (squaresX === 0) return null;
  const slope = sum(points.map(({ x, y }) => (x - meanX) * (y - meanY))) / squaresX;
  const intercept = meanY - slope * meanX;
  const residualSquares = sum(points.map(({ x, y }) => (y - meanY - slope * (x - meanX)) ** 2));
  const residualSd = count > 2 ? Math.sqrt(residualSquares / (count - 2)) : null;
  return {
    count,
    slope,
    intercept,
    meanX,
    meanY,
    squaresX,
    residualSd,
    residualSquares,
    slopeSd: residualSd === null ? null : residualSd / Math.sqrt(squaresX),
    interceptSd: residualSd === null ? null : residualSd * Math.sqrt(1 / count + meanX ** 2 / squaresX),
  };
}

/** Least squares through the origin. Source: as above; NIST StRD NoInt1 and NoInt2. */
export function fitThroughOrigin(
  points: readonly Point[],
): { slope: number; slopeSd: number; residualSd: number } | null {
  const squares = sum(points.map(({ x }) => x ** 2));
  if (points.length < 2 || squares === 0) return null;
  const slope = sum(points.map(({ x, y }) => x * y)) / squares;
  const residualSd = Math.sqrt(sum(points.map(({ x, y }) => (y - slope * x) ** 2)) / (points.length - 1));
  return { slope, slopeSd: residualSd / Math.sqrt(squares), residualSd };
}

export interface Band {
  readonly middle: number;
  /** Half-width for the line itself, and for one further reading. Null where the points cannot say. */
  readonly ofLine: number | null;
  readonly ofReading: number | null;
}

/** The line at x with its confidence band. @param confidence two-sided, as 0.95 */
export function bandAt(line: Line, x: number, confidence = 0.95): Band {
  const middle = line.meanY + line.slope * (x - line.meanX);
  const t = quantile(line, confidence);
  if (t === null || line.residualSd === null) return { middle, ofLine: null, ofReading: null };
  const share = 1 / line.count + (x - line.meanX) ** 2 / line.squaresX;
  return {
    middle,
    ofLine: t * line.residualSd * Math.sqrt(share),
    ofReading: t * line.residualSd * Math.sqrt(1 + share),
  };
}

/** Two-sided quantile of a line's own residuals; null where there are none. */
export const quantile = (line: Line, confidence: number): number | null =>
  line.count > 2 ? studentT((1 + confidence) / 2, line.count - 2) : null;

const sum = (values: readonly number[]): number => {
  // Neumaier's sum: long series of nearly equal readings lose no digits.
  let total = 0;
  let lost = 0;
  for (const value of values) {
    const next = total + value;
    lost += Math.abs(total) >= Math.abs(value) ? total - next + value : value - next + total;
    total = next;
  }
  return total + lost;
};

const mean = (values: readonly number[]): number => sum(values) / values.length;
