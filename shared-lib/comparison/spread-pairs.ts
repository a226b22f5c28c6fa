import type { PointPair } from '../calibration/homography.ts';
import { boundingBox, distance } from '../geometry/plane.ts';
import type { Registration } from './register.ts';

/** Fields along each side of the matched part of the later photo. */
const fields = 4;
/** More than a person would look through. */
const most = 12;
const fewest = 4;
/** Nearer together, against the diagonal of the matched part, two spots say the same thing, and hands mix them up. */
const leastApart = 0.09;

/**
 * Of all the spots that agree, the few that a person can check and correct: the one that fits best in every field of a
 * grid over them, so that together they hold the whole photo.
 */
export function spreadPairs({ pairs, residualsPx }: Registration): PointPair[] {
  const ranked = pairs
    .map((pair, index) => ({ pair, residual: residualsPx[index] ?? Number.POSITIVE_INFINITY }))
    .sort((a, b) => a.residual - b.residual);
  const box = boundingBox(pairs.map(({ to }) => to));
  if (!box) return [];
  const fieldOf = ({ to }: PointPair): number => {
    const part = (value: number, from: number, until: number): number =>
      Math.min(fields - 1, Math.floor((fields * (value - from)) / Math.max(1e-9, until - from)));
    return part(to.x, box.left, box.right) + fields * part(to.y, box.top, box.bottom);
  };
  const taken = new Map<number, PointPair>();
  for (const { pair } of ranked) if (!taken.has(fieldOf(pair))) taken.set(fieldOf(pair), pair);
  const apart = leastApart * Math.hypot(box.right - box.left, box.bottom - box.top);
  const kept: PointPair[] = [];
  const isClear = ({ to }: PointPair): boolean => kept.every((other) => distance(other.to, to) >= apart);
  const candidates = [...outermostFirst([...taken.values()]), ...ranked.map(({ pair }) => pair)];
  for (const pair of candidates) if (kept.length < most && isClear(pair)) kept.push(pair);
  // A small matched part has no room for more; it still needs as many as a perspective does.
  for (const { pair } of ranked) if (kept.length < fewest && !kept.includes(pair)) kept.push(pair);
  return kept;
}

/** Spots far from the middle hold a lean better than those in it. */
function outermostFirst(pairs: readonly PointPair[]): PointPair[] {
  const middle = {
    x: pairs.reduce((sum, { to }) => sum + to.x, 0) / pairs.length,
    y: pairs.reduce((sum, { to }) => sum + to.y, 0) / pairs.length,
  };
  const away = ({ to }: PointPair): number => Math.hypot(to.x - middle.x, to.y - middle.y);
  return pairs.toSorted((a, b) => away(b) - away(a));
}
