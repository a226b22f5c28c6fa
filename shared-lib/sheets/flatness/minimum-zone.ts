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
  for (const [one, other] of facingEdges(faces)) {
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

interface Edge {
  readonly ends: readonly [number, number];
  /** Outward normals of its two faces, and their cross product. */
  readonly first: Vector;
  readonly second: Vector;
  readonly turn: Vector;
}

/**
 * Pairs of edges through which two parallel planes can be laid that hold the whole hull: on the sphere of directions the
 * arc of one meets the mirrored arc of the other.
 */
function facingEdges(faces: readonly Face[]): (readonly [Edge['ends'], Edge['ends']])[] {
  const half = new Map<string, Vector>();
  const edges: Edge[] = [];
  for (const { corners, normal } of faces) {
    for (const [from, to] of edgesOf(corners)) {
      const other = half.get(`${to} ${from}`);
      if (other === undefined) half.set(`${from} ${to}`, normal);
      else edges.push({ ends: [from, to], first: other, second: normal, turn: cross(other, normal) });
    }
  }
  const near = 1e-12;
  const pairs: (readonly [Edge['ends'], Edge['ends']])[] = [];
  for (let i = 0; i < edges.length; i += 1) {
    const one = edges[i];
    if (one === undefined) continue;
    for (let j = i + 1; j < edges.length; j += 1) {
      const other = edges[j];
      if (other === undefined) continue;
      // The mirrored arc runs from −first to −second; the signs of the four triple products tell whether the arcs meet.
      const c = -dot(one.turn, other.first);
      const d = -dot(one.turn, other.second);
      if (c * d > near) continue;
      const a = dot(other.turn, one.first);
      const b = dot(other.turn, one.second);
      if (a * b > near) continue;
      if (c * b < -near) continue;
      pairs.push([one.ends, other.ends]);
    }
  }
  return pairs;
}
