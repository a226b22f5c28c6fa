import type { Size, XY } from './spaces.ts';

/** EXIF's Orientation (tag 0x0112): which side of the stored picture is up. 1 is upright; 5 to 8 swap width and height. */
export type ExifOrientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

export function uprightSize(raw: Size, orientation: ExifOrientation): Size {
  return orientation >= 5 ? { width: raw.height, height: raw.width } : raw;
}

/**
 * Where a stored pixel comes to lie once the picture stands upright.
 *
 * @param raw  pixel of the stored picture, centres at whole numbers
 * @param size  of the stored picture
 * Source: EXIF 2.32 (CIPA DC-008), tag Orientation: the values name the visual side of row 0 and column 0.
 */
export function rawToUpright(raw: XY, size: Size, orientation: ExifOrientation): { x: number; y: number } {
  const { x, y } = raw;
  const right = size.width - 1 - x;
  const up = size.height - 1 - y;
  switch (orientation) {
    case 1:
      return { x, y };
    case 2:
      return { x: right, y };
    case 3:
      return { x: right, y: up };
    case 4:
      return { x, y: up };
    case 5:
      return { x: y, y: x };
    case 6:
      return { x: up, y: x };
    case 7:
      return { x: up, y: right };
    case 8:
      return { x: y, y: right };
  }
}
