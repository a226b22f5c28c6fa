import { type Homography, invert, project } from '../calibration/homography.ts';
import type { PlaneMapping } from '../calibration/plane-mapping.ts';
import type { Size, XY } from '../geometry/spaces.ts';

/** A calibrated face seen square on: how large a picture of it is, and where its pixels lie in the photo. */
export interface StraightView extends Size {
  readonly toPhoto: Homography;
  readonly pxPerMm: number;
}

/** No larger than what a window shows as a whole. */
const longestEdgePx = 4096;
/** Where a pixel of the photo would be spread over more than this many across, it says nothing; it is left out. */
const mostSpread = 4;
const gridSteps = 40;

/**
 * The part of the plane that the photo shows well, turned so that right in the photo stays right in the picture.
 *
 * @returns null where the photo shows nothing of the plane
 */
export function straightView(mapping: PlaneMapping, photo: Size): StraightView | null {
  const at = slopesAt(mapping, mapping.referenceAt);
  if (!at) return null;
  // A plane whose numbers run the other way round would come out as in a mirror.
  const flip = at.determinant < 0 ? -1 : 1;
  const turn = -Math.atan2(flip * at.alongX.y, at.alongX.x);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const turned: Homography = [c, -s * flip, 0, s, c * flip, 0, 0, 0, 1];
  const mmPerPx = Math.sqrt(Math.abs(at.determinant));
  const shown: XY[] = [];
  for (let i = 0; i <= gridSteps; i += 1) {
    for (let j = 0; j <= gridSteps; j += 1) {
      const point = {
        x: -0.5 + (photo.width * i) / gridSteps,
        y: -0.5 + (photo.height * j) / gridSteps,
      };
      const here = mapping.toPlane(point);
      const slopes = slopesAt(mapping, point);
      if (!here || !slopes || Math.sqrt(Math.abs(slopes.determinant)) > mostSpread * mmPerPx) continue;
      const there = project(turned, here);
      if (there) shown.push(there);
    }
  }
  if (shown.length < 2) return null;
  const [left, right] = rangeOf(shown.map(({ x }) => x));
  const [top, bottom] = rangeOf(shown.map(({ y }) => y));
  const [wide, high] = [right - left, bottom - top];
  if (!(wide > 0 && high > 0)) return null;
  const pxPerMm = Math.min(1 / mmPerPx, longestEdgePx / Math.max(wide, high));
  // The first pixel's centre lies half a pixel inside.
  const placed: Homography = [pxPerMm, 0, -left * pxPerMm - 0.5, 0, pxPerMm, -top * pxPerMm - 0.5, 0, 0, 1];
  const toPhoto = invert(times(placed, times(turned, mapping.matrix)));
  if (!toPhoto) return null;
  return {
    width: Math.max(1, Math.round(wide * pxPerMm)),
    height: Math.max(1, Math.round(high * pxPerMm)),
    toPhoto,
    pxPerMm,
  };
}

function slopesAt(mapping: PlaneMapping, { x, y }: XY): { alongX: XY; determinant: number } | null {
  const [a, b] = [mapping.toPlane({ x: x - 0.5, y }), mapping.toPlane({ x: x + 0.5, y })];
  const [c, d] = [mapping.toPlane({ x, y: y - 0.5 }), mapping.toPlane({ x, y: y + 0.5 })];
  if (!a || !b || !c || !d) return null;
  const alongX = { x: b.x - a.x, y: b.y - a.y };
  const alongY = { x: d.x - c.x, y: d.y - c.y };
  return { alongX, determinant: alongX.x * alongY.y - alongX.y * alongY.x };
}

function rangeOf(values: readonly number[]): [number, number] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return [least, most];
}

function times(a: Homography, b: Homography): Homography {
  const rows = [0, 3, 6].flatMap((row) =>
    [0, 1, 2].map(
      (column) =>
        (a[row] ?? 0) * (b[column] ?? 0) +
        (a[row + 1] ?? 0) * (b[column + 3] ?? 0) +
        (a[row + 2] ?? 0) * (b[column + 6] ?? 0),
    ),
  );
  return rows as unknown as Homography;
}
