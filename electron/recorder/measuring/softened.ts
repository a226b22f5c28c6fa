import sharp from 'sharp';
import { type Homography, project } from '../../../shared-lib/calibration/homography.ts';
import type { Size } from '../../../shared-lib/geometry/spaces.ts';
import type { RawPicture } from '../photos/decode/heic.ts';

/**
 * A picture that is to be shown smaller is made smaller first, by the library's own filter: taken pixel by pixel, fine
 * texture would flicker.
 *
 * @param toPhoto  from pixels of the picture that is wanted to the photo's
 */
export const softened = async (
  photo: RawPicture,
  toPhoto: Homography,
  size: Size,
): Promise<{ source: RawPicture; toSource: Homography }> => {
  const factor = stepInPhoto(toPhoto, size);
  if (factor < 1.2) return { source: photo, toSource: toPhoto };
  const [width, height] = [photo.width / factor, photo.height / factor].map((edge) => Math.max(2, Math.round(edge)));
  const { data, info } = await sharp(photo.data, { raw: photo })
    .resize(width, height, { fit: 'fill' })
    .raw()
    .toBuffer({ resolveWithObject: true });
  const source = { data, width: info.width, height: info.height, channels: photo.channels };
  return { source, toSource: scaledDown(toPhoto, source.width / photo.width, source.height / photo.height) };
};

/** Photo pixels to one step in the wanted picture, in its middle. */
const stepInPhoto = (toPhoto: Homography, { width, height }: Size): number => {
  const middle = { x: width / 2, y: height / 2 };
  const here = project(toPhoto, middle);
  const right = project(toPhoto, { x: middle.x + 1, y: middle.y });
  const below = project(toPhoto, { x: middle.x, y: middle.y + 1 });
  if (!here || !right || !below) return 1;
  const step = Math.min(Math.hypot(right.x - here.x, right.y - here.y), Math.hypot(below.x - here.x, below.y - here.y));
  return Number.isFinite(step) ? Math.min(step, 64) : 1;
};

/** The same mapping into a smaller copy, whose pixel centres stand at whole numbers too. */
const scaledDown = ([a, b, c, d, e, f, g, h, i]: Homography, sx: number, sy: number): Homography => {
  const [tx, ty] = [(sx - 1) / 2, (sy - 1) / 2];
  return [
    sx * a + tx * g,
    sx * b + tx * h,
    sx * c + tx * i,
    sy * d + ty * g,
    sy * e + ty * h,
    sy * f + ty * i,
    g,
    h,
    i,
  ];
};
