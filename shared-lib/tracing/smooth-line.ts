import { distance } from '../geometry/plane.ts';
import type { XY } from '../geometry/spaces.ts';

/** Points every `step` along a chain, both ends kept. */
export function evenlySpaced(points: readonly XY[], step: number): XY[] {
  const first = points[0];
  if (!first) return [];
  const spaced: XY[] = [first];
  let carried = 0;
  let previous = first;
  for (const point of points.slice(1)) {
    const length = distance(previous, point);
    for (let along = step - carried; along <= length; along += step) {
      const t = along / length;
      spaced.push({ x: previous.x + t * (point.x - previous.x), y: previous.y + t * (point.y - previous.y) });
    }
    carried = (carried + length) % step;
    previous = point;
  }
  const last = spaced.at(-1);
  if (last && distance(last, previous) > step / 4) spaced.push(previous);
  return spaced;
}

/** A running mean over 2 reach + 1 points with triangular weights, shorter towards both ends, which stay. */
export function smoothLine(points: readonly XY[], reach: number): XY[] {
  return points.map((_, index) => {
    const room = Math.min(reach, index, points.length - 1 - index);
    let x = 0;
    let y = 0;
    let weights = 0;
    for (let k = -room; k <= room; k += 1) {
      const point = points[index + k];
      if (!point) continue;
      const weight = room + 1 - Math.abs(k);
      x += weight * point.x;
      y += weight * point.y;
      weights += weight;
    }
    return { x: x / weights, y: y / weights };
  });
}

/** Unit vector across the line at a point, from its neighbours `reach` points away each side. */
export function normalAt(points: readonly XY[], index: number, reach: number): XY {
  const before = points[Math.max(0, index - reach)];
  const after = points[Math.min(points.length - 1, index + reach)];
  if (!before || !after) return { x: 0, y: 1 };
  const length = distance(before, after);
  return length === 0 ? { x: 0, y: 1 } : { x: -(after.y - before.y) / length, y: (after.x - before.x) / length };
}
