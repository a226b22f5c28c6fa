import type { XY } from '../spaces.ts';
import { type OutlineOf, openStroke, type Stretches, type Stroke } from './outline.ts';

/** Round the area, never filled. */
export const areaOutline: OutlineOf = (points) => (points.length < 2 ? [] : [{ points, closed: points.length > 2 }]);

/** The same, stretches where its border is hardly to be seen as strokes of their own. */
export function grownOutline(points: readonly XY[], unsure: Stretches): readonly Stroke[] {
  const first = points[0];
  if (!first) return [];
  const chain = [...points, first];
  const strokes: Stroke[] = [];
  let sureFrom = 0;
  const between = (from: number, to: number): Stroke => openStroke(...chain.slice(from, to + 1));
  for (const [from, to] of [...unsure].sort((a, b) => a[0] - b[0])) {
    if (from > sureFrom) strokes.push(between(sureFrom, from));
    strokes.push({ ...between(from, to), isUnsure: true });
    sureFrom = to;
  }
  strokes.push(between(sureFrom, chain.length - 1));
  return strokes.filter((stroke) => stroke.points.length > 1);
}
