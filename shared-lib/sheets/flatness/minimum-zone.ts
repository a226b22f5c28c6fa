import { convexHull, edgesOf, type Face } from './convex-hull.ts';
import { leastSquaresPlane, type PlaneFit } from './least-squares-plane.ts';
import { cross, dot, lengthOf, minus, type Vector } from './vectors.ts';

export interface MinimumZone {
  /** Distance of the two closest parallel planes that hold all points. */
  readonly width: number;
  /** Of length one, square to the planes. */
  readonly normal: Vector;
  /** Signed distances from the middle of the zone, in the points' order. */
  readonly heights: readonly number[];
  /** The ordinary estimate, never less than `width`. */
  readonly leastSquares: PlaneFit;
}

/**
 * Flatness as the standard defines it: the least distance of two parallel planes with all points between them.
 *
 * Exact: the closest pair of planes touches the convex hull either with a face and a corner or with two edges, and every
 * such pair is tried.
 *
 * @param points  three or more, not on one line; all in one unit
 * @returns  null for fewer points or points on a line
 * Source: ISO 1101 flatness zone, ISO 12781-1 minimum zone; the width of a polytope, Houle and Toussaint 1988.
 */
export function minimumZone(points: readonly Vector[]): MinimumZone | null {
  const leastSquares = leastSquaresPlane(points);
  if (leastSquares === null) return null;
  const normal = leastSquares.peakToValley === 0 ? leastSquares.normal : thinnest(points, leastSquares);
  const along = points.map((point) => dot(normal, minus(point, leastSquares.through)));
  const [low, high] = [Math.min(...along), Math.max(...along)];
  const middle = (low + high) / 2;
  return { width: high - low, normal, heights: along.map((each) => each - middle), leastSquares };
}

const tolerance = 1e-11;
/** Sides that turn less than this against each other are one. */
const flatTurn = 1e-9;

/** The direction in which the points are thinnest. */
function thinnest(points: readonly Vector[], fit: PlaneFit): Vector {
  // Faces and edges of a hull do not depend on stretching and shearing, so they are looked for in a frame where the part
  // is as thick as it is wide; only the widths are taken in the true one.
  const scaled = toCube(points, fit);
  const faces = convexHull(scaled, tolerance);
  if (faces === null) return fit.normal;
  const used = [...new Set(faces.flatMap(({ corners }) => corners))];
  const corners = used.map((index) => minus(points[index] ?? fit.through, fit.through));
  const at = (index: number): Vector => minus(points[index] ?? fit.through, fit.through);

  let best = { width: fit.peakToValley, normal: fit.normal };
  const consider = (direction: Vector): void => {
    const size = lengthOf(direction);
    if (!(size > 0)) return;
    const normal: Vector = [direction[0] / size, direction[1] / size, direction[2] / size];
    const width = widthAlong(corners, normal, best.width);
    if (width < best.width) best = { width, normal };
  };
  for (const {
    corners: [a, b, c],
  } of faces)
    consider(cross(minus(at(b), at(a)), minus(at(c), at(a))));
  for (const [one, other] of facingEdges(faces, points.length)) {
    consider(cross(minus(at(one[1]), at(one[0])), minus(at(other[1]), at(other[0]))));
  }
  const { normal } = best;
  return normal[2] < 0 ? [-normal[0], -normal[1], -normal[2]] : normal;
}

function widthAlong(corners: readonly Vector[], normal: Vector, enough: number): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const corner of corners) {
    const along = dot(normal, corner);
    if (along < low) low = along;
    if (along > high) high = along;
    if (high - low >= enough) return enough;
  }
  return high - low;
}

function toCube(points: readonly Vector[], fit: PlaneFit): Vector[] {
  const { normal } = fit;
  const sideways: Vector = Math.abs(normal[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const u = cross(normal, sideways);
  const v = cross(normal, u);
  const raw = points.map((point): Vector => {
    const centred = minus(point, fit.through);
    return [dot(u, centred), dot(v, centred), dot(normal, centred)];
  });
  const reach = (i: 0 | 1 | 2): number => Math.max(...raw.map((point) => Math.abs(point[i]))) || 1;
  const [x, y, z] = [reach(0), reach(1), reach(2)];
  return raw.map((point): Vector => [point[0] / x, point[1] / y, point[2] / z]);
}

type Ends = readonly [number, number];

/**
 * Pairs of edges through which two parallel planes can be laid that hold the whole hull: on the sphere of directions the
 * arc of one meets the mirrored arc of the other.
 */
function facingEdges(faces: readonly Face[], count: number): (readonly [Ends, Ends])[] {
  const half = new Map<number, Vector>();
  const ends: Ends[] = [];
  // For each edge the outward normals of its two faces and their cross product, nine numbers in a row: hundreds of
  // thousands of pairs are looked at, and plain numbers side by side are several times faster than tuples.
  const numbers: number[] = [];
  for (const { corners, normal } of faces) {
    for (const [from, to] of edgesOf(corners)) {
      const other = half.get(to * count + from);
      if (other === undefined) half.set(from * count + to, normal);
      else {
        const turn = cross(other, normal);
        // Two triangles of one flat side: what this edge could hold, the side itself holds.
        if (lengthOf(turn) < flatTurn) continue;
        ends.push([from, to]);
        numbers.push(...other, ...normal, ...turn);
      }
    }
  }
  const all = Float64Array.from(numbers);
  const product = (i: number, j: number): number =>
    (all[i] ?? 0) * (all[j] ?? 0) + (all[i + 1] ?? 0) * (all[j + 1] ?? 0) + (all[i + 2] ?? 0) * (all[j + 2] ?? 0);
  const near = 1e-12;
  const pairs: (readonly [Ends, Ends])[] = [];
  for (const [i, one] of ends.entries()) {
    const first = 9 * i;
    for (let j = i + 1; j < ends.length; j += 1) {
      const second = 9 * j;
      // The mirrored arc runs from −first to −second; the signs of the four triple products tell whether the arcs meet.
      const c = -product(first + 6, second);
      const d = -product(first + 6, second + 3);
      if (c * d > near) continue;
      const a = product(second + 6, first);
      const b = product(second + 6, first + 3);
      if (a * b > near || c * b < -near) continue;
      const other = ends[j];
      if (other !== undefined) pairs.push([one, other]);
    }
  }
  return pairs;
}
