import { chainLength, distanceToChain } from '../../../../shared-lib/geometry/plane.ts';
import type { XY } from '../../../../shared-lib/geometry/spaces.ts';
import type { Grown } from '../../../../shared-lib/growing/grown.ts';

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Mean distance of two outlines from each other, px. */
export const apartPx = (truth: readonly XY[], outline: readonly XY[]): number =>
  (mean(truth.map((point) => distanceToChain(point, outline, true))) +
    mean(outline.map((point) => distanceToChain(point, truth, true)))) /
  2;

/** A grown border errs by this many stretches of its own: so the program reckons the uncertainty of its area. */
const stretches = 8;

/** Whether the area stated with k = 2 holds the true one. */
export const isHeld = ({ areaPx2, borderPx, outline }: Grown, truthPx2: number): boolean =>
  Math.abs(areaPx2 - truthPx2) <= (2 * borderPx * chainLength(outline, true)) / Math.sqrt(stretches);
