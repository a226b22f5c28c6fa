import { type Homography, invert, type PointPair, project } from '../../shared-lib/calibration/homography.ts';
import type { MatchedPair } from '../../shared-lib/contract/comparisons.ts';
import type { Size, XY } from '../../shared-lib/geometry/spaces.ts';
import { insidePhoto, type View } from '../../shared-lib/geometry/viewport.ts';

export type Side = 'then' | 'now';

/** How the earlier photo is shown: as it was taken, or straightened onto today's, so that both are looked at from one view. */
export interface ThenFrame {
  readonly isStraightened: boolean;
  /** Of the frame, in its own pixels. */
  readonly size: Size;
  readonly toFrame: Homography;
  readonly fromFrame: Homography;
}

const same: Homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];

export function asTaken(earlier: Size): ThenFrame {
  return { isStraightened: false, size: earlier, toFrame: same, fromFrame: same };
}

/** @returns null for a mapping that flattens the photo */
export function straightened(toLater: Homography, later: Size): ThenFrame | null {
  const fromFrame = invert(toLater);
  return fromFrame && { isStraightened: true, size: later, toFrame: toLater, fromFrame };
}

/**
 * A new pair from a spot of one photo. Its partner stands where the mapping of now puts it, to be corrected; without one,
 * at the same share of the other photo.
 */
export function pairFrom(
  side: Side,
  at: XY,
  toLater: Homography | null,
  photos: { readonly earlier: Size; readonly later: Size },
): MatchedPair {
  const { earlier, later } = photos;
  const own = side === 'then' ? earlier : later;
  const other = side === 'then' ? later : earlier;
  const mapping = toLater && (side === 'then' ? toLater : invert(toLater));
  const share = { x: (at.x / own.width) * other.width, y: (at.y / own.height) * other.height };
  const partner = insidePhoto((mapping && project(mapping, at)) ?? share, other);
  const spot = insidePhoto(at, own);
  return side === 'then' ? { from: spot, to: partner, by: 'hand' } : { from: partner, to: spot, by: 'hand' };
}

export function withSpot(pairs: readonly MatchedPair[], index: number, side: Side, at: XY): MatchedPair[] {
  return pairs.map((pair, k) => {
    if (k !== index) return pair;
    return { ...pair, by: 'hand', ...(side === 'then' ? { from: { ...at } } : { to: { ...at } }) };
  });
}

export function spotOf({ from, to }: PointPair, side: Side): XY {
  return side === 'then' ? from : to;
}

/**
 * The style that draws a picture of `drawn` pixels, which shows a whole photo of `photo` pixels, where a mapping and a
 * view put it. Pixel centres stand at whole numbers, a style's corner at the picture's own.
 */
export function transformOf(drawn: Size, photo: Size, mapping: Homography, view: View): string {
  const [sx, sy] = [photo.width / drawn.width, photo.height / drawn.height];
  const [a, b, c, d, e, f, g, h, i] = mapping;
  // Corner of the style to pixel of the photo, through the mapping, to the screen.
  const columns = [
    [a * sx, d * sx, g * sx],
    [b * sy, e * sy, h * sy],
    [c - (a + b) / 2, f - (d + e) / 2, i - (g + h) / 2],
  ].map(([u = 0, v = 0, w = 0]) => [view.scale * u + view.x * w, view.scale * v + view.y * w, w]);
  const [[xx, xy, xw] = [], [yx, yy, yw] = [], [zx, zy, zw] = []] = columns;
  return `matrix3d(${[xx, xy, 0, xw, yx, yy, 0, yw, 0, 0, 1, 0, zx, zy, 0, zw].join(',')})`;
}

/** Where a photo's own pixels are drawn, unmapped. */
export function plainTransform(drawn: Size, photo: Size, view: View): string {
  return transformOf(drawn, photo, same, view);
}
