import type { ImagePoint, ShapeName } from '../model/mark.ts';
import { outlines } from './outlines/index.ts';
import { boundingBox, distanceToChain, grownBox, isInsideBox, isInsidePolygon, polygonArea } from './plane.ts';
import { toScreen, type View } from './viewport.ts';

export interface Hittable {
  readonly id: string;
  readonly shape: ShapeName;
  readonly points: readonly ImagePoint[];
}

export interface Hit {
  readonly id: string;
  /** On the drawn line or on the stored points; inside: within an area, away from its outline. */
  readonly on: 'outline' | 'inside';
}

/** The farthest that any drawing reaches beyond its points, in screen pixels. */
const reachPx = 20;

/**
 * How far a spot is from a shape as drawn, in screen pixels. A line or path is met both where it is drawn and where its
 * points lie, since the mechanic sees the crack and the line beside it.
 */
export function distanceToShapePx(shape: ShapeName, points: readonly ImagePoint[], at: ImagePoint, view: View): number {
  const spot = toScreen(view, at);
  const onScreen = points.map((point) => toScreen(view, point));
  const drawn = outlines[shape](onScreen).map((stroke) => distanceToChain(spot, stroke.points, stroke.closed));
  return Math.min(distanceToChain(spot, onScreen, shape === 'area'), ...drawn);
}

/**
 * The mark under a spot: the nearest outline within the tolerance, the later drawn of two equally near; else the
 * smallest area that holds the spot.
 */
export function hitMarks(marks: readonly Hittable[], at: ImagePoint, view: View, tolerancePx: number): Hit | null {
  let nearest: { id: string; away: number } | null = null;
  let holding: { id: string; size: number } | null = null;
  for (const mark of marks) {
    const box = boundingBox(mark.points);
    if (!box || !isInsideBox(at, grownBox(box, (reachPx + tolerancePx) / view.scale))) continue;
    const away = distanceToShapePx(mark.shape, mark.points, at, view);
    if (away <= tolerancePx && (!nearest || away <= nearest.away)) nearest = { id: mark.id, away };
    if (mark.shape !== 'area' || !isInsidePolygon(at, mark.points)) continue;
    const size = polygonArea(mark.points);
    if (!holding || size < holding.size) holding = { id: mark.id, size };
  }
  if (nearest) return { id: nearest.id, on: 'outline' };
  return holding ? { id: holding.id, on: 'inside' } : null;
}
