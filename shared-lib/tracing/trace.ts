import { chainLength } from '../geometry/plane.ts';
import type { Box, Size, XY } from '../geometry/spaces.ts';
import { cheapestPath } from './cheapest-path.ts';
import { corridor } from './corridor.ts';
import { costOf, type EvidenceMap, mapEvidence } from './evidence-map.ts';
import { type GreyImage, shrinkGrey } from './grey.ts';
import { judge, type TraceDoubt } from './judge.ts';
import { refineLine } from './refine.ts';
import { type TraceSettings, traceSettings } from './settings.ts';
import { evenlySpaced, smoothLine } from './smooth-line.ts';
import { snapToLine } from './snap.ts';
import { readProfiles } from './width-along.ts';

export interface TraceRequest {
  /** Start, way points in their order, end: ImagePoints. */
  readonly points: readonly XY[];
  /** A rough line drawn along the crack, which the trace stays near. */
  readonly scribble?: readonly XY[];
}

export interface TracePoint extends XY {
  /** Full width at half depth, px; null where the line does not stand out. */
  readonly widthPx: number | null;
  /** 0: bare surface or a guess; 1: a line that nothing beside it can be taken for. */
  readonly confidence: number;
}

export interface Trace {
  /** About 1 px apart, in pixels of the upright original. */
  readonly centre: readonly TracePoint[];
  readonly lengthPx: number;
  /** Whether a person has to look: the reasons stand in `doubts`. */
  readonly unsure: boolean;
  readonly doubts: readonly TraceDoubt[];
}

/** Pixels above which the picture is looked at in a smaller copy first. */
const mostPixels = 1_100_000;

/** The part of a photo that a trace needs: the clicks and room for the crack to wander. */
export function traceBox(points: readonly XY[], photo: Size): Box {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const margin = Math.min(400, Math.max(80, 0.3 * Math.hypot(right - left, bottom - top)));
  return {
    left: Math.max(0, Math.floor(left - margin)),
    top: Math.max(0, Math.floor(top - margin)),
    right: Math.min(photo.width - 1, Math.ceil(right + margin)),
    bottom: Math.min(photo.height - 1, Math.ceil(bottom + margin)),
  };
}

/**
 * Follows a dark, thin line from the first point to the last through the way points between them.
 *
 * @param image  the part of the photo given by `traceBox`
 */
export function traceLine(image: GreyImage, request: TraceRequest, settings: TraceSettings = traceSettings): Trace {
  const factor = Math.ceil(Math.sqrt((image.width * image.height) / mostPixels));
  const small = shrinkGrey(image, factor);
  const toSmall = ({ x, y }: XY): XY => ({
    x: (x - image.left + 0.5) / factor - 0.5,
    y: (y - image.top + 0.5) / factor - 0.5,
  });
  const evidence = mapEvidence(small, settings);
  const cost = costOf(evidence, settings);
  if (request.scribble) corridor(cost, evidence, request.scribble.map(toSmall));
  const path = wayThrough(evidence, cost, request.points.map(toSmall));
  const { doubts, confidence } = judge(evidence, cost, path, settings);
  const rough = path.map((index) => ({
    x: ((index % small.width) + 0.5) * factor - 0.5,
    y: (Math.floor(index / small.width) + 0.5) * factor - 0.5,
  }));
  const first = refineLine(image, evenlySpaced(smoothLine(rough, 3), 1));
  const centre = evenlySpaced(smoothLine(first, 2), 1);
  const readings = readProfiles(image, centre, 12);
  return {
    centre: centre.map((point, index) => ({
      x: point.x + image.left,
      y: point.y + image.top,
      widthPx: readings[index]?.widthPx ?? null,
      confidence:
        confidence[Math.min(confidence.length - 1, Math.round((index * confidence.length) / centre.length))] ?? 0,
    })),
    lengthPx: chainLength(centre, false),
    unsure: doubts.length > 0,
    doubts,
  };
}

/** Start, way points, end, each leg by the cheapest way. Every leg starts where the one before it ended. */
function wayThrough(evidence: EvidenceMap, cost: Uint8Array, points: readonly XY[]): number[] {
  const stops = points.map((point) => snapToLine(evidence, point));
  const path: number[] = [];
  let from = stops[0];
  for (const to of stops.slice(1)) {
    if (from === undefined) break;
    const leg = cheapestPath(cost, evidence.width, evidence.height, from, to);
    if (leg) for (const index of path.length === 0 ? leg : leg.subarray(1)) path.push(index);
    from = to;
  }
  return path;
}
