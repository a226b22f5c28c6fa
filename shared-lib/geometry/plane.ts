import type { Box, XY } from './spaces.ts';

export function distance(a: XY, b: XY): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

export function midpoint(a: XY, b: XY): XY {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

export function nearestOnSegment(point: XY, a: XY, b: XY): XY {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  if (square === 0) return a;
  const along = Math.min(1, Math.max(0, ((point.x - a.x) * dx + (point.y - a.y) * dy) / square));
  return { x: a.x + along * dx, y: a.y + along * dy };
}

/** The segments of a chain of points; a closed chain ends where it began. */
export function* segments(points: readonly XY[], closed: boolean): Generator<readonly [XY, XY]> {
  let previous = closed ? points.at(-1) : undefined;
  for (const point of points) {
    if (previous) yield [previous, point];
    previous = point;
  }
}

export function nearestOnChain(point: XY, points: readonly XY[], closed: boolean): XY {
  let best = points[0] ?? point;
  let least = distance(point, best);
  for (const [a, b] of segments(points, closed)) {
    const candidate = nearestOnSegment(point, a, b);
    const away = distance(point, candidate);
    if (away < least) {
      least = away;
      best = candidate;
    }
  }
  return best;
}

export function distanceToChain(point: XY, points: readonly XY[], closed: boolean): number {
  return points.length === 0 ? Number.POSITIVE_INFINITY : distance(point, nearestOnChain(point, points, closed));
}

/** Length along a chain of points, in the points' own unit. */
export function chainLength(points: readonly XY[], closed: boolean): number {
  let length = 0;
  for (const [a, b] of segments(points, closed)) length += distance(a, b);
  return length;
}

/**
 * Area of a polygon by the surveyor's (shoelace) formula, in square units, never negative.
 * Where the outline crosses itself the lobes cancel; a mark's outline is expected not to.
 */
export function polygonArea(points: readonly XY[]): number {
  const origin = points[0];
  if (!origin) return 0;
  let twice = 0;
  // Measured from the first point: differences of large coordinates would lose digits.
  for (const [a, b] of segments(points, true)) {
    twice += (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y);
  }
  return Math.abs(twice) / 2;
}

/** By the even-odd rule. */
export function isInsidePolygon(point: XY, points: readonly XY[]): boolean {
  let inside = false;
  for (const [a, b] of segments(points, true)) {
    if (a.y > point.y !== b.y > point.y && point.x < ((b.x - a.x) * (point.y - a.y)) / (b.y - a.y) + a.x) {
      inside = !inside;
    }
  }
  return inside;
}

/** Angle at `corner` between the ways to `a` and to `b`, 0 to 180 degrees; NaN where a way has no length. */
export function angleDegrees(a: XY, corner: XY, b: XY): number {
  const ax = a.x - corner.x;
  const ay = a.y - corner.y;
  const bx = b.x - corner.x;
  const by = b.y - corner.y;
  if ((ax === 0 && ay === 0) || (bx === 0 && by === 0)) return Number.NaN;
  return (Math.atan2(Math.abs(ax * by - ay * bx), ax * bx + ay * by) * 180) / Math.PI;
}

/** Null for no points at all. */
export function boundingBox(points: Iterable<XY>): Box | null {
  let left = Number.POSITIVE_INFINITY;
  let top = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  for (const { x, y } of points) {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x);
    bottom = Math.max(bottom, y);
  }
  return left <= right ? { left, top, right, bottom } : null;
}

export function grownBox(box: Box, by: number): Box {
  return { left: box.left - by, top: box.top - by, right: box.right + by, bottom: box.bottom + by };
}

export function boxesMeet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

export function isInsideBox(point: XY, box: Box): boolean {
  return point.x >= box.left && point.x <= box.right && point.y >= box.top && point.y <= box.bottom;
}

export function boxHolds(outer: Box, inner: Box): boolean {
  return (
    inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom
  );
}

/** Whether a segment touches a box (Liang and Barsky's parametric clip). */
export function segmentMeetsBox(a: XY, b: XY, box: Box): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  let enter = 0;
  let leave = 1;
  const sides = [
    [-dx, a.x - box.left],
    [dx, box.right - a.x],
    [-dy, a.y - box.top],
    [dy, box.bottom - a.y],
  ] as const;
  for (const [slope, room] of sides) {
    if (slope === 0) {
      if (room < 0) return false;
    } else if (slope < 0) enter = Math.max(enter, room / slope);
    else leave = Math.min(leave, room / slope);
  }
  return enter <= leave;
}
