import { cross, dot, lengthOf, minus, type Vector } from './vectors.ts';

/** A triangle of the hull: three points by their index, and the plane through them, pointing outwards. */
export interface Face {
  readonly corners: readonly [number, number, number];
  readonly normal: Vector;
  readonly offset: number;
}

/**
 * Convex hull of points in space, by adding one point after another.
 *
 * @param points  scaled to about one in every direction; a point nearer to a face than `tolerance` counts as on it
 * @returns  its triangles; null where the points lie in one plane
 * Source: the incremental construction (de Berg and others, Computational Geometry, chapter 11).
 */
export function convexHull(points: readonly Vector[], tolerance: number): readonly Face[] | null {
  const start = firstTetrahedron(points, tolerance);
  if (start === null) return null;
  const inside = start.reduce<Vector>(
    (sum, index) => {
      const point = points[index] ?? [0, 0, 0];
      return [sum[0] + point[0] / 4, sum[1] + point[1] / 4, sum[2] + point[2] / 4];
    },
    [0, 0, 0],
  );
  const face = (a: number, b: number, c: number): Face => {
    const [p, q, r] = [points[a] ?? inside, points[b] ?? inside, points[c] ?? inside];
    const raw = cross(minus(q, p), minus(r, p));
    const size = lengthOf(raw) || 1;
    const normal: Vector = [raw[0] / size, raw[1] / size, raw[2] / size];
    const offset = dot(normal, p);
    // Turned so that the inside lies behind it.
    return dot(normal, inside) <= offset
      ? { corners: [a, b, c], normal, offset }
      : { corners: [a, c, b], normal: [-normal[0], -normal[1], -normal[2]], offset: -offset };
  };
  const [a, b, c, d] = start;
  let faces: Face[] = [face(a, b, c), face(a, b, d), face(a, c, d), face(b, c, d)];
  for (const index of scattered(points.length)) {
    const point = points[index];
    if (point === undefined || start.includes(index)) continue;
    const seen = faces.filter(({ normal, offset }) => dot(normal, point) - offset > tolerance);
    if (seen.length === 0) continue;
    const edges = new Map<number, readonly [number, number]>();
    for (const { corners } of seen) {
      for (const [from, to] of edgesOf(corners)) {
        const back = to * points.length + from;
        if (edges.has(back)) edges.delete(back);
        else edges.set(from * points.length + to, [from, to]);
      }
    }
    const hidden = new Set(seen);
    faces = faces.filter((each) => !hidden.has(each));
    for (const [from, to] of edges.values()) faces.push(face(from, to, index));
  }
  return faces;
}

export const edgesOf = ([a, b, c]: Face['corners']): readonly (readonly [number, number])[] => [
  [a, b],
  [b, c],
  [c, a],
];

/** All indices, neighbours far apart in time: a grid added row by row would build and drop far more triangles. */
const scattered = (count: number): readonly number[] => {
  const golden = (Math.sqrt(5) - 1) / 2;
  return Array.from({ length: count }, (_, index) => index).sort((a, b) => ((a * golden) % 1) - ((b * golden) % 1));
};

/** Four points that span space: the widest pair, the point furthest from their line, the point furthest from the plane. */
function firstTetrahedron(
  points: readonly Vector[],
  tolerance: number,
): readonly [number, number, number, number] | null {
  const furthest = (measure: (point: Vector) => number): { index: number; far: number } =>
    points.reduce(
      (best, point, index) => {
        const far = measure(point);
        return far > best.far ? { index, far } : best;
      },
      { index: 0, far: -1 },
    );
  const first = points[0];
  if (first === undefined) return null;
  const a = furthest((point) => lengthOf(minus(point, first)));
  const pointA = points[a.index] ?? first;
  const b = furthest((point) => lengthOf(minus(point, pointA)));
  const pointB = points[b.index] ?? first;
  const along = minus(pointB, pointA);
  const c = furthest((point) => lengthOf(cross(along, minus(point, pointA))));
  const across = cross(along, minus(points[c.index] ?? first, pointA));
  const size = lengthOf(across);
  if (!(size > 0)) return null;
  const d = furthest((point) => Math.abs(dot(across, minus(point, pointA))) / size);
  return d.far > tolerance ? [a.index, b.index, c.index, d.index] : null;
}
