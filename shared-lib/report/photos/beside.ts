import type { PrintedPoint } from '../model.ts';

type Vector = readonly [x: number, y: number];

function distanceToSegment([x, y]: PrintedPoint, [ax, ay]: PrintedPoint, [bx, by]: PrintedPoint): number {
  const [dx, dy] = [bx - ax, by - ay];
  const lengthSquared = dx * dx + dy * dy;
  const share = lengthSquared === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / lengthSquared));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}

/**
 * Fewer points that stay within `toleranceMm` of all of them; the ends stay. Iterative, so a traced path of thousands
 * of points can't exhaust the stack.
 *
 * Source: Ramer 1972 and Douglas and Peucker 1973, line simplification by the farthest point.
 */
export function simplify(points: readonly PrintedPoint[], toleranceMm: number): PrintedPoint[] {
  const keep = new Set([0, points.length - 1]);
  const open: [number, number][] = [[0, points.length - 1]];
  for (let range = open.pop(); range; range = open.pop()) {
    const [from, to] = range;
    const [start, end] = [points[from], points[to]];
    if (!start || !end) continue;
    let farthest = -1;
    let most = toleranceMm;
    for (let index = from + 1; index < to; index++) {
      const point = points[index];
      const distance = point ? distanceToSegment(point, start, end) : 0;
      if (distance > most) [farthest, most] = [index, distance];
    }
    if (farthest < 0) continue;
    keep.add(farthest);
    open.push([from, farthest], [farthest, to]);
  }
  return points.filter((_, index) => keep.has(index));
}

function unit([ax, ay]: PrintedPoint, [bx, by]: PrintedPoint): Vector {
  const length = Math.hypot(bx - ax, by - ay);
  return length === 0 ? [1, 0] : [(bx - ax) / length, (by - ay) / length];
}

/** Left of the direction of travel on paper, where y runs down. */
const leftOf = ([x, y]: Vector): Vector => [y, -x];

/**
 * The line at `offset` beside a path, on the side that lies above it on paper (to the right of an upright one), and the
 * normals at its ends. Wiggles smaller than half the offset are left out, so that the line does not cross itself.
 */
export function beside(
  points: readonly PrintedPoint[],
  offset: number,
  /** The whole path, where only a stretch of it is drawn: all stretches stand on one side. */
  whole: readonly PrintedPoint[] = points,
): { line: PrintedPoint[]; startNormal: Vector; endNormal: Vector } {
  const rough = simplify(points, offset * 0.5).filter(
    ([x, y], index, all) => index === 0 || x !== all[index - 1]?.[0] || y !== all[index - 1]?.[1],
  );
  const [first, last] = [rough[0], rough.at(-1)];
  if (!first || !last) return { line: [], startNormal: [0, -1], endNormal: [0, -1] };
  const [wholeFirst = first, wholeLast = last] = [whole[0], whole.at(-1)];
  const overall = leftOf(unit(wholeFirst, wholeLast));
  // Upwards; for an upright path to the right.
  const side = overall[1] < -1e-6 || (Math.abs(overall[1]) <= 1e-6 && overall[0] > 0) ? 1 : -1;
  const normals = rough.slice(1).map((point, index): Vector => {
    const [x, y] = leftOf(unit(rough[index] ?? point, point));
    return [x * side, y * side];
  });
  const fallback: Vector = [overall[0] * side, overall[1] * side];
  const line = rough.map(([x, y], index): PrintedPoint => {
    const before = normals[index - 1] ?? normals[index] ?? fallback;
    const after = normals[index] ?? before;
    const [sumX, sumY] = [before[0] + after[0], before[1] + after[1]];
    const length = Math.hypot(sumX, sumY);
    if (length < 1e-6) return [x + before[0] * offset, y + before[1] * offset];
    const [middleX, middleY] = [sumX / length, sumY / length];
    // A mitre, held short at sharp corners.
    const reach = offset * Math.min(1 / Math.max(middleX * after[0] + middleY * after[1], 0.1), 1.4);
    return [x + middleX * reach, y + middleY * reach];
  });
  return { line, startNormal: normals[0] ?? fallback, endNormal: normals.at(-1) ?? fallback };
}
