import { type Line, quantile } from './line.ts';

/** Where a line meets a level, as an interval; or that the readings cannot tell. */
export type WhenReached =
  | { readonly state: 'told'; readonly at: number; readonly from: number; readonly to: number }
  /** The slope could as well be nothing or the other way: the interval has no end. */
  | { readonly state: 'cannot be told'; readonly at: number | null; readonly readings: number };

/**
 * Inverse prediction on the line: at which x the mean of the readings meets a level.
 *
 * @param confidence  two-sided, as 0.95
 * Source: E. C. Fieller, 1954: all x whose confidence band of the line holds the level. The interval is bounded only where
 * the slope differs from nothing at that confidence.
 */
export function whenReached(line: Line, level: number, confidence = 0.95): WhenReached {
  const at = line.slope === 0 ? null : line.meanX + (level - line.meanY) / line.slope;
  const t = quantile(line, confidence);
  const untold: WhenReached = { state: 'cannot be told', at, readings: line.count };
  if (t === null || line.residualSd === null || at === null) return untold;
  const spread = (t * line.residualSd) ** 2;
  const rise = level - line.meanY;
  const a = line.slope ** 2 - spread / line.squaresX;
  if (a <= 0) return untold;
  // a d² − 2 slope·rise d + rise² − spread/n ≤ 0 for d = x − mean x; with a > 0 it always has two roots.
  const half = Math.sqrt(Math.max(0, (line.slope * rise) ** 2 - a * (rise ** 2 - spread / line.count)));
  const middle = line.slope * rise;
  return { state: 'told', at, from: line.meanX + (middle - half) / a, to: line.meanX + (middle + half) / a };
}
