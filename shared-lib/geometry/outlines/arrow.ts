import { distance } from '../plane.ts';
import type { XY } from '../spaces.ts';
import { type OutlineOf, openStroke } from './outline.ts';

/** The tip stops short, so that it does not cover what it points at. */
const tipGapPx = 5;
const barbPx = 17;
const barbRadians = (32 * Math.PI) / 180;

/** From the first point to the second, which it points at. */
export const arrowOutline: OutlineOf = ([tail, target]) => {
  if (!tail || !target) return [];
  const length = distance(tail, target);
  if (length === 0) return [];
  const back = Math.atan2(tail.y - target.y, tail.x - target.x);
  const tip = polar(target, back, Math.min(tipGapPx, length / 4));
  const barb = Math.min(barbPx, length / 2);
  return [
    openStroke(tail, tip),
    openStroke(polar(tip, back - barbRadians, barb), tip, polar(tip, back + barbRadians, barb)),
  ];
};

export function polar(from: XY, radians: number, by: number): XY {
  return { x: from.x + by * Math.cos(radians), y: from.y + by * Math.sin(radians) };
}
