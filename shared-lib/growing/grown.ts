import { polygonArea } from '../geometry/plane.ts';
import type { Size, XY } from '../geometry/spaces.ts';
import { runs, steadied } from './stretches.ts';

/** Why a person has to look at a grown outline. */
export type GrowDoubt = 'border-faint' | 'reaches-edge' | 'no-patch' | 'other-extent';

export interface Grown {
  /** A closed chain, about a pixel apart, in pixels of the upright original. */
  readonly outline: readonly XY[];
  readonly areaPx2: number;
  /** How surely the border lies where it is drawn, px of the photo (standard uncertainty). */
  readonly borderPx: number;
  /** Stretches of the outline by index where the border has no contrast; one that runs over the end has from > to. */
  readonly faint: readonly (readonly [number, number])[];
  readonly faintShare: number;
  readonly unsure: boolean;
  readonly doubts: readonly GrowDoubt[];
}

/** @param isFaint  per point of the outline, whether the border is hardly to be seen there */
export function grownFrom(
  outline: readonly XY[],
  isFaint: readonly boolean[],
  photo: Size,
  borderPx: number,
  isOther: boolean,
): Grown {
  const faint = steadied(isFaint);
  const onEdge = outline.filter(
    ({ x, y }) => x < 1.5 || y < 1.5 || x > photo.width - 2.5 || y > photo.height - 2.5,
  ).length;
  const faintShare = faint.filter(Boolean).length / Math.max(1, faint.length);
  const doubts: GrowDoubt[] = [];
  if (faintShare > 0.5) doubts.push('no-patch');
  else if (faintShare > 0.03) doubts.push('border-faint');
  if (onEdge / outline.length > 0.02) doubts.push('reaches-edge');
  if (isOther) doubts.push('other-extent');
  return {
    outline,
    areaPx2: polygonArea(outline),
    borderPx,
    faint: runs(faint),
    faintShare,
    unsure: doubts.length > 0,
    doubts,
  };
}

export const doubted = (grown: Grown, doubt: GrowDoubt): Grown => ({
  ...grown,
  unsure: true,
  doubts: [...new Set([...grown.doubts, doubt])],
});
