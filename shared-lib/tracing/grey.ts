import type { Box, XY } from '../geometry/spaces.ts';

/**
 * Brightness of a rectangle of a photo, row by row, in any linear or gamma-coded unit; larger is lighter. `left` and `top`
 * say where its first pixel lies in the upright original, so that everything found in it can be said in ImagePoints.
 */
export interface GreyImage {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
  readonly data: Float32Array;
}

/** Copies a rectangle out of a picture, clipped to it. */
export function cropGrey(image: GreyImage, box: Box): GreyImage {
  const left = Math.max(0, Math.floor(box.left - image.left));
  const top = Math.max(0, Math.floor(box.top - image.top));
  const right = Math.min(image.width, Math.ceil(box.right - image.left) + 1);
  const bottom = Math.min(image.height, Math.ceil(box.bottom - image.top) + 1);
  const width = Math.max(0, right - left);
  const height = Math.max(0, bottom - top);
  const data = new Float32Array(width * height);
  for (let row = 0; row < height; row += 1) {
    const from = (row + top) * image.width + left;
    data.set(image.data.subarray(from, from + width), row * width);
  }
  return { width, height, left: image.left + left, top: image.top + top, data };
}

/** Every `factor` x `factor` block becomes its mean; rows and columns that do not fill a block are left out. */
export function shrinkGrey(image: GreyImage, factor: number): GreyImage {
  if (factor === 1) return image;
  const width = Math.floor(image.width / factor);
  const height = Math.floor(image.height / factor);
  const data = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      let sum = 0;
      for (let dy = 0; dy < factor; dy += 1) {
        const row = (y * factor + dy) * image.width + x * factor;
        for (let dx = 0; dx < factor; dx += 1) sum += image.data[row + dx] ?? 0;
      }
      data[y * width + x] = sum / (factor * factor);
    }
  }
  return { width, height, left: image.left, top: image.top, data };
}

/** Brightness between pixel centres, bilinear; outside the picture the nearest edge pixel counts. `atX`, `atY` are local. */
export function sampleAt({ width, height, data }: GreyImage, atX: number, atY: number): number {
  const x = Math.min(width - 1, Math.max(0, atX));
  const y = Math.min(height - 1, Math.max(0, atY));
  const x0 = Math.min(width - 2, Math.floor(x));
  const y0 = Math.min(height - 2, Math.floor(y));
  if (x0 < 0 || y0 < 0) return data[0] ?? 0;
  const fx = x - x0;
  const fy = y - y0;
  const at00 = y0 * width + x0;
  const upper = (data[at00] ?? 0) * (1 - fx) + (data[at00 + 1] ?? 0) * fx;
  const lower = (data[at00 + width] ?? 0) * (1 - fx) + (data[at00 + width + 1] ?? 0) * fx;
  return upper * (1 - fy) + lower * fy;
}

export const sampleGrey = (image: GreyImage, at: XY): number => sampleAt(image, at.x, at.y);
