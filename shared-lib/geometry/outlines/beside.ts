import { leftOf, moved, offsetCurve, withoutRepeats } from '../offset-curve.ts';
import type { XY } from '../spaces.ts';
import { type OutlineOf, openStroke } from './outline.ts';

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

function tick(end: XY, normal: XY) {
  return openStroke(moved(end, normal, besidePx * tickFrom), moved(end, normal, besidePx * tickTo));
}
