import { type ShapeName, shapePointCounts } from '../model/mark.ts';
import { distance, midpoint, nearestOnSegment } from './plane.ts';
import type { XY } from './spaces.ts';

export interface NearVertex {
  readonly index: number;
  readonly away: number;
}

export function nearestVertex(points: readonly XY[], at: XY): NearVertex | null {
  let best: NearVertex | null = null;
  for (const [index, point] of points.entries()) {
    const away = distance(point, at);
    if (!best || away < best.away) best = { index, away };
  }
  return best;
}

/** An edge of a shape: from the point of this index to the next one (round to the first, for an area). */
export interface Edge {
  readonly index: number;
  readonly from: XY;
  readonly to: XY;
}

/** Only shapes of a free number of points have edges that a point can be put into. */
export function edgesOf(shape: ShapeName, points: readonly XY[]): Edge[] {
  if (points.length >= shapePointCounts[shape].most) return [];
  const isClosed = shape === 'area';
  return points.flatMap((from, index) => {
    const to = points[index + 1] ?? (isClosed ? points[0] : undefined);
    return to ? [{ index, from, to }] : [];
  });
}

export function middleOf(edge: Edge): XY {
  return midpoint(edge.from, edge.to);
}

export function nearestEdge(shape: ShapeName, points: readonly XY[], at: XY): (Edge & { away: number }) | null {
  let best: (Edge & { away: number }) | null = null;
  for (const edge of edgesOf(shape, points)) {
    const away = distance(at, nearestOnSegment(at, edge.from, edge.to));
    if (!best || away < best.away) best = { ...edge, away };
  }
  return best;
}

/** The points with one more, on the edge that begins at `edgeIndex`. */
export function withVertex<P extends XY>(points: readonly P[], edgeIndex: number, at: P): P[] {
  return points.toSpliced(edgeIndex + 1, 0, at);
}

export function canLoseVertex(shape: ShapeName, points: readonly XY[]): boolean {
  return points.length > shapePointCounts[shape].fewest;
}

export function withoutVertex<P extends XY>(points: readonly P[], index: number): P[] {
  return points.toSpliced(index, 1);
}

export function withVertexAt<P extends XY>(points: readonly P[], index: number, at: P): P[] {
  return points.with(index, at);
}

export function movedBy(points: readonly XY[], dx: number, dy: number): { x: number; y: number }[] {
  return points.map(({ x, y }) => ({ x: x + dx, y: y + dy }));
}
