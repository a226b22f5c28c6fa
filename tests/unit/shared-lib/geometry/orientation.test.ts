import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { type ExifOrientation, rawToUpright, uprightSize } from '../../../../shared-lib/geometry/orientation.ts';

const raw = { width: 5, height: 3 };
const orientations: readonly ExifOrientation[] = [1, 2, 3, 4, 5, 6, 7, 8];

/** Every pixel has a grey of its own, so that it can be found again. */
const greyAt = (x: number, y: number) => 10 + 12 * (y * raw.width + x);

describe('EXIF orientation, as libvips applies it', () => {
  test.each(orientations)(
    'orientation %d: every stored pixel stands where the decoder puts it',
    async (orientation) => {
      const pixels = Buffer.alloc(raw.width * raw.height * 3);
      for (let y = 0; y < raw.height; y++) {
        for (let x = 0; x < raw.width; x++)
          pixels.fill(greyAt(x, y), (y * raw.width + x) * 3, (y * raw.width + x) * 3 + 3);
      }
      const stored = await sharp(pixels, { raw: { ...raw, channels: 3 } })
        .withMetadata({ orientation })
        .png()
        .toBuffer();
      const upright = await sharp(stored).autoOrient().raw().toBuffer({ resolveWithObject: true });
      const size = uprightSize(raw, orientation);
      expect({ width: upright.info.width, height: upright.info.height }).toEqual(size);
      for (let y = 0; y < raw.height; y++) {
        for (let x = 0; x < raw.width; x++) {
          const to = rawToUpright({ x, y }, raw, orientation);
          expect(upright.data[(to.y * size.width + to.x) * upright.info.channels]).toBe(greyAt(x, y));
        }
      }
    },
  );
});
