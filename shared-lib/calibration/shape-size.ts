import { angleDegrees, chainLength, distance, polygonArea } from '../geometry/plane.ts';
import type { XY } from '../geometry/spaces.ts';
import type { MeasuredShape } from './input.ts';

export type SizeUnit = 'length' | 'area' | 'angle';

export function unitOf(shape: MeasuredShape['shape']): SizeUnit {
  return shape === 'area' ? 'area' : shape === 'angle' ? 'angle' : 'length';
}

/** Length of a chain, area of an outline or angle at the middle one of three points, in the points' own unit. */
export function sizeOf(shape: MeasuredShape['shape'], points: readonly XY[]): number {
  if (shape === 'area') return polygonArea(points);
  const [a, b, c] = points;
  if (shape === 'angle') return a && b && c ? angleDegrees(a, b, c) : Number.NaN;
  return chainLength(points, false);
}

/** How the size changes with each point: its derivative along x and y. */
export function slopesOf(shape: MeasuredShape['shape'], points: readonly XY[]): XY[] {
  if (shape === 'angle') return points.map((_, i) => numericSlope(shape, points, i));
  const last = points.length - 1;
  return points.map((point, i) => {
    const before = points[i === 0 && shape === 'area' ? last : i - 1];
    const after = points[i === last && shape === 'area' ? 0 : i + 1];
    if (shape === 'area') {
      const sign = signedArea(points) < 0 ? -1 : 1;
      return before && after
        ? { x: (sign * (after.y - before.y)) / 2, y: (sign * (before.x - after.x)) / 2 }
        : { x: 0, y: 0 };
    }
    const from = towards(before, point);
    const to = towards(after, point);
    return { x: from.x + to.x, y: from.y + to.y };
  });
}

function signedArea(points: readonly XY[]): number {
  return points.reduce((sum, a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    return sum + (a.x * b.y - a.y * b.x) / 2;
  }, 0);
}

function towards(from: XY | undefined, to: XY): XY {
  const length = from ? distance(from, to) : 0;
  return from && length > 0 ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : { x: 0, y: 0 };
}

function numericSlope(shape: MeasuredShape['shape'], points: readonly XY[], i: number): XY {
  const point = points[i] ?? { x: 0, y: 0 };
  const reach = Math.max(1e-9, ...points.map((other) => distance(other, point)));
  const step = 1e-5 * reach;
  const at = (dx: number, dy: number): number => sizeOf(shape, points.with(i, { x: point.x + dx, y: point.y + dy }));
  return { x: (at(step, 0) - at(-step, 0)) / (2 * step), y: (at(0, step) - at(0, -step)) / (2 * step) };
}
