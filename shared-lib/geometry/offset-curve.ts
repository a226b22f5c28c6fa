import { distance, distanceToChain } from './plane.ts';
import type { XY } from './spaces.ts';

/** Steps of a rounded corner. At 30 degrees the chord comes no nearer than 0.966 of the offset. */
const cornerStep = Math.PI / 6;
/** A corner that turns less than this gets one mitred point instead of an arc. */
const mitredBelow = Math.PI / 4;
/** Cosine of half the turn below which an inner corner has no point: its mitre would reach beyond this many offsets. */
const sharpestHalf = 1 / 3;
/** Points that come nearer to the line than this share of the offset belong to a loop and are left out. */
const nearestShare = 0.98;

/**
 * A line that runs beside another at a fixed distance, on its left hand when walking from first to last point
 * (y grows downwards, so a line drawn to the right gets it above). Outer corners are round; where the line bends
 * tighter than the offset, the loops that a parallel would make are cut out. The two ends always stay.
 */
export function offsetCurve(points: readonly XY[], offset: number): XY[] {
  const chain = withoutRepeats(points);
  const raw: { point: XY; isEnd: boolean }[] = [];
  for (const [index, point] of chain.entries()) {
    const before = chain[index - 1];
    const after = chain[index + 1];
    if (before && after)
      for (const corner of corners(before, point, after, offset)) raw.push({ point: corner, isEnd: false });
    else if (before ?? after) {
      const normal = before ? leftOf(before, point) : leftOf(point, after ?? point);
      raw.push({ point: moved(point, normal, offset), isEnd: true });
    }
  }
  const least = Math.abs(offset) * nearestShare;
  return raw
    .filter(({ point, isEnd }) => isEnd || distanceToChain(point, chain, false) >= least)
    .map(({ point }) => point);
}

/** Unit normal to the left of the way from a to b. */
export function leftOf(a: XY, b: XY): XY {
  const length = distance(a, b) || 1;
  return { x: (b.y - a.y) / length, y: (a.x - b.x) / length };
}

export function moved(point: XY, direction: XY, by: number): XY {
  return { x: point.x + direction.x * by, y: point.y + direction.y * by };
}

export function withoutRepeats(points: readonly XY[]): XY[] {
  return points.filter((point, index) => {
    const before = points[index - 1];
    return !before || before.x !== point.x || before.y !== point.y;
  });
}

function* corners(before: XY, corner: XY, after: XY, offset: number): Generator<XY> {
  const arriving = leftOf(before, corner);
  const leaving = leftOf(corner, after);
  const turn = Math.atan2(
    arriving.x * leaving.y - arriving.y * leaving.x,
    arriving.x * leaving.x + arriving.y * leaving.y,
  );
  const isOuter = turn * offset > 0;
  if (!isOuter || Math.abs(turn) < mitredBelow) {
    const half = Math.cos(turn / 2);
    // Near a reversal the inner side has no parallel: its mitre would shoot far off. The loop filter takes what is left.
    if (half < sharpestHalf) return;
    yield moved(corner, turned(arriving, turn / 2), offset / half);
    return;
  }
  const steps = Math.ceil(Math.abs(turn) / cornerStep);
  for (let step = 0; step <= steps; step++) yield moved(corner, turned(arriving, (turn * step) / steps), offset);
}

function turned(vector: XY, radians: number): XY {
  const cos = Math.cos(radians);
  const sin = Math.sin(radians);
  return { x: vector.x * cos - vector.y * sin, y: vector.x * sin + vector.y * cos };
}
