import { distance, distanceToChain } from '../../../shared-lib/geometry/plane.ts';
import type { XY } from '../../../shared-lib/geometry/spaces.ts';
import { evenlySpaced } from '../../../shared-lib/tracing/smooth-line.ts';

export interface LineDistance {
  /** Mean of (mean distance truth to trace, mean distance trace to truth), both lines resampled to 1 px. */
  readonly meanPx: number;
  /** The point of the truth that lies farthest from the trace. */
  readonly farthest: XY;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

export function lineDistance(truth: readonly XY[], trace: readonly XY[]): LineDistance {
  const truthPoints = evenlySpaced(truth, 1);
  const tracePoints = evenlySpaced(trace, 1);
  const away = truthPoints.map((point) => distanceToChain(point, tracePoints, false));
  const back = tracePoints.map((point) => distanceToChain(point, truthPoints, false));
  const most = Math.max(...away);
  return { meanPx: (mean(away) + mean(back)) / 2, farthest: truthPoints[away.indexOf(most)] ?? { x: 0, y: 0 } };
}

/** How far a line's own length is off, where a check wants it. */
export function lengthOf(points: readonly XY[]): number {
  let sum = 0;
  for (const [i, point] of points.slice(1).entries()) sum += distance(points[i] ?? point, point);
  return sum;
}
