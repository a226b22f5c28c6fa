import type { XY } from '../../geometry/spaces.ts';
import { type GreyImage, sampleGrey } from '../../tracing/grey.ts';
import type { Saddle } from './saddles.ts';

/** Along one edge from a crossing to the next. */
export interface Link {
  readonly to: number;
  /** Direction from here to there, radians. */
  readonly angle: number;
}

/** Of each saddle: along its first axis and back, along its second and back. */
export type Links = readonly (Link | null)[];

const closest = 6;
const widestTurn = Math.cos(0.24);
const samplesAlong = [0.18, 0.3, 0.42, 0.5, 0.58, 0.7, 0.82];
/** Nearest crossings in a direction that are tried for an edge. */
const tries = 4;

/**
 * Joins crossings that one straight edge runs between, dark on the same side all along. Both ends must choose each other.
 *
 * From a crossing's first axis an edge arrives at the next one's second: the colours swap.
 */
export function linkSaddles(image: GreyImage, saddles: readonly Saddle[]): Links[] {
  const reach = Math.max(image.width, image.height) / 5;
  const chosen = saddles.map((saddle, i) => halves(saddle).map((half) => choose(image, saddles, i, half, reach)));
  return chosen.map((links, i) =>
    links.map((link) => {
      if (!link) return null;
      return (chosen[link.to] ?? []).some((back) => back?.to === i) ? link : null;
    }),
  );
}

interface Half {
  readonly axis: 0 | 1;
  readonly direction: XY;
}

function halves({ axes }: Saddle): Half[] {
  return ([0, 1] as const).flatMap((axis) =>
    [0, Math.PI].map((turn) => ({
      axis,
      direction: { x: Math.cos(axes[axis] + turn), y: Math.sin(axes[axis] + turn) },
    })),
  );
}

function choose(
  image: GreyImage,
  saddles: readonly Saddle[],
  i: number,
  { axis, direction }: Half,
  reach: number,
): Link | null {
  const from = saddles[i];
  if (!from) return null;
  const near: { j: number; length: number }[] = [];
  for (let j = 0; j < saddles.length; j += 1) {
    const to = saddles[j] as Saddle;
    const dx = to.x - from.x;
    const dy = to.y - from.y;
    const along = dx * direction.x + dy * direction.y;
    if (along < closest || along > reach) continue;
    const length = Math.hypot(dx, dy);
    if (along < widestTurn * length) continue;
    const arrives = to.axes[axis === 0 ? 1 : 0];
    if (Math.abs(dx * Math.cos(arrives) + dy * Math.sin(arrives)) < widestTurn * length) continue;
    near.push({ j, length });
  }
  near.sort((a, b) => a.length - b.length);
  for (const { j } of near.slice(0, tries)) {
    const to = saddles[j] as Saddle;
    if (isEdge(image, from, to, axis === 0 ? 1 : -1)) return { to: j, angle: Math.atan2(to.y - from.y, to.x - from.x) };
  }
  return null;
}

/** @param darkSide  1 where it is dark on the side towards which angles grow */
function isEdge(image: GreyImage, from: Saddle, to: Saddle, darkSide: 1 | -1): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = Math.hypot(dx, dy);
  const off = Math.min(5, 0.14 * length) / length;
  let sum = 0;
  for (const t of samplesAlong) {
    const at = { x: from.x + t * dx, y: from.y + t * dy };
    const grown = sampleGrey(image, { x: at.x - off * dy, y: at.y + off * dx });
    const other = sampleGrey(image, { x: at.x + off * dy, y: at.y - off * dx });
    const step = darkSide * (other - grown);
    if (step <= 0) return false;
    sum += step;
  }
  return sum / samplesAlong.length > 0.25 * Math.min(from.contrast, to.contrast);
}
