import sharp from 'sharp';
import type { Homography } from '../../../shared-lib/calibration/homography.ts';
import type { Size } from '../../../shared-lib/geometry/spaces.ts';
import type { RawPicture } from '../photos/decode/heic.ts';

/** Beyond the photo's edge: the stage's own dark. */
const beyond = [0x24, 0x26, 0x2a] as const;
const quality = 90;

/** A picture whose every pixel is looked up in the photo, between its four neighbours. */
export const straightPixels = (photo: RawPicture, { width, height }: Size, toPhoto: Homography): Uint8Array => {
  const { data, channels } = photo;
  const [a, b, c, d, e, f, g, h, i] = toPhoto;
  const [lastX, lastY] = [photo.width - 1, photo.height - 1];
  const row = photo.width * channels;
  const out = new Uint8Array(width * height * 3);
  for (let v = 0, to = 0; v < height; v += 1) {
    for (let u = 0; u < width; u += 1, to += 3) {
      const w = g * u + h * v + i;
      const x = w > 1e-12 ? (a * u + b * v + c) / w : -1;
      const y = w > 1e-12 ? (d * u + e * v + f) / w : -1;
      // The outer half pixel belongs to the photo still.
      if (!(x >= -0.5 && y >= -0.5 && x <= lastX + 0.5 && y <= lastY + 0.5)) {
        out.set(beyond, to);
        continue;
      }
      const left = Math.min(lastX, Math.max(0, Math.floor(x)));
      const top = Math.min(lastY, Math.max(0, Math.floor(y)));
      const dx = Math.min(1, Math.max(0, x - left));
      const dy = Math.min(1, Math.max(0, y - top));
      const from = top * row + left * channels;
      const right = left < lastX ? channels : 0;
      const below = top < lastY ? row : 0;
      for (let channel = 0; channel < 3; channel += 1) {
        const at = from + channel;
        const upper = (data[at] as number) * (1 - dx) + (data[at + right] as number) * dx;
        const lower = (data[at + below] as number) * (1 - dx) + (data[at + below + right] as number) * dx;
        out[to + channel] = Math.round(upper * (1 - dy) + lower * dy);
      }
    }
  }
  return out;
};

export const writeStraight = async (
  photo: RawPicture,
  size: Size,
  toPhoto: Homography,
  outPath: string,
): Promise<void> => {
  const { width, height } = size;
  const raw = { width, height, channels: 3 } as const;
  await sharp(straightPixels(photo, size, toPhoto), { raw })
    .jpeg({ quality })
    .toFile(outPath);
};
