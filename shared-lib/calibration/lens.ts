import type { Size, XY } from '../geometry/spaces.ts';

/**
 * What a lens does to straight lines: points lie too far out or too far in, the more the farther from the middle.
 *
 * One coefficient of the division model, straight = seen / (1 + bend * r^2), with r = 1 in the photo's corners; above 0 the
 * lens stretches the middle (lines bulge outwards in the photo's margins where it is below 0).
 * Source: Fitzgibbon, Simultaneous linear estimation of multiple view geometry and lens distortion (CVPR 2001).
 */
export interface Lens {
  readonly middle: XY;
  /** From the middle to a corner, px. */
  readonly radiusPx: number;
  readonly bend: number;
}

export function lensOf({ width, height }: Size, bend: number): Lens {
  return {
    middle: { x: (width - 1) / 2, y: (height - 1) / 2 },
    radiusPx: Math.hypot(width, height) / 2,
    bend,
  };
}

/** Where a straightening lens would have put a point of the photo. */
export function straighten({ middle, radiusPx, bend }: Lens, { x, y }: XY): XY {
  const [dx, dy] = [x - middle.x, y - middle.y];
  const by = 1 + (bend * (dx * dx + dy * dy)) / (radiusPx * radiusPx);
  return { x: middle.x + dx / by, y: middle.y + dy / by };
}

/** The other way. @returns null where no point of the photo is straightened to there */
export function bendBack({ middle, radiusPx, bend }: Lens, { x, y }: XY): XY | null {
  const [dx, dy] = [x - middle.x, y - middle.y];
  const under = 1 - (4 * bend * (dx * dx + dy * dy)) / (radiusPx * radiusPx);
  if (under < 0) return null;
  const by = 2 / (1 + Math.sqrt(under));
  return { x: middle.x + dx * by, y: middle.y + dy * by };
}
