import type { XY } from '../spaces.ts';
import { type OutlineOf, openStroke } from './outline.ts';

const ringRadius = 9;
const tickEnd = 17;
const ringCorners = 32;

/** A ring with four ticks: the spot itself stays free to be seen. */
export const pointOutline: OutlineOf = (points) => points.slice(0, 1).flatMap(ringAndTicks);

function ringAndTicks(centre: XY) {
  const at = (turn: number, radius: number): XY => ({
    x: centre.x + radius * Math.cos(turn * 2 * Math.PI),
    y: centre.y + radius * Math.sin(turn * 2 * Math.PI),
  });
  const ring = Array.from({ length: ringCorners }, (_, index) => at(index / ringCorners, ringRadius));
  const ticks = [0, 0.25, 0.5, 0.75].map((turn) => openStroke(at(turn, ringRadius), at(turn, tickEnd)));
  return [{ points: ring, closed: true }, ...ticks];
}
