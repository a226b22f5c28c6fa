import { createHash } from 'node:crypto';
import type { Homography } from '../../../shared-lib/calibration/homography.ts';
import { type Registration, toEarlier } from '../../../shared-lib/comparison/register.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Size } from '../../../shared-lib/geometry/spaces.ts';
import type { Shot } from '../../../shared-lib/model/shot.ts';
import type { Context } from '../context.ts';
import { measurerOf } from '../measuring/measurer-of.ts';
import { screenEdge } from '../photos/decode/edges.ts';
import type { Rectangle } from '../photos/decode/orientation.ts';
import { photosOf } from '../photos/photo-service.ts';
import { originalByDigest } from '../photos/queries.ts';

interface Wanted {
  readonly earlier: Shot;
  readonly later: Shot;
  readonly registration: Registration;
  readonly region: Rectangle;
  readonly edge: number;
}

/** From the pixels of a region shrunk to `size` to the whole photo's, pixel centres at whole numbers in both. */
const outOfRegion = ({ x, y, width, height }: Rectangle, size: Size): Homography => {
  const [sx, sy] = [width / size.width, height / size.height];
  return [sx, 0, x + (sx - 1) / 2, 0, sy, y + (sy - 1) / 2, 0, 0, 1];
};

const multiply = (m: Homography, n: Homography): Homography =>
  [0, 1, 2].flatMap((row) =>
    [0, 1, 2].map((column) => [0, 1, 2].reduce((sum, k) => sum + (m[3 * row + k] ?? 0) * (n[3 * k + column] ?? 0), 0)),
  ) as unknown as Homography;

/**
 * A region of today's photo as the earlier photo shows it, fitted to `edge`. The screen picture serves where nothing finer
 * is asked for: it is small, and opened at once.
 *
 * @returns the key under which photo:// serves it
 * @throws AppError 'invalid-input' for a region beyond the photo, 'comparison-points-collinear' for a mapping that flattens
 */
export const earlierPicture = async (
  context: Context,
  { earlier, later, registration, region, edge }: Wanted,
): Promise<string> => {
  const { x, y, width, height } = region;
  if (x + width > later.width || y + height > later.height) {
    throw new AppError('invalid-input', { issues: [{ path: 'width', message: 'reaches beyond the photo' }] });
  }
  const back = toEarlier(registration);
  if (!back) throw new AppError('comparison-points-collinear', {});
  const shrink = Math.min(1, edge / Math.max(width, height));
  const size = { width: Math.max(1, Math.round(width * shrink)), height: Math.max(1, Math.round(height * shrink)) };
  const toPhoto = multiply(back, outOfRegion(region, size));
  const photos = photosOf(context);
  const isFine = Math.max(width, height) < 0.75 * Math.max(later.width, later.height);
  const longest = Math.max(earlier.width, earlier.height);
  const key = createHash('sha256')
    .update(['then', earlier.digest, ...toPhoto, size.width, size.height, isFine].join(' '))
    .digest('hex');
  await photos.drawn(key, async (outPath) => {
    if (isFine || longest <= screenEdge) {
      const path = photos.store.originalPath(earlier.digest);
      await measurerOf(context).run({ kind: 'straighten', path, toPhoto, ...size, outPath });
      return;
    }
    const original = originalByDigest(context.db, earlier.digest);
    if (!original) throw new Error(`shot ${earlier.id} has no original`);
    const path = await photos.shown(original, 'screen');
    const shown = screenEdge / longest;
    const shift = (shown - 1) / 2;
    const toScreen = multiply([shown, 0, shift, 0, shown, shift, 0, 0, 1], toPhoto);
    await measurerOf(context).run({ kind: 'straighten', path, toPhoto: toScreen, ...size, outPath });
  });
  return key;
};
