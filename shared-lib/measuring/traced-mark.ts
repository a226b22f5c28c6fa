import { AppError } from '../contract/errors.ts';
import { distance, nearestOnSegment } from '../geometry/plane.ts';
import type { XY } from '../geometry/spaces.ts';
import type { ImagePoint, MarkOrigin, TraceReading } from '../model/mark.ts';
import { tracerVersion } from '../tracing/settings.ts';
import type { Trace, TracePoint, TraceRequest } from '../tracing/trace.ts';

/** Below this share of full strength the way is a guess; the tracer's own bound for a weak pixel. */
const unsureBelow = 0.45;
/** A shorter lapse is noise. */
const shortestUnsurePx = 12;
/** Points are dropped where the line stays nearer than this to where it was, px; a crack's length keeps its digits. */
const tolerancePx = 0.15;
const mostPoints = 5000;

export interface TracedPath {
  readonly points: ImagePoint[];
  readonly origin: MarkOrigin & { by: 'traced' };
}

/**
 * A trace as a mark keeps it: fewer points, and what was read along it at those that stay.
 *
 * @throws AppError 'trace-too-short' where the clicks lie on one spot
 */
export function tracedPath(trace: Trace, request: TraceRequest, pointPx: number): TracedPath {
  const { centre } = trace;
  if (centre.length < 2 || trace.lengthPx < 2) throw new AppError('trace-too-short', {});
  const weak = weakStretches(centre);
  const forced = new Set(weak.flat());
  const kept = keptIndices(centre, forced);
  const places = new Map(kept.map((index, place) => [index, place]));
  const at = (index: number): number => places.get(index) ?? 0;
  const reading: TraceReading = {
    widthsPx: kept.map((index) => hundredth(centre[index]?.widthPx ?? null)),
    // Another way, or a straight edge instead of a crack, puts the whole of it in doubt.
    unsure: trace.doubts.some((doubt) => doubt !== 'gap')
      ? [[0, kept.length - 1]]
      : weak.map(([from, to]) => [at(from), at(to)]),
    doubts: [...trace.doubts],
  };
  const { points, scribble } = request;
  return {
    points: kept.flatMap((index) => {
      const point = centre[index];
      return point ? [plain(point)] : [];
    }),
    origin: {
      by: 'traced',
      version: tracerVersion,
      parameters: {
        points: points.map(plain),
        ...(scribble && scribble.length > 1 ? { scribble: scribble.map(plain) } : {}),
        pointPx,
      },
      reading,
    },
  };
}

/** Start, way points and end as they were set; null for a mark that was not traced. */
export function wayPoints(origin: MarkOrigin): ImagePoint[] | null {
  if (origin.by !== 'traced' || !Array.isArray(origin.parameters.points)) return null;
  const points = origin.parameters.points.filter(
    (point): point is ImagePoint => typeof point?.x === 'number' && typeof point?.y === 'number',
  );
  return points.length < 2 ? null : points;
}

/** The way points with one more, put between the two that it lies between along the traced path. */
export function withWayPoint(
  path: readonly XY[],
  way: readonly ImagePoint[],
  fresh: ImagePoint,
  near: XY,
): ImagePoint[] {
  const along = placeOnPath(path, near);
  const before = way.slice(1, -1).filter((point) => placeOnPath(path, point) < along).length;
  return [...way.slice(0, before + 1), fresh, ...way.slice(before + 1)];
}

/** How far along the path its point nearest to a spot lies. */
export function placeOnPath(path: readonly XY[], spot: XY): number {
  let [best, bestAway, walked] = [0, Number.POSITIVE_INFINITY, 0];
  for (const [index, to] of path.entries()) {
    const from = path[index - 1];
    if (!from) continue;
    const nearest = nearestOnSegment(spot, from, to);
    const away = distance(spot, nearest);
    if (away < bestAway) [best, bestAway] = [walked + distance(from, nearest), away];
    walked += distance(from, to);
  }
  return best;
}

function weakStretches(centre: readonly TracePoint[]): [number, number][] {
  const stretches: [number, number][] = [];
  let from = -1;
  for (let index = 0; index <= centre.length; index += 1) {
    const isWeak = (centre[index]?.confidence ?? 1) < unsureBelow;
    if (isWeak && from < 0) from = index;
    if (isWeak || from < 0) continue;
    if (index - from >= shortestUnsurePx) stretches.push([Math.max(0, from - 1), Math.min(index, centre.length - 1)]);
    from = -1;
  }
  return stretches;
}

/** Ramer, Douglas and Peucker's thinning, but the ends of doubtful stretches stay too. */
function keptIndices(centre: readonly TracePoint[], forced: ReadonlySet<number>): number[] {
  for (let tolerance = tolerancePx; ; tolerance *= 2) {
    const stops = [...new Set([0, ...forced, centre.length - 1])].sort((a, b) => a - b);
    const kept = new Set<number>(stops);
    const open = stops.slice(1).map((to, index): [number, number] => [stops[index] ?? 0, to]);
    for (let part = open.pop(); part; part = open.pop()) {
      const far = farthest(centre, part[0], part[1]);
      if (!far || far.away <= tolerance) continue;
      kept.add(far.index);
      open.push([part[0], far.index], [far.index, part[1]]);
    }
    if (kept.size <= mostPoints) return [...kept].sort((a, b) => a - b);
  }
}

function farthest(centre: readonly XY[], first: number, last: number): { index: number; away: number } | null {
  const [a, b] = [centre[first], centre[last]];
  if (!a || !b) return null;
  let best: { index: number; away: number } | null = null;
  for (let index = first + 1; index < last; index += 1) {
    const point = centre[index];
    if (!point) continue;
    const away = distance(point, nearestOnSegment(point, a, b));
    if (!best || away > best.away) best = { index, away };
  }
  return best;
}

const hundredth = <V extends number | null>(value: V): V =>
  (value === null ? null : Math.round(value * 100) / 100) as V;
const plain = ({ x, y }: XY): ImagePoint => ({ x: hundredth(x), y: hundredth(y) });
