import { leftOf, moved } from '../offset-curve.ts';
import { distance } from '../plane.ts';
import type { XY } from '../spaces.ts';
import { polar } from './arrow.ts';
import { type OutlineOf, openStroke } from './outline.ts';

const tickPx = 11;
const barbPx = 10;
const barbRadians = (35 * Math.PI) / 180;
/** Shorter than this on screen, the inner arrow heads would meet. */
const barbsFromPx = 34;

/** A dimension between two points: a tick across each true end, heads pointing outwards at them. */
export const spanOutline: OutlineOf = ([from, to]) => {
  if (!from || !to || distance(from, to) === 0) return [];
  const normal = leftOf(from, to);
  const along = Math.atan2(to.y - from.y, to.x - from.x);
  const strokes = [openStroke(from, to), tick(from, normal), tick(to, normal)];
  if (distance(from, to) < barbsFromPx) return strokes;
  return [...strokes, head(from, along), head(to, along + Math.PI)];
};

function tick(end: XY, normal: XY) {
  return openStroke(moved(end, normal, tickPx), moved(end, normal, -tickPx));
}

function head(end: XY, inwards: number) {
  return openStroke(polar(end, inwards - barbRadians, barbPx), end, polar(end, inwards + barbRadians, barbPx));
}
