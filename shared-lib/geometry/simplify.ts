import { distance, nearestOnSegment } from './plane.ts';
import type { XY } from './spaces.ts';

/**
 * Fewer points for a trail drawn by hand: no dropped point lies farther than `tolerance` from the line that is left.
 * Ends are kept. Used for freehand trails only; points set one by one are never touched.
 *
 * Source: Ramer 1972, Douglas and Peucker 1973 (line generalisation by largest deviation).
 */
export function simplify<P extends XY>(points: readonly P[], tolerance: number): P[] {
  const kept = new Set<number>([0, points.length - 1]);
  const open: [number, number][] = [[0, points.length - 1]];
  for (let part = open.pop(); part; part = open.pop()) {
    const [first, last] = part;
    const far = farthest(points, first, last);
    if (!far || far.away <= tolerance) continue;
    kept.add(far.index);
    open.push([first, far.index], [far.index, last]);
  }
  return points.filter((_, index) => kept.has(index));
}

function farthest(points: readonly XY[], first: number, last: number): { index: number; away: number } | null {
  const a = points[first];
  const b = points[last];
  if (!a || !b) return null;
  let best: { index: number; away: number } | null = null;
  for (let index = first + 1; index < last; index++) {
    const point = points[index];
    if (!point) continue;
    const away = distance(point, nearestOnSegment(point, a, b));
    if (!best || away > best.away) best = { index, away };
  }
  return best;
}
