import { leftOf, moved, offsetCurve, withoutRepeats } from '../offset-curve.ts';
import type { XY } from '../spaces.ts';
import { type OutlineOf, openStroke, type Stretches, type Stroke } from './outline.ts';

/** How far beside its points a line or path is drawn: on top of a crack it would hide it. */
export const besidePx = 11;
/** End ticks reach from beyond the drawn line to just past the true end, as shares of the offset. */
const tickFrom = 1.45;
const tickTo = -0.35;

/** A line or path beside what it marks, on its left hand, with a tick at each true end. */
export const besideOutline: OutlineOf = (points) => {
  const chain = withoutRepeats(points);
  const first = chain[0];
  const second = chain[1];
  const last = chain.at(-1);
  const beforeLast = chain.at(-2);
  if (!first || !second || !last || !beforeLast) return [];
  return [
    openStroke(...offsetCurve(chain, besidePx)),
    tick(first, leftOf(first, second)),
    tick(last, leftOf(beforeLast, last)),
  ];
};

/** The same, its doubtful stretches as strokes of their own. */
export function tracedOutline(points: readonly XY[], unsure: Stretches): readonly Stroke[] {
  const [whole, ...ticks] = besideOutline(points);
  if (!whole || unsure.length === 0) return whole ? [whole, ...ticks] : [];
  const parts: Stroke[] = [];
  let sureFrom = 0;
  const last = points.length - 1;
  for (const [from, to] of [...unsure].sort((a, b) => a[0] - b[0])) {
    if (from > sureFrom) parts.push(part(points, sureFrom, from));
    parts.push({ ...part(points, from, to), isUnsure: true });
    sureFrom = to;
  }
  if (sureFrom < last) parts.push(part(points, sureFrom, last));
  return [...parts.filter((stroke) => stroke.points.length > 1), ...ticks];
}

function part(points: readonly XY[], from: number, to: number): Stroke {
  return openStroke(...offsetCurve(points.slice(from, to + 1), besidePx));
}

function tick(end: XY, normal: XY) {
  return openStroke(moved(end, normal, besidePx * tickFrom), moved(end, normal, besidePx * tickTo));
}
